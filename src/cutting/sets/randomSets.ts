// Strip sets made at random from the strips on hand, by the makers' rules of thumb (setScore.ts), for a seed. Sets that are
// kept (locked, sewn or cut) stay as they are, locked strips keep their places, and no strip is used twice.
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator';
import { clothTable } from '../../cloth/cloths';
import { finishedWidth, heightShort, setHeight } from '../../geometry/stripSet';
import { freshId, setLetter } from '../../model/find';
import { isTooNarrow, piecesIn } from '../../model/lengths';
import type { Phrase } from '../../model/phrase';
import type { Fabric, Project, Strip, StripOnHand, StripSet, WedgePlan } from '../../model/project';
import type { Inches } from '../../model/units';
import { availableWedges, wedgesNeeded, wedgesOnLength } from '../wedges/yield';
import { type LengthClass, lengthClasses, USUAL_LENGTH } from './lengthClass';
import { setNotes } from './setNotes';
import { HEIGHT_TO_SPARE, type SetScoring, setScoring } from './setScore';
import {
  type HeldPlaces,
  type LoosePiece,
  type SearchInput,
  type SearchOutcome,
  searchSets,
} from './setSearch';
import { stripsLeftBeside } from './stripsUnused';

export interface SetMaking {
  readonly fabrics: readonly Fabric[];
  /** ΔE00 from which two cloths no longer read as one, as the person has it (Preferences). */
  readonly lookalikes: number;
  readonly stripsOnHand: readonly StripOnHand[];
  readonly wedge: WedgePlan;
  /** Sets that stay: locked, sewn or cut. Their strips are on hand no more; their wedges count. */
  readonly keep: readonly StripSet[];
  /** Sets made anew round their locked strips; they keep their letters. */
  readonly held?: readonly StripSet[];
  /** So many new sets, as many as these blocks need beside the kept ones, or as many as the strips give. */
  readonly want: { readonly sets: number } | { readonly blocks: number } | 'most';
  readonly seed: number;
}

export interface MadeSets {
  /** The new sets only, all high enough but those with locked strips there were no others to lay to. */
  readonly sets: StripSet[];
  /** Strips on hand that no set uses. */
  readonly left: StripOnHand[];
  /** What is missing or could not be helped; empty when all went well. */
  readonly notes: Phrase[];
  /** The score of the sets by SET_WEIGHTS; lower is better. Only for comparing makings of the same strips. */
  readonly score: number;
}

/** Random starts of which the best is taken, and search steps for each set and start. */
const STARTS = 3;
const STEPS_PER_SET = 1_600;
const MOST_STEPS = 40_000;
const MOST_SETS = 400;

/** What makeSets needs of a project: planned, unlocked sets are given up but for their locked strips, all others kept. */
export function setMakingOf(project: Project, want: SetMaking['want'], seed: number): SetMaking {
  const { fabrics, preferences, stripsOnHand, wedge } = project;
  const stays = (set: StripSet) => set.locked || set.progress !== 'planned';
  const keep = project.stripSets.filter(stays);
  const held = project.stripSets.filter((set) => !stays(set) && set.strips.some((strip) => strip.locked));
  const { lookalikes } = preferences;
  return { fabrics, lookalikes, stripsOnHand, wedge, keep, held, want, seed };
}

/**
 * Makes sets. Never uses more strips than are on hand, never throws: what cannot be made is said in the notes, with the
 * strips that would mend it. The same input and seed give the same sets.
 */
export function makeSets(making: SetMaking): MadeSets {
  const { wedge } = making;
  const rows = stripsLeftBeside(making.stripsOnHand, [...making.keep, ...lockedParts(making)]);
  const wide = rows.filter((row) => !isTooNarrow(row.width, wedge.seam));
  const classes = lengthClasses(wide, wedge);
  const cloths = clothTable(making.fabrics, undefined, making.lookalikes);
  const scoring = setScoring(cloths, wide, wedge);
  const plan = planSets(making, classes);
  const loose = loosePieces(classes, scoring);
  const { pieces, held } = heldPieces(making, loose, plan.sets, scoring);
  const keptRims = making.keep
    .flatMap((set) => [set.strips[0], set.strips.at(-1)])
    .map((strip) => scoring.fabricIndex.get(strip?.fabric ?? ''))
    .filter((fabric) => fabric !== undefined);
  const found = bestOf({ pieces, sets: plan.sets, held, keptRims, scoring }, making.seed);
  const whole = found.sets.map((set, at) => at < held.length || highEnough(set, pieces, wedge));
  const laid = found.sets.filter((_, at) => whole[at]);
  const sets = asStripSets(laid, pieces, classes, making);
  const left = rowsLeft(rows, loose, laid.flat());
  const high = sets.filter((set) => heightShort(setHeight(set.strips, wedge.seam), wedge) === 0);
  const notes = setNotes({ ...making, rows, wide, classes, wanted: plan.wanted, sets: high, left });
  return { sets, left, notes, score: found.cost };
}

/** The locked strips of sets made anew, as sets: what they take from the strips on hand. */
function lockedParts({ held = [] }: SetMaking): StripSet[] {
  return held.map((set) => ({ ...set, strips: set.strips.filter((strip) => strip.locked) }));
}

function loosePieces(classes: readonly LengthClass[], scoring: SetScoring): LoosePiece[] {
  return classes.flatMap(({ rows }, lengthClass) =>
    rows.flatMap((row) =>
      Array.from({ length: row.count }, () => ({
        fabric: row.fabric,
        fabricAt: scoring.fabricIndex.get(row.fabric)!,
        width: row.width,
        lengthClass,
        row: row.id,
      })),
    ),
  );
}

/** The locked strips as pieces behind the loose ones, and the places they keep in the first sets. */
function heldPieces(
  making: SetMaking,
  loose: readonly LoosePiece[],
  sets: readonly number[],
  scoring: SetScoring,
): { pieces: LoosePiece[]; held: HeldPlaces[] } {
  const pieces = [...loose];
  const held = (making.held ?? []).map((set, index): HeldPlaces => {
    const kept = set.strips.map((strip, at): number | null => {
      if (!strip.locked) return null;
      const fabricAt = scoring.fabricIndex.get(strip.fabric)!;
      const row = `locked ${set.id} ${at}`;
      pieces.push({
        fabric: strip.fabric,
        fabricAt,
        width: strip.width,
        lengthClass: sets[index]!,
        row,
        locked: true,
      });
      return pieces.length - 1;
    });
    // A locked last strip stays last; the others keep their places counted from the first.
    const last = kept.length > 1 ? kept.at(-1)! : null;
    const inner = last === null ? kept : kept.slice(0, -1);
    const end = inner.findLastIndex((piece) => piece !== null);
    return { fromFirst: inner.slice(0, end + 1), last };
  });
  return { pieces, held };
}

/** How many sets to try for and of which length class: the longest strips first, as far as they reach. */
function planSets(making: SetMaking, classes: readonly LengthClass[]): { sets: number[]; wanted: number } {
  const { wedge, held = [] } = making;
  const each = finishedWidth(wedge.cutHeight, wedge.seam);
  const heldIn = held.map((set) => nearestClass(set.length, classes));
  // What the sets with locked strips take of each class before others are thought of.
  const reach = classes.map((one) => one.reach);
  held.forEach((set, at) => {
    const locked = set.strips.filter((strip) => strip.locked);
    const has = locked.reduce((sum, strip) => sum + finishedWidth(strip.width, wedge.seam), 0);
    if (reach[heldIn[at]!] !== undefined) reach[heldIn[at]!]! -= Math.max(0, each - has);
  });
  const fill = (height: Inches) =>
    reach.flatMap((there, index) =>
      Array.from({ length: Math.max(0, piecesIn(there, height)) }, () => index),
    );
  const room = [...heldIn, ...fill(each)];
  // As many as possible leaves a little air: sets exactly as high as the wedge are hard to fill from real widths.
  const most = held.length + fill(each + HEIGHT_TO_SPARE / 2).length;
  const wanted = making.want === 'most' ? most : setsWanted(making, making.want, classes, room);
  const sets = room.slice(0, Math.max(held.length, Math.min(wanted, MOST_SETS)));
  return { sets, wanted };
}

/** The class whose strips are nearest in length to a set's; 0 where there are none. */
function nearestClass(length: Inches, classes: readonly LengthClass[]): number {
  const off = (index: number) => Math.abs(classes[index]!.length - length);
  return classes.reduce((best, _, index) => (off(index) < off(best) ? index : best), 0);
}

function setsWanted(
  making: SetMaking,
  want: Exclude<SetMaking['want'], 'most'>,
  classes: readonly LengthClass[],
  room: readonly number[],
): number {
  const { wedge, keep } = making;
  if ('sets' in want) return want.sets;
  const need = wedgesNeeded(want.blocks, keep, wedge);
  let count = 0;
  while ((need.up > 0 || need.down > 0) && count < MOST_SETS) {
    // Where strips run out the count still says how many sets of the same length are missing.
    const lengthClass = classes[room[count] ?? classes.length - 1];
    // A set just high enough; a higher one gives no fewer.
    const gives = Math.max(2, wedgesOnLength(lengthClass?.length ?? USUAL_LENGTH, wedge.cutHeight, wedge));
    const first = need.up >= need.down ? 'up' : 'down';
    need.up -= Math.floor(gives / 2) + (first === 'up' ? gives % 2 : 0);
    need.down -= Math.floor(gives / 2) + (first === 'down' ? gives % 2 : 0);
    count += 1;
  }
  return count;
}

function bestOf(input: SearchInput, seed: number): SearchOutcome {
  const steps = Math.min(MOST_STEPS, STEPS_PER_SET * input.sets.length);
  const random: RandomGenerator = xoroshiro128plus(seed);
  const outcomes = Array.from({ length: STARTS }, () => searchSets(input, steps, random));
  return outcomes.reduce((best, one) => (one.cost < best.cost ? one : best));
}

function highEnough(set: readonly number[], pieces: readonly LoosePiece[], wedge: WedgePlan): boolean {
  const strips = set.map((piece) => pieces[piece]!);
  return heightShort(setHeight(strips, wedge.seam), wedge) === 0;
}

function asStripSets(
  whole: readonly (readonly number[])[],
  pieces: readonly LoosePiece[],
  classes: readonly LengthClass[],
  making: SetMaking,
): StripSet[] {
  const held = making.held ?? [];
  const taken: StripSet[] = [...making.keep, ...held];
  const balance = { up: 0, down: 0 };
  const balanced = (set: StripSet) => {
    const gives = availableWedges(set, making.wedge);
    balance.up += gives.up;
    balance.down += gives.down;
    return set;
  };
  making.keep.forEach(balanced);
  const labels = new Set(taken.map((set) => set.label));
  let letter = 0;
  return whole.map((chosen, at) => {
    const strips = chosen.map((piece): Strip => {
      const { fabric, width, locked } = pieces[piece]!;
      return locked ? { fabric, width, locked } : { fabric, width };
    });
    const there = classes[pieces[chosen[0]!]!.lengthClass]?.length;
    const before = held[at];
    if (before) {
      return balanced({
        ...before,
        strips,
        length: Math.min(before.length, there ?? before.length),
        cut: null,
      });
    }
    while (labels.has(setLetter(letter))) letter += 1;
    labels.add(setLetter(letter));
    const set: StripSet = {
      id: freshId('s', taken),
      label: setLetter(letter),
      strips,
      length: there ?? USUAL_LENGTH,
      pressing: 'last',
      // The tip there is less of comes first: an odd wedge is of that tip.
      firstTip: balance.up <= balance.down ? 'up' : 'down',
      progress: 'planned',
      cut: null,
      locked: false,
    };
    taken.push(set);
    return balanced(set);
  });
}

/** The rows less the pieces used; rows used up are left out. */
function rowsLeft(
  rows: readonly StripOnHand[],
  pieces: readonly LoosePiece[],
  used: readonly number[],
): StripOnHand[] {
  const taken = new Map<string, number>();
  for (const piece of used) {
    const row = pieces[piece]?.row;
    if (row === undefined) continue;
    taken.set(row, (taken.get(row) ?? 0) + 1);
  }
  return rows
    .map((row) => ({ ...row, count: row.count - (taken.get(row.id) ?? 0) }))
    .filter((row) => row.count > 0);
}
