// Blocks entered wedge by wedge: the octagon with the place at hand, what is said about it, and a button for each set and tip. Keys are
// heard wherever no field has them.
import { CornerDownLeft, Delete } from 'lucide-react';
import { type MouseEvent, useCallback, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import { emptyBlocks } from '../../../../editing/commands/blocks';
import { openBlocks } from '../../../../editing/commands/chooseWedges';
import { enterBlocks, shortPlaces } from '../../../../editing/entering/enterBlocks';
import {
  type Entry,
  emptyEntry,
  entryOf,
  finished,
  markAt,
  putIn,
  typed,
} from '../../../../editing/entering/entry';
import { counted, type Phrase, phrase } from '../../../../model/phrase';
import type { BlockId, Place } from '../../../../model/project';
import { isPlain } from '../../../../model/wallCells';
import { useApp, useAppStore } from '../../../app';
import { Complaint, useRun } from '../../../fields/Complaint';
import { isKey } from '../../../keys';
import { useSay } from '../../../words';
import { EntryFace } from './EntryFace';
import { Lacking } from './Lacking';
import { useBlockAtHand, useEntering } from './useEntering';
import { WedgeKeys } from './WedgeKeys';

/** A block just entered, so that Backspace before the next one's first wedge opens it again. */
interface Before {
  readonly revision: number;
  readonly into: BlockId | null;
  readonly entry: Entry;
  readonly counts: readonly { set: string; tip: 'up' | 'down'; count: number }[];
}

const NO_KEYS_HELD = { ctrlKey: false, metaKey: false, altKey: false };

export function ByKeys() {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const sets = project.stripSets;
  const [{ counts }, change] = useEntering();
  const { target, number, entry, entered, supply } = useBlockAtHand();
  const [run, problems, clear] = useRun();
  const [refused, setRefused] = useState<Phrase | null>(null);
  const before = useRef<Before | null>(null);
  const region = useRef<HTMLElement>(null);
  const lacking = shortPlaces([entered], supply.short)[0]!;

  const show = (next: Entry, why: Phrase | null) => {
    clear();
    setRefused(why);
    if (why) store.getState().announce(why);
    if (next !== entry) change({ entry: next });
  };
  const enter = () => {
    const ended = finished(entry, sets);
    if (ended.refused || entry.pending !== '') {
      show(ended.entry, ended.refused);
      if (ended.refused) return;
    }
    const block = { ...entered, places: ended.entry.places };
    if (block.places.every((wedge) => wedge === null)) {
      show(
        ended.entry,
        phrase('Nothing is entered yet. Type the letter of a set to put its wedge in the marked place.'),
      );
      return;
    }
    // What lacks is said beside the octagon already, with its ways out.
    if (supply.short.length > 0) {
      setRefused(null);
      region.current?.querySelector<HTMLElement>('.lacking button')?.focus();
      return;
    }
    setRefused(null);
    if (!run(enterBlocks(project, [block], counts))) return;
    const now = store.getState();
    before.current = { revision: now.revision, into: block.block, entry: ended.entry, counts };
    change({ entry: emptyEntry(block.places.length, block.places[0]?.tip ?? 'up'), counts: [] });
    now.lay({ into: null });
    now.announce(phrase('Block {block} is entered.', { block: number }));
  };
  const back = () => {
    const last = before.current;
    const empty = entry.order.length === 0 && entry.pending === '' && entry.stated === null;
    if (!empty || !last || last.revision !== store.getState().revision) return false;
    store.getState().undo();
    store.getState().lay({ into: last.into });
    change({ entry: entryOf(last.entry.places, last.entry.first), counts: last.counts });
    before.current = null;
    return true;
  };
  const press = (event: Parameters<typeof isKey>[0]): boolean => {
    if (isKey(event, 'nextBlock')) {
      enter();
      return true;
    }
    if (isKey(event, 'wedgeOut') && back()) return true;
    if (isKey(event, 'moreWedges') && supply.short[0]) {
      const { set, tip, needed } = supply.short[0];
      change({ counts: [...counts, { set, tip, count: needed }] });
      return true;
    }
    const next = typed(entry, event.key, sets);
    if (next) show(next.entry, next.refused);
    return next !== null;
  };
  const latest = useRef(press);
  useLayoutEffect(() => {
    latest.current = press;
  });
  useEffect(() => {
    const key = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.metaKey || event.altKey || event.defaultPrevented) return;
      const at = event.target as Element;
      if (at.closest('input, select, textarea, [role="listbox"], [role="dialog"], .wall')) return;
      // A button that the focus is on keeps the keys that press it.
      if (at.closest('button') && (event.key === 'Enter' || event.key === ' ')) return;
      if (latest.current(event)) event.preventDefault();
    };
    globalThis.addEventListener('keydown', key);
    return () => globalThis.removeEventListener('keydown', key);
  }, []);
  useEffect(() => {
    region.current?.focus({ preventScroll: true });
  }, []);
  const tapped = useRef((_wedge: Place) => {});
  useLayoutEffect(() => {
    tapped.current = (wedge) => {
      const next = putIn(entry, wedge);
      show(next.entry, next.refused);
    };
  });
  const take = useCallback((wedge: Place) => tapped.current(wedge), []);
  const whole = !entry.places.includes(null);
  const filled = useMemo(() => openBlocks(project), [project]);
  const room = project.wall.cells.some((cell, at) => cell === null && !isPlain(at, project));
  const whereTo = room ? 'new, hung in the next empty place' : 'new, on the side table: the wall is full';
  return (
    <section
      className="by-keys"
      ref={region}
      tabIndex={-1}
      aria-label={say('Block {block}', { block: number })}
    >
      <div className="entry-side">
        <div className="sheet-of-paper entry-figure">
          <p className="entry-name">
            <b>{say('Block {block}', { block: number })}</b>{' '}
            <span className="quiet">{target ? '' : say(whereTo)}</span>
          </p>
          {filled.length > 0 && !target && entry.order.length === 0 ? (
            <div className="row">
              <p className="quiet grow">
                {say(
                  counted(
                    filled.length,
                    'One planned block is filled already.',
                    '{count} planned blocks are filled already.',
                  ),
                )}
              </p>
              <button
                type="button"
                className="button"
                onClick={() => run(emptyBlocks(store.getState().project, filled))}
              >
                {say('Empty them and enter there')}
              </button>
            </div>
          ) : null}
          <EntryFace
            entry={entry}
            target={target}
            lacking={lacking}
            onMark={(place) => show(markAt(entry, place), null)}
          />
          <p role="status" className="at-hand">
            {say(atHand(entry))}
          </p>
          <Lacking supply={supply} onCount={(more) => change({ counts: [...counts, more] })} />
          {refused ? <Complaint problems={[{ code: 'entry', path: 'entry', message: refused }]} /> : null}
          <Complaint problems={problems} />
          <div className="row entry-acts">
            <button
              type="button"
              className={whole ? 'button solid' : 'button'}
              onMouseDown={staysPut}
              onClick={enter}
            >
              <CornerDownLeft size={16} aria-hidden /> {say('Next block')}
            </button>
            <button
              type="button"
              className="button"
              onMouseDown={staysPut}
              onClick={() => press({ ...NO_KEYS_HELD, key: 'Backspace' })}
            >
              <Delete size={16} aria-hidden /> {say('Back')}
            </button>
          </div>
        </div>
      </div>
      <WedgeKeys entry={entry} target={target} onTake={take} />
    </section>
  );
}

/** A press leaves the focus where it is, so that Enter after it goes to the next block. */
function staysPut(event: MouseEvent): void {
  event.preventDefault();
}

function atHand(entry: Entry): Phrase {
  const { at, pending, places } = entry;
  if (at === null) return phrase('All {count} wedges are in.', { count: places.length });
  if (pending !== '')
    return phrase('Place {place}: set {set} … Space ends the name.', {
      place: at + 1,
      set: pending.toUpperCase(),
    });
  const values = { place: at + 1, count: places.length };
  if (!places.includes(null))
    return phrase('All {count} wedges are in; the mark is on place {place}.', values);
  return phrase('Place {place} of {count}.', values);
}
