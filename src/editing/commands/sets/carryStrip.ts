// Carries one strip by hand: within its set, to another set, from the left-overs into a set or to a new one, and back to the
// left-overs. What is in the way is said with the ways round it, and one command can clear them and carry, in one undo.
import { stripKey, stripsLeftBeside } from '../../../cutting/sets/stripsUnused';
import { countKept } from '../../../cutting/wedges/countKept';
import { wedgeLedger } from '../../../cutting/wedges/ledger';
import { availableWedges } from '../../../cutting/wedges/yield';
import { heightShort, setHeight } from '../../../geometry/stripSet';
import { createSet } from '../../../model/create';
import { findSet } from '../../../model/find';
import { whyStripsLocked } from '../../../model/freedom';
import { HAIR } from '../../../model/lengths';
import { counted, type Phrase, phrase } from '../../../model/phrase';
import {
  MOST_STRIPS,
  type Project,
  type Strip,
  type StripSet,
  type StripSetId,
} from '../../../model/project';
import type { Inches } from '../../../model/units';
import { apply, type Command, Refusal } from '../../apply';

/** A strip of a set (`at` from 0, the first strip), or one of the left-overs. */
export type StripSource =
  | { readonly kind: 'set'; readonly set: StripSetId; readonly at: number }
  | { readonly kind: 'left'; readonly strip: Strip; readonly length: Inches };

/** Where it is put: the index it has in the set afterwards; the left-overs; a set that begins with it. */
export type StripGoal =
  | { readonly kind: 'set'; readonly set: StripSetId; readonly at: number }
  | { readonly kind: 'left' }
  | { readonly kind: 'new' };

/** What is cleared out of the way first: locks taken off, the set cut to the strip's length, places of lost wedges emptied. */
export type Clearing = 'unlock' | 'shorten' | 'empty';

const NONE: ReadonlySet<Clearing> = new Set();

/**
 * The command that carries a strip. Nothing changes where it comes to lie where it was. Refused for sewn and locked sets, a
 * strip that is too short, a full set, and where blocks use wedges that the sets would no longer give.
 */
export function carryStrip(
  project: Project,
  from: StripSource,
  to: StripGoal,
  clearing: ReadonlySet<Clearing> = NONE,
): Command {
  return {
    label: labelOf(project, from, to),
    change: (draft) => {
      if (staysPut(from, to)) return;
      const source = from.kind === 'set' ? known(draft, from.set) : null;
      const goal = to.kind === 'set' ? known(draft, to.set) : null;
      const strip = from.kind === 'left' ? from.strip : source?.strips[from.at];
      if (!strip) throw new Error('carryStrip: no such strip');
      const free = clearing.has('unlock');
      const touched = new Set([source, goal]);
      for (const set of touched) if (set) refuseLocked(draft, set, free);
      if (strip.locked && !free) refuseLockedStrip(source, from);
      if (goal && source !== goal) {
        refuseFull(goal);
        const long = lengthOf(project, from, strip);
        if (long < goal.length - HAIR) {
          if (!clearing.has('shorten')) refuseShort(goal, long);
          goal.length = long;
        }
      }
      const carried: Strip = { ...strip };
      if (free) delete carried.locked;
      if (source && from.kind === 'set') source.strips.splice(from.at, 1);
      if (to.kind === 'set') goal?.strips.splice(to.at, 0, carried);
      if (to.kind === 'new') draft.stripSets.push(begunWith(draft, carried, source?.length ?? lengthOf(project, from, strip)));
      for (const set of touched) {
        if (!set) continue;
        set.cut = countKept(set, draft.wedge, { set: known(project, set.id), wedge: project.wedge });
        heedBlocks(project, draft, set, clearing.has('empty'));
      }
    },
  }; // biome-ignore format: one line to a step
}

/** Whether a strip put there lies where it lay. */
export function staysPut(from: StripSource, to: StripGoal): boolean {
  if (from.kind === 'left') return to.kind === 'left';
  return to.kind === 'set' && to.set === from.set && to.at === from.at;
}

/** A way round a refusal: what it clears, in words for its button, and the command that clears and carries. */
export interface WayRound {
  readonly words: Phrase;
  readonly command: Command;
}

const CLEARS: Readonly<Record<string, Clearing>> = {
  'set-locked': 'unlock',
  'strip-locked': 'unlock',
  'strip-short': 'shorten',
  'wedges-used': 'empty',
};

/** The way round what stops a strip, or null where nothing does or where there is no way round. */
export function wayRound(project: Project, from: StripSource, to: StripGoal): WayRound | null {
  const clearing = new Set<Clearing>();
  const words: Phrase[] = [];
  for (;;) {
    const command = carryStrip(project, from, to, clearing);
    const outcome = apply(project, command);
    if (outcome.ok) {
      if (words.length === 0) return null;
      const move = { first: words.reduce((one, other) => phrase('{one}, {other}', { one, other })) };
      return { command, words: phrase('{first}, and move it', move) };
    }
    const clears = CLEARS[outcome.problems[0]!.code];
    if (!clears || clearing.has(clears)) return null;
    clearing.add(clears);
    words.push(clearingWords(project, from, to, clears));
  }
}

function clearingWords(project: Project, from: StripSource, to: StripGoal, clears: Clearing): Phrase {
  if (clears === 'unlock') return phrase('Unlock');
  const goal = to.kind === 'set' ? findSet(project, to.set) : undefined;
  if (clears === 'shorten') {
    const strip = from.kind === 'left' ? from.strip : known(project, from.set).strips[from.at]!;
    return phrase('Make set {set} {long} long', {
      set: goal?.label ?? '',
      long: { atMost: lengthOf(project, from, strip) },
    });
  }
  return phrase('Empty the places of the lost wedges');
}

function labelOf(project: Project, from: StripSource, to: StripGoal): Phrase {
  const name = (id: StripSetId) => findSet(project, id)?.label ?? '';
  const out = from.kind === 'set' ? name(from.set) : '';
  if (to.kind === 'left') return phrase('take a strip out of set {set}', { set: out });
  if (to.kind === 'new') return phrase('begin a strip set with a strip');
  if (from.kind === 'left') return phrase('lay a strip on set {set}', { set: name(to.set) });
  return from.set === to.set
    ? phrase('move a strip within set {set}', { set: out })
    : phrase('move a strip from set {set} to set {other}', { set: out, other: name(to.set) });
}

function known(project: Project, id: StripSetId): StripSet {
  const set = findSet(project, id);
  if (!set) throw new Error(`carryStrip: no set ${id}`);
  return set;
}

function begunWith(draft: Project, strip: Strip, length: Inches): StripSet {
  return { ...createSet(draft), strips: [strip], length };
}

function refuseLocked(draft: Project, set: StripSet, unlock: boolean): void {
  const sewn = whyStripsLocked(draft, set);
  if (sewn) throw new Refusal('set-sewn', 'stripSets', sewn);
  if (!set.locked) return;
  if (unlock) set.locked = false;
  else {
    const message = phrase('Set {set} is locked; its strips stay as they are.', { set: set.label });
    throw new Refusal('set-locked', 'stripSets', message);
  }
}

function refuseLockedStrip(source: StripSet | null, from: StripSource): never {
  const values = { number: from.kind === 'set' ? from.at + 1 : 1, set: source?.label ?? '' };
  const message = phrase('Strip {number} of set {set} is locked; it keeps its place.', values);
  throw new Refusal('strip-locked', 'stripSets', message);
}

function refuseFull(goal: StripSet): void {
  if (goal.strips.length < MOST_STRIPS) return;
  const message = phrase('Set {set} has {count} strips; that is the most.', {
    set: goal.label,
    count: MOST_STRIPS,
  });
  throw new Refusal('set-full', 'stripSets', message);
}

function refuseShort(goal: StripSet, long: Inches): never {
  const message = phrase('This strip is {long} long, and set {set} is {length}.', {
    long: { atMost: long },
    length: { atLeast: goal.length },
    set: goal.label,
  });
  throw new Refusal('strip-short', 'stripSets', message);
}

/**
 * How long a strip is: as the left-over says; one of a set is as long as the longest like it that no other set needs, and
 * long enough for any set where none is written down.
 */
function lengthOf(project: Project, from: StripSource, strip: Strip): Inches {
  if (from.kind === 'left') return from.length;
  const others = project.stripSets.map((set) =>
    set.id === from.set ? { ...set, strips: set.strips.toSpliced(from.at, 1) } : set,
  );
  const key = stripKey(strip.fabric, strip.width);
  const alike = stripsLeftBeside(project.stripsOnHand, others).filter(
    (row) => stripKey(row.fabric, row.width) === key,
  );
  if (alike.length === 0) return Number.POSITIVE_INFINITY;
  return Math.max(...alike.map((row) => row.length));
}

/** Refuses a change of a set that takes wedges from blocks; `empty` takes them out of the blocks, the last block first. */
function heedBlocks(project: Project, draft: Project, set: StripSet, empty: boolean): void {
  const row = wedgeLedger(project).find((one) => one.set.id === set.id);
  if (!row) return;
  const there = availableWedges(set, project.wedge);
  const lost = { up: Math.max(0, row.used.up - there.up), down: Math.max(0, row.used.down - there.down) };
  const count = lost.up + lost.down;
  if (count === 0) return;
  if (!empty) throw new Refusal('wedges-used', 'stripSets', whyUsed(project, set, count));
  for (const block of draft.blocks.toReversed()) {
    block.places.forEach((place, at) => {
      if (place?.set !== set.id || lost[place.tip] === 0) return;
      lost[place.tip] -= 1;
      block.places[at] = null;
    });
  }
}

function whyUsed({ wedge }: Project, set: StripSet, lost: number): Phrase {
  const height = setHeight(set.strips, wedge.seam);
  const short = heightShort(height, wedge);
  const values = { set: set.label, height: { atMost: height }, short: { atLeast: short } };
  return short > 0
    ? counted(
        lost,
        'Set {set} would be {height} high, {short} short, and blocks use 1 wedge of it.',
        'Set {set} would be {height} high, {short} short, and blocks use {count} wedges of it.',
        values,
      )
    : counted(
        lost,
        'Set {set} would give 1 wedge fewer than the blocks use.',
        'Set {set} would give {count} wedges fewer than the blocks use.',
        values,
      );
}
