// Strip sets made at random from the strips on hand, by the makers' rules of thumb (setScore.ts), for a seed. Sets that are
// kept (locked, sewn or cut) stay as they are, and their strips are not used twice.
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator';
import { freshId, setLetter } from '../model/find';
import type { Phrase } from '../model/phrase';
import type { Fabric, Project, Strip, StripOnHand, StripSet, WedgePlan } from '../model/project';
import type { Inches } from '../model/units';
import { type LengthClass, lengthClasses, USUAL_LENGTH } from './lengthClass';
import { setNotes } from './setNotes';
import { HEIGHT_TO_SPARE, type SetTaste, setTaste } from './setScore';
import { type LoosePiece, type SearchOutcome, searchSets } from './setSearch';
import { stripsLeftBeside } from './stripsUnused';
import { availableWedges, wedgesNeeded, wedgesOnLength } from './yield';

export interface SetMaking {
  readonly fabrics: readonly Fabric[];
  readonly stripsOnHand: readonly StripOnHand[];
  readonly wedge: WedgePlan;
  /** Sets that stay: locked, sewn or cut. Their strips are on hand no more; their wedges count. */
  readonly keep: readonly StripSet[];
  /** So many new sets, as many as these blocks need beside the kept ones, or as many as the strips give. */
  readonly want: { readonly sets: number } | { readonly blocks: number } | 'most';
  readonly seed: number;
}

export interface MadeSets {
  /** The new sets only, all high enough. */
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

/** What makeSets needs of a project: planned, unlocked sets are given up, all others kept. */
export function setMakingOf(project: Project, want: SetMaking['want'], seed: number): SetMaking {
  const { fabrics, stripsOnHand, wedge } = project;
  const keep = project.stripSets.filter((set) => set.locked || set.progress !== 'planned');
  return { fabrics, stripsOnHand, wedge, keep, want, seed };
}

/**
 * Makes sets. Never uses more strips than are on hand, never throws: what cannot be made is said in the notes, with the
 * strips that would mend it. The same input and seed give the same sets.
 */
export function makeSets(making: SetMaking): MadeSets {
  const { wedge } = making;
  const rows = stripsLeftBeside(making.stripsOnHand, making.keep);
  const wide = rows.filter((row) => row.width > 2 * wedge.seam + 1e-9);
  const classes = lengthClasses(wide, wedge);
  const taste = setTaste(making.fabrics, wide, wedge);
  const plan = planSets(making, classes);
  const pieces = loosePieces(classes, taste);
  const keptRims = making.keep
    .flatMap((set) => [set.strips[0], set.strips.at(-1)])
    .map((strip) => taste.fabricIndex.get(strip?.fabric ?? ''))
    .filter((fabric) => fabric !== undefined);
  const found = bestOf(pieces, plan.sets, keptRims, taste, making.seed);
  const whole = found.sets.filter((set) => highEnough(set, pieces, wedge));
  const sets = asStripSets(whole, pieces, classes, making);
  const left = rowsLeft(rows, pieces, whole.flat());
  const notes = setNotes({ ...making, rows, wide, classes, wanted: plan.wanted, sets, left });
  return { sets, left, notes, score: found.cost };
}

function loosePieces(classes: readonly LengthClass[], taste: SetTaste): LoosePiece[] {
  return classes.flatMap(({ rows }, lengthClass) =>
    rows.flatMap((row) =>
      Array.from({ length: row.count }, () => ({
        fabric: row.fabric,
        fabricAt: taste.fabricIndex.get(row.fabric)!,
        width: row.width,
        lengthClass,
        row: row.id,
      })),
    ),
  );
}

/** How many sets to try for and of which length class: the longest strips first, as far as they reach. */
function planSets(making: SetMaking, classes: readonly LengthClass[]): { sets: number[]; wanted: number } {
  const { wedge } = making;
  const each = wedge.cutHeight - 2 * wedge.seam;
  const room = classes.flatMap((one, index) =>
    Array.from({ length: Math.floor(one.reach / each + 1e-9) }, () => index),
  );
  const wanted = setsWanted(making, classes, room);
  const sets = room.slice(0, Math.min(wanted, MOST_SETS));
  return { sets, wanted };
}

function setsWanted(making: SetMaking, classes: readonly LengthClass[], room: readonly number[]): number {
  const { want, wedge, keep } = making;
  // As many as possible leaves a little air: sets exactly as high as the wedge are hard to fill from real widths.
  if (want === 'most') {
    const each = wedge.cutHeight + HEIGHT_TO_SPARE / 2 - 2 * wedge.seam;
    return classes.reduce((sum, one) => sum + Math.floor(one.reach / each + 1e-9), 0);
  }
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

function bestOf(
  pieces: readonly LoosePiece[],
  sets: readonly number[],
  keptRims: readonly number[],
  taste: SetTaste,
  seed: number,
): SearchOutcome {
  const steps = Math.min(MOST_STEPS, STEPS_PER_SET * sets.length);
  const random: RandomGenerator = xoroshiro128plus(seed);
  const input = { pieces, sets, keptRims, taste };
  const outcomes = Array.from({ length: STARTS }, () => searchSets(input, steps, random));
  return outcomes.reduce((best, one) => (one.cost < best.cost ? one : best));
}

function heightOf(set: readonly number[], pieces: readonly LoosePiece[], wedge: WedgePlan): Inches {
  const sum = set.reduce((total, piece) => total + pieces[piece]!.width, 0);
  return sum - 2 * wedge.seam * Math.max(0, set.length - 1);
}

function highEnough(set: readonly number[], pieces: readonly LoosePiece[], wedge: WedgePlan): boolean {
  return set.length > 0 && heightOf(set, pieces, wedge) >= wedge.cutHeight - 1e-9;
}

function asStripSets(
  whole: readonly (readonly number[])[],
  pieces: readonly LoosePiece[],
  classes: readonly LengthClass[],
  making: SetMaking,
): StripSet[] {
  const taken: StripSet[] = [...making.keep];
  const balance = { up: 0, down: 0 };
  for (const set of making.keep) {
    const there = availableWedges(set, making.wedge);
    balance.up += there.up;
    balance.down += there.down;
  }
  const labels = new Set(taken.map((set) => set.label));
  let letter = 0;
  return whole.map((chosen) => {
    while (labels.has(setLetter(letter))) letter += 1;
    labels.add(setLetter(letter));
    const set: StripSet = {
      id: freshId('s', taken),
      label: setLetter(letter),
      strips: chosen.map((piece): Strip => ({ fabric: pieces[piece]!.fabric, width: pieces[piece]!.width })),
      length: classes[pieces[chosen[0]!]!.lengthClass]!.length,
      pressing: 'last',
      // The tip there is less of comes first: an odd wedge is of that tip.
      firstTip: balance.up <= balance.down ? 'up' : 'down',
      progress: 'planned',
      cut: null,
      locked: false,
    };
    const there = availableWedges(set, making.wedge);
    balance.up += there.up;
    balance.down += there.down;
    taken.push(set);
    return set;
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
    const { row } = pieces[piece]!;
    taken.set(row, (taken.get(row) ?? 0) + 1);
  }
  return rows
    .map((row) => ({ ...row, count: row.count - (taken.get(row.id) ?? 0) }))
    .filter((row) => row.count > 0);
}
