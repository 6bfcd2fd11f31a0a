// Strips on hand in a few words: how many, in which widths, how many the sets use. They are entered in the grid on the large area.
import { Table2 } from 'lucide-react';
import { useMemo } from 'react';
import { lengthsOf, widthsOf } from '../../../../cutting/onHand/stripGrid';
import { stripsUnused } from '../../../../cutting/sets/stripsUnused';
import { USUAL } from '../../../../model/lengths';
import { counted, phrase } from '../../../../model/phrase';
import type { Project } from '../../../../model/project';
import { useApp, useAppStore } from '../../../app';
import { Fractions } from '../../../fields/Fractions';
import { closeGrid } from '../../../stage/fabrics/grid/closeGrid';
import { useSay, useUnit } from '../../../words';

/** `atFoot`: whether the grid is opened at the foot of the step. */
export function StripsOnHand({ atFoot }: { atFoot: boolean }) {
  const say = useSay();
  const [narrow, middle, wide] = USUAL[useUnit()].strips;
  const store = useAppStore();
  const fabrics = useApp((app) => app.project.fabrics);
  const stripsOnHand = useApp((app) => app.project.stripsOnHand);
  const stripSets = useApp((app) => app.project.stripSets);
  const open = useApp((app) => app.laid.strips);
  const lines = useMemo(
    () => summary({ fabrics, stripsOnHand, stripSets }),
    [fabrics, stripsOnHand, stripSets],
  );
  const there = stripsOnHand.reduce((sum, row) => sum + row.count, 0);
  return (
    <section aria-label={say('Strips on hand')}>
      <div className="spread">
        <h3>{say('Strips on hand')}</h3>
        {there > 0 ? <span className="quiet">{say(counted(there, '1 strip', '{count} strips'))}</span> : null}
      </div>
      <p className="quiet">
        <Fractions
          text={
            lines.length > 0
              ? lines.map((words) => say(words)).join(' · ')
              : say(
                  'What is cut: how many strips of each fabric and width. Usual cut widths are {narrow}, {middle} and {wide}, about 2 : 2 : 1 of them. Sets are made from these strips.',
                  { narrow: { inches: narrow }, middle: { inches: middle }, wide: { inches: wide } },
                )
          }
        />
      </p>
      {atFoot ? null : (
        <button
          type="button"
          data-strips-opener
          className="button fab-add"
          aria-expanded={open}
          onClick={() => (open ? closeGrid(store) : store.getState().lay({ strips: true }))}
        >
          <Table2 size={16} aria-hidden /> {say(there > 0 ? 'Change strips' : 'Enter strips')}
        </button>
      )}
    </section>
  );
}

/** Widths and lengths of the strips, and how many the sets use; nothing where there are none. */
function summary(project: Pick<Project, 'fabrics' | 'stripsOnHand' | 'stripSets'>) {
  const { fabrics, stripsOnHand } = project;
  const balance = stripsUnused(project);
  if (balance.length === 0) return [];
  const of = new Set(stripsOnHand.map((row) => row.fabric)).size;
  const widths = widthsOf(stripsOnHand);
  const lengths = [...new Set(fabrics.flatMap(({ id }) => lengthsOf(stripsOnHand, id)))].sort(
    (a, b) => a - b,
  );
  const range = (all: readonly number[]) => [{ inches: all[0] ?? 0 }, { inches: all.at(-1) ?? 0 }] as const;
  const [narrowest, widest] = range(widths);
  const [shortest, longest] = range(lengths);
  const used = balance.reduce((sum, row) => sum + Math.min(row.used, row.onHand), 0);
  const left = balance.reduce((sum, row) => sum + Math.max(0, row.left), 0);
  const missing = balance.reduce((sum, row) => sum + Math.max(0, -row.left), 0);
  return [
    ...(of === 0
      ? []
      : [
          counted(of, '1 fabric', '{count} fabrics'),
          widths.length === 1
            ? phrase('cut {narrowest} wide', { narrowest })
            : phrase('{count} cut widths, from {narrowest} to {widest}', {
                count: widths.length,
                narrowest,
                widest,
              }),
          lengths.length === 1
            ? phrase('{shortest} long', { shortest })
            : phrase('from {shortest} to {longest} long', { shortest, longest }),
        ]),
    ...(used > 0 ? [phrase('{used} in sets, {left} left', { used, left })] : []),
    ...(missing > 0
      ? [counted(missing, '1 more wanted by the sets', '{count} more wanted by the sets')]
      : []),
  ];
}
