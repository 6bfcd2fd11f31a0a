// The strips of a set in the order of the picture: last strip on top, first at the bottom. A strip is moved by buttons or Alt and
// the arrow keys, and changed in place; on the large area it is carried.
import { useEffect, useRef, useState } from 'react';
import { carryStrip } from '../../../editing/commands/sets/carryStrip';
import { layStrips } from '../../../editing/commands/stripSets';
import { whyStripsLocked } from '../../../model/freedom';
import { phrase } from '../../../model/phrase';
import type { Strip, StripSet } from '../../../model/project';
import { useApp, useAppStore } from '../../app';
import { Complaint, useRun } from '../../fields/Complaint';
import { useSay } from '../../words';
import { AddStrip } from './AddStrip';
import { StripLine } from './StripLine';

export function StripList({ set }: { set: StripSet }) {
  const say = useSay();
  const store = useAppStore();
  const [run, problems] = useRun();
  const [open, setOpen] = useState<number | null>(null);
  const [focus, setFocus] = useState<{ row: number; part: string } | null>(null);
  const project = useApp((app) => app.project);
  const reason = whyStripsLocked(project, set);
  const shown = set.strips.toReversed();
  const lay = (strips: readonly Strip[]) =>
    run(layStrips(store.getState().project, set.id, strips.toReversed()));
  const move = (from: number, to: number) => {
    const [number, place] = [shown.length - 1 - from, shown.length - 1 - to];
    const source = { kind: 'set', set: set.id, at: number } as const;
    if (place < 0 || place >= shown.length) return false;
    if (!run(carryStrip(store.getState().project, source, { ...source, at: place }))) return false;
    setOpen(null);
    const values = { set: set.label, place: place + 1, count: shown.length };
    store.getState().announce(phrase('Now strip {place} of {count} in set {set}.', values));
    return true;
  };
  const rows = useRef<(HTMLLIElement | null)[]>([]);
  useEffect(() => {
    if (!focus) return;
    const wanted = rows.current[focus.row]?.querySelector<HTMLElement>(`[data-part="${focus.part}"]`);
    const line = rows.current[focus.row]?.querySelector<HTMLElement>('[data-part="open"]');
    (wanted?.matches(':disabled') ? line : wanted)?.focus();
    setFocus(null);
  }, [focus]);
  return (
    <div>
      <ol className="set-strips">
        {shown.map((strip, row) => (
          <StripLine
            // biome-ignore lint/suspicious/noArrayIndexKey: strips of a set are known by their place
            key={row}
            row={(line) => {
              rows.current[row] = line;
            }}
            strip={strip}
            number={shown.length - row}
            count={shown.length}
            locked={reason !== null}
            open={open === row}
            onOpen={(opened) => setOpen(opened ? row : null)}
            onMove={(by, part) => {
              if (move(row, row + by)) setFocus({ row: row + by, part });
            }}
            onChange={(to) =>
              store
                .getState()
                .run(
                  layStrips(
                    store.getState().project,
                    set.id,
                    shown.map((one, at) => (at === row ? { ...one, ...to } : one)).toReversed(),
                  ),
                )
            }
            onRemove={() => {
              if (!lay(shown.filter((_, at) => at !== row))) return;
              setOpen(null);
              setFocus({ row: Math.min(row, shown.length - 2), part: 'open' });
            }}
          />
        ))}
      </ol>
      <Complaint problems={problems} />
      {reason ? (
        <p className="quiet set-held">{say(reason)}</p>
      ) : (
        <AddStrip set={set} onAdd={(strip) => lay([strip, ...shown])} />
      )}
    </div>
  );
}
