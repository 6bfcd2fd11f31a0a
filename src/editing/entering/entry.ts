// A block as it is typed in, one wedge after the other: a letter picks the set, up and down alternate by themselves, and the place moves
// on. Pure; the screen passes keys and taps in. It knows nothing of how many wedges there are (enterBlocks.ts).
import { type Phrase, phrase } from '../../model/phrase';
import type { Place, StripSet, Tip } from '../../model/project';

export interface Entry {
  readonly places: readonly (Place | null)[];
  /** The place, from 0, that the next wedge goes into; null when all are filled. */
  readonly at: number | null;
  /** The places in the order they were filled, the last one last. */
  readonly order: readonly number[];
  /** Letters typed so far of a set with a longer name. */
  readonly pending: string;
  /** The tip stated before a letter; null: as it alternates. */
  readonly stated: Tip | null;
  /** Whether the last key put a wedge in, so that an arrow speaks of that wedge. */
  readonly fresh: boolean;
  /** The tip of place 1 as long as no wedge is in. */
  readonly first: Tip;
}

/** The entry after a key, and why the key meant nothing; null where it meant something. */
export interface Typing {
  readonly entry: Entry;
  readonly refused: Phrase | null;
}

type Labels = readonly Pick<StripSet, 'id' | 'label'>[];

/** An entry of these places; the mark is on the first empty one. */
export function entryOf(places: readonly (Place | null)[], first: Tip = 'up'): Entry {
  const empty = places.indexOf(null);
  return {
    places,
    at: empty < 0 ? null : empty,
    order: places.flatMap((wedge, place) => (wedge ? [place] : [])),
    pending: '',
    stated: null,
    fresh: false,
    first,
  };
}

/** An entry of a block with so many places, all empty. */
export function emptyEntry(perBlock: number, first: Tip = 'up'): Entry {
  return entryOf(
    Array.from({ length: perBlock }, () => null),
    first,
  );
}

/** The tip that a place would get: the stated one, else in turn with the nearest wedge before it. */
export function proposedTip(entry: Entry, place: number): Tip {
  const { places, stated, at, first } = entry;
  if (stated && place === at) return stated;
  for (let back = 1; back < places.length; back += 1) {
    const wedge = places.at(place - back);
    if (wedge) return back % 2 === 0 ? wedge.tip : otherTip(wedge.tip);
  }
  return place % 2 === 0 ? first : otherTip(first);
}

/**
 * The entry with a wedge in the marked place, and the mark on the next empty one. In a block that was full already it goes on place by place
 * to the last. Without a mark it is refused.
 */
export function putIn(entry: Entry, wedge: Place): Typing {
  const { at } = entry;
  if (at === null) return { entry, refused: FULL };
  const places = entry.places.with(at, wedge);
  const next = entry.places.includes(null)
    ? places.map((_, on) => (at + on + 1) % places.length).find((place) => !places[place])
    : [at + 1].find((place) => place < places.length);
  return {
    entry: {
      ...entry,
      places,
      at: next ?? null,
      order: [...entry.order.filter((place) => place !== at), at],
      pending: '',
      stated: null,
      fresh: true,
    },
    refused: null,
  };
}

const FULL = phrase(
  'All places are filled. Enter goes to the next block; Backspace takes the last wedge out.',
);

/**
 * A key: a letter, or the name that the browser gives it. Letters pick a set; arrows up and down, and U and D where no set begins with
 * one of them, say the tip; left and right move the mark; Backspace takes the last wedge out, Delete the marked one; Space ends the name of a
 * set that could go on. Null for a key that has no meaning here.
 */
export function typed(entry: Entry, key: string, sets: Labels): Typing | null {
  const { places, at } = entry;
  if (key.length === 1 && key !== ' ') {
    const tip = tipKey(entry, key, sets);
    return tip ? tipped(entry, tip, sets) : letter(entry, key, sets);
  }
  switch (key) {
    case 'ArrowUp':
      return tipped(entry, 'up', sets);
    case 'ArrowDown':
      return tipped(entry, 'down', sets);
    case 'ArrowLeft':
    case 'ArrowRight': {
      const by = key === 'ArrowRight' ? 1 : -1;
      const from = at ?? (by > 0 ? -1 : 0);
      return { entry: markAt(entry, (from + by + places.length) % places.length), refused: null };
    }
    case 'Backspace':
      return { entry: back(entry), refused: null };
    case 'Delete':
      return { entry: at === null ? entry : takenOut(entry, at), refused: null };
    case ' ':
      return finished(entry, sets);
    default:
      return null;
  }
}

/** The entry with a name ended that could have gone on, as Space does. */
export function finished(entry: Entry, sets: Labels): Typing {
  if (entry.pending === '') return { entry, refused: null };
  const set = named(entry.pending, sets);
  if (!set) return { entry: { ...entry, pending: '' }, refused: noSet(entry.pending) };
  return withSet(entry, set.id);
}

/** The mark on a place, to fill it or to fill it anew. */
export function markAt(entry: Entry, place: number): Entry {
  return { ...entry, at: place, pending: '', stated: null, fresh: false };
}

/** Letters with which a longer name of a set begins. */
function goesOn(letters: string, sets: Labels): boolean {
  const start = letters.toUpperCase();
  return sets.some(({ label }) => label.length > start.length && label.toUpperCase().startsWith(start));
}

/** The set of this name; upper and lower case count as one unless two sets differ in nothing else. */
export function named(name: string, sets: Labels): Labels[number] | undefined {
  return (
    sets.find(({ label }) => label === name) ??
    sets.find(({ label }) => label.toUpperCase() === name.toUpperCase())
  );
}

function letter(entry: Entry, key: string, sets: Labels): Typing {
  const letters = entry.pending + key;
  const set = named(letters, sets);
  if (goesOn(letters, sets)) {
    if (entry.at === null) return { entry, refused: FULL };
    return { entry: { ...entry, pending: letters, fresh: false }, refused: null };
  }
  if (set) return withSet(entry, set.id);
  if (entry.pending === '') return { entry, refused: noSet(key) };
  // The letters so far are a whole name, and the key begins the next one.
  const ended = finished(entry, sets);
  return ended.refused ? { ...ended, refused: noSet(letters) } : letter(ended.entry, key, sets);
}

function noSet(name: string): Phrase {
  return phrase('There is no set {set}.', { set: name.toUpperCase() });
}

function withSet(entry: Entry, set: string): Typing {
  if (entry.at === null) return { entry, refused: FULL };
  return putIn(entry, { set, tip: proposedTip(entry, entry.at) });
}

/** Whether U and D say the tip: no set begins with one of them. */
export function lettersSayTips(sets: Labels): boolean {
  return !sets.some(({ label }) => /^[ud]/i.test(label));
}

/** The tip that U or D say; null where they begin a set, or go on with the letters so far. */
function tipKey(entry: Entry, key: string, sets: Labels): Tip | null {
  const tip = { u: 'up', d: 'down' }[key.toLowerCase()] as Tip | undefined;
  if (!tip || !lettersSayTips(sets)) return null;
  const letters = entry.pending + key;
  return named(letters, sets) || goesOn(letters, sets) ? null : tip;
}

function tipped(entry: Entry, tip: Tip, sets: Labels): Typing {
  if (entry.pending !== '') return finished({ ...entry, stated: tip }, sets);
  const last = entry.order.at(-1);
  const place = entry.fresh ? last : entry.at;
  const wedge = place === undefined || place === null ? null : entry.places[place];
  if (place !== undefined && place !== null && wedge) {
    return { entry: { ...entry, places: entry.places.with(place, { ...wedge, tip }) }, refused: null };
  }
  return { entry: { ...entry, stated: entry.at === null ? null : tip }, refused: null };
}

function back(entry: Entry): Entry {
  if (entry.pending !== '') return { ...entry, pending: '' };
  if (entry.stated !== null) return { ...entry, stated: null };
  const last = entry.order.at(-1);
  return last === undefined ? entry : takenOut(entry, last);
}

function takenOut(entry: Entry, place: number): Entry {
  const order = entry.order.filter((one) => one !== place);
  return { ...markAt(entry, place), places: entry.places.with(place, null), order };
}

function otherTip(tip: Tip): Tip {
  return tip === 'up' ? 'down' : 'up';
}
