// Blocks entered wedge by wedge: the octagon with the place at hand, what is said about it, and a button for each set and tip. Keys are
// heard wherever no field has them.
import { CornerDownLeft, Delete } from 'lucide-react';
import { useCallback, useEffect, useLayoutEffect, useRef, useState } from 'react';
import { enterBlocks, shortPlaces } from '../../../../editing/commands/enterBlocks';
import {
  type Entry,
  emptyEntry,
  entryOf,
  finished,
  markAt,
  putIn,
  typed,
} from '../../../../editing/entering/entry';
import { type Phrase, phrase } from '../../../../model/phrase';
import type { BlockId, Place } from '../../../../model/project';
import { useApp, useAppStore } from '../../../app';
import { Complaint, useRun } from '../../../fields/Complaint';
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

export function ByKeys() {
  const say = useSay();
  const store = useAppStore();
  const sets = useApp((app) => app.project.stripSets);
  const [{ counts }, change] = useEntering();
  const { target, number, entry, entered, supply } = useBlockAtHand();
  const [run, problems, clear] = useRun();
  const [refused, setRefused] = useState<Phrase | null>(null);
  const before = useRef<Before | null>(null);
  const region = useRef<HTMLDivElement>(null);
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
    const { project } = store.getState();
    const block = { ...entered, places: ended.entry.places };
    if (block.places.every((wedge) => wedge === null)) {
      show(
        ended.entry,
        phrase('Nothing is entered yet. A letter puts a wedge of that set in the place marked.'),
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
  const press = (key: string): boolean => {
    if (key === 'Enter') {
      enter();
      return true;
    }
    if (key === 'Backspace' && back()) return true;
    if (key === '+' && supply.short[0]) {
      const { set, tip, needed } = supply.short[0];
      change({ counts: [...counts, { set, tip, count: needed }] });
      return true;
    }
    const next = typed(entry, key, sets);
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
      const mine = at === document.body || region.current?.contains(at);
      if (!mine || at.matches('input, select, textarea')) return;
      // A button that the focus is on keeps the keys that press it.
      if (at.closest('button') && (event.key === 'Enter' || event.key === ' ')) return;
      if (latest.current(event.key)) event.preventDefault();
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
  const whole = entry.at === null;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: keys are heard here
    <div
      className="by-keys"
      ref={region}
      tabIndex={0}
      role="group"
      aria-label={say('Block {block}', { block: number })}
    >
      <div className="entry-side">
        <div className="sheet-of-paper entry-figure">
          <p className="entry-name">
            <b>{say('Block {block}', { block: number })}</b>{' '}
            <span className="quiet">{target ? '' : say('new')}</span>
          </p>
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
          <div className="row entry-acts" onMouseDown={(event) => event.preventDefault()}>
            <button type="button" className={whole ? 'button solid' : 'button'} onClick={enter}>
              <CornerDownLeft size={16} aria-hidden /> {say('Next block')}
            </button>
            <button type="button" className="button" onClick={() => press('Backspace')}>
              <Delete size={16} aria-hidden /> {say('Back')}
            </button>
          </div>
        </div>
      </div>
      <WedgeKeys entry={entry} target={target} onTake={take} />
    </div>
  );
}

function atHand(entry: Entry): Phrase {
  const { at, pending, places } = entry;
  if (at === null) return phrase('All {count} wedges are in.', { count: places.length });
  if (pending !== '')
    return phrase('Place {place}: set {set} … Space ends the name.', {
      place: at + 1,
      set: pending.toUpperCase(),
    });
  return phrase('Place {place} of {count}.', { place: at + 1, count: places.length });
}
