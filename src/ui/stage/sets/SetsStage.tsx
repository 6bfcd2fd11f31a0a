// The sewing table: all strip sets at one scale with the height that the wedge needs as one line across, and the strips that are
// left beside them. Strips are carried within a set, from set to set, to the left-overs and back, by hand or by keys.
import { type KeyboardEvent, type PointerEvent, useCallback, useMemo, useRef, useState } from 'react';
import { leftOvers } from '../../../cutting/sets/leftOvers';
import { wedgeLedger } from '../../../cutting/wedges/ledger';
import { setHeight } from '../../../geometry/stripSet';
import { findSet } from '../../../model/find';
import type { StripSetId } from '../../../model/project';
import { useApp, useAppStore } from '../../app';
import { Fractions } from '../../fields/Fractions';
import { heedSecondPress } from '../../fields/secondPress';
import '../../steps/sets/sets.css';
import { useSay, useUnit } from '../../words';
import { CarriedStrip } from './CarriedStrip';
import { pressed } from './carryRules';
import { LaidSet } from './LaidSet';
import { LeftOvers, sourceOf } from './LeftOvers';
import { NewSet } from './NewSet';
import { RefusedStrip } from './RefusedStrip';
import { type Focused, stripKey } from './stripKeys';
import './setsStage.css';
import { useCarry } from './useCarry';

export function SetsStage() {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const open = useApp((app) => app.laid.set);
  const table = useRef<HTMLDivElement>(null);
  const carrying = useCarry(table);
  const { gesture, ghost, refused, press } = carrying;
  const shown = ghost?.project ?? project;
  const ledger = useMemo(() => wedgeLedger(shown), [shown]);
  const left = useMemo(() => leftOvers(project), [project]);
  const fabrics = useMemo(() => new Map(project.fabrics.map((one) => [one.id, one])), [project.fabrics]);
  const [tab, setTab] = useState<{ set: StripSetId; at: number } | null>(null);
  const [row, setRow] = useState(0);
  const onOpen = useCallback(
    (set: StripSetId) => store.getState().lay({ set: store.getState().laid.set === set ? null : set }),
    [store],
  );
  const onPress = useCallback(
    (event: PointerEvent, source: Parameters<typeof press>[1]) => press(event, source),
    [press],
  );
  const sourceAt = (target: EventTarget): Focused | null => {
    const strip = (target as Element).closest('[data-lay-strip]')?.getAttribute('data-lay-strip');
    // An id may contain spaces.
    const [at, set] = strip ? [Number.parseInt(strip, 10), strip.slice(strip.indexOf(' ') + 1)] : [];
    if (set !== undefined && at !== undefined) return { kind: 'set', set, at };
    const number = (target as Element).closest('[data-lay-row]')?.getAttribute('data-lay-row');
    const found = number == null ? undefined : left[Number(number)];
    return found ? { ...sourceOf(found), row: Number(number) } : null;
  };
  const focus = (selector: string) =>
    requestAnimationFrame(() => table.current?.querySelector<SVGElement | HTMLElement>(selector)?.focus());
  const onKey = (event: KeyboardEvent) => {
    const source = sourceAt(event.target);
    if (source && stripKey(event, source, store.getState(), carrying, focus)) event.preventDefault();
  };
  const { from, to } = gesture ?? { from: null, to: null };
  // While the drop would be refused or is over nothing, everything lies where it lies, the strip faded.
  const comes = ghost !== null && ghost.refused === null;
  const carriedIn = (set: StripSetId): number | null => {
    if (comes && to?.kind === 'set') return to.set === set ? to.at : null;
    if (comes && to?.kind === 'new') return set === shown.stripSets.at(-1)!.id ? 0 : null;
    return !comes && from?.kind === 'set' && from.set === set ? from.at : null;
  };
  // What keeps a strip where it is is said where it is; else where it was to go.
  const source = refused?.to.kind === 'left' ? refused.from : refused?.to;
  const card = refused ? <RefusedStrip refused={refused} onLeave={carrying.leave} /> : null;
  const why = (kind: 'left' | 'new') => (source?.kind === kind ? card : null);
  return (
    <>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: keys of the strips in it */}
      <div
        className={gesture ? 'lay carrying' : 'lay'}
        ref={table}
        onKeyDown={onKey}
        onClickCapture={heedSecondPress}
        onClick={(event) => {
          // A press by a screen reader comes without a pointer.
          const source = event.detail === 0 ? sourceAt(event.target) : null;
          const outcome = source && pressed(source, { project, open });
          if (outcome) carrying.done(outcome);
        }}
        onFocus={(event) => {
          const source = sourceAt(event.target);
          if (source?.kind === 'set') setTab(source);
          else if (source) setRow(source.row ?? 0);
        }}
      >
        <section className="lay-table" aria-label={say('The sets')} data-lay-scroll>
          <Legend empty={ledger.length === 0} />
          <ul className="lay-sets">
            {ledger.map(({ set, available }) => (
              <LaidSet
                key={set.id}
                set={set}
                room={setHeight(findSet(project, set.id)?.strips ?? [], project.wedge.seam)}
                wedge={shown.wedge}
                fabrics={fabrics}
                up={available.up}
                down={available.down}
                open={open === set.id}
                carried={carriedIn(set.id)}
                coming={comes}
                over={to?.kind === 'set' && to.set === set.id}
                tabAt={tab?.set === set.id ? tab.at : set.strips.length - 1}
                onOpen={onOpen}
                onPress={onPress}
              >
                {source?.kind === 'set' && source.set === set.id ? card : null}
              </LaidSet>
            ))}
            {gesture && comes && to?.kind === 'new' ? null : (
              <NewSet left={left} wedge={project.wedge} over={to?.kind === 'new'} />
            )}
          </ul>
          {why('new')}
        </section>
        <LeftOvers
          project={shown}
          fabrics={fabrics}
          openSet={open === null ? null : (findSet(project, open)?.label ?? null)}
          over={to?.kind === 'left'}
          tabAt={Math.min(row, left.length - 1)}
          onPress={onPress}
        >
          {why('left')}
        </LeftOvers>
      </div>
      {gesture ? <CarriedStrip carried={gesture} ghost={ghost} /> : null}
    </>
  );
}

/** The line of the need, the scale of the table, and how strips are carried. */
function Legend({ empty }: { empty: boolean }) {
  const say = useSay();
  const needed = useApp((app) => app.project.wedge.cutHeight);
  const unit = useUnit();
  return (
    <div className="lay-legend">
      <p>
        <span className="lay-need-sign" aria-hidden />
        <span>
          <Fractions text={say('The wedge needs {needed}', { needed: { inches: needed } })} />
        </span>
      </p>
      <p>
        <span className={`lay-scale ${unit}`} aria-hidden />
        {say(unit === 'in' ? '1"' : '2 cm')}
      </p>
      <p className="lay-how">
        {say(
          empty
            ? 'No sets yet. Make them from the strips on hand, or lay the strips in the order they were sewn.'
            : 'All sets to the same scale. Drag a strip (with a finger, hold it first), or lift it with Space and carry it with the arrow keys.',
        )}
      </p>
    </div>
  );
}
