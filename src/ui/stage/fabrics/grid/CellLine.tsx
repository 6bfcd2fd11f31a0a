// What is known of the cell that has or had the focus: strips on hand, in sets, left; and what can be done to its strips.
import { Rows3, Scissors } from 'lucide-react';
import { useState } from 'react';
import { isSameInches } from '../../../../cutting/onHand/stripGrid';
import { stripKey } from '../../../../cutting/sets/stripsUnused';
import { isTooNarrow } from '../../../../model/lengths';
import type { Fabric, FabricId } from '../../../../model/project';
import { useApp } from '../../../app';
import { Fractions } from '../../../fields/Fractions';
import { useEscape } from '../../../useEscape';
import { useSay } from '../../../words';
import type { Place } from './GridCell';
import { SplitStrips } from './SplitStrips';
import type { useStripGrid } from './useStripGrid';

interface Props {
  at: Place | null;
  grid: ReturnType<typeof useStripGrid>;
  known: ReadonlyMap<FabricId, Fabric>;
}

export function CellLine({ at, grid, known }: Props) {
  const say = useSay();
  const seam = useApp((app) => app.project.wedge.seam);
  const [splitting, setSplitting] = useState(false);
  useEscape(() => setSplitting(false), splitting);
  const line = at ? grid.lines[at.line] : undefined;
  const fabric = line && known.get(line.fabric);
  if (!at || !line || !fabric) return null;
  const width = grid.widths[at.column - 1];
  const row =
    width === undefined
      ? undefined
      : grid.strips.find(
          (one) =>
            stripKey(one.fabric, one.width) === stripKey(line.fabric, width) &&
            isSameInches(one.length, line.length),
        );
  const balance = grid.balance.find(
    (one) => width !== undefined && stripKey(one.fabric, one.width) === stripKey(line.fabric, width),
  );
  const values = {
    name: fabric.name,
    width: { inches: width ?? 0 },
    length: { inches: line.length },
    count: balance?.onHand ?? 0,
    used: balance?.used ?? 0,
    left: balance?.left ?? 0,
  };
  const canSplit = row !== undefined && row.count > 0 && !isTooNarrow(row.width / 2, seam);
  return (
    <div className="grid-line stack">
      <div className="row">
        <p className="grow">
          <Fractions
            text={
              width === undefined
                ? say('{name}: strips {length} long', values)
                : say('{name}, {width} wide: {count} on hand, {used} in sets, {left} left', values)
            }
          />
        </p>
        <button
          type="button"
          className="button"
          title={say('Add a line for strips of another length')}
          onClick={() => grid.actions.addLine(line.fabric)}
        >
          <Rows3 size={16} aria-hidden /> <span className="words">{say('Add a length')}</span>
        </button>
        {canSplit ? (
          <button
            type="button"
            className="button"
            aria-expanded={splitting}
            title={say('Split lengthwise')}
            onClick={() => setSplitting(!splitting)}
          >
            <Scissors size={16} aria-hidden /> <span className="words">{say('Split lengthwise')}</span>
          </button>
        ) : null}
      </div>
      {canSplit && splitting ? <SplitStrips key={`${row.id} ${row.width}`} row={row} /> : null}
    </div>
  );
}
