// Strip sets made at random from the strips on hand, by the makers' rules of thumb (setScore.ts), for a seed. Sets that are
// kept (locked, sewn or cut) stay as they are, and their strips are not used twice.
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator';
import { freshId, setLetter } from '../model/find';
import { counted, type Phrase, phrase } from '../model/phrase';
import type { Fabric, Project, Strip, StripOnHand, StripSet, Tip, WedgePlan } from '../model/project';
import type { Inches } from '../model/units';
import { HEIGHT_TO_SPARE, type SetTaste, setTaste } from './setScore';
import { type LoosePiece, type SearchOutcome, searchSets } from './setSearch';
import { stripsLeftBeside } from './stripsUnused';
import { availableWedges, lengthFor, wedgesOnLength } from './yield';

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

/** Strips whose lengths differ by no more than this are sewn together. */
const SAME_LENGTH: Inches = 2;
/** Random starts of which the best is taken, and search steps for each set and start. */
const STARTS = 3;
const STEPS_PER_SET = 1_600;
const MOST_STEPS = 40_000;
const MOST_SETS = 400;
/** Length of a set where there are no strips to go by: the usable width of fabric (common practice, no source). */
const USUAL_LENGTH: Inches = 40;
/** Narrower strips than this are not what one would go and cut to fill a set. */
const LEAST_USUAL_WIDTH: Inches = 1;

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
  const notes = [
    ...tooNarrow(rows, wedge),
    ...tooShort(wide, wedge),
    ...shortage(making, plan.wanted, sets, classes, left),
    ...sameNeighbours(sets),
  ];
  return { sets, left, notes, score: found.cost };
}

/** Rows of about one length; `length` is the shortest of them, which is as long as a set of them can be. */
interface LengthClass {
  readonly rows: readonly StripOnHand[];
  readonly length: Inches;
  /** What its strips add to heights, altogether. */
  readonly reach: Inches;
}

/** Classes from the longest strips to the shortest; strips too short for two wedges are left out. */
function lengthClasses(rows: readonly StripOnHand[], wedge: WedgePlan): LengthClass[] {
  const least = lengthFor(2, wedge.cutHeight, wedge);
  const sorted = rows
    .filter((row) => row.length >= least && row.count > 0)
    .sort((one, other) => other.length - one.length);
  const groups: StripOnHand[][] = [];
  for (const row of sorted) {
    const group = groups.at(-1);
    if (group && group[0]!.length - row.length <= SAME_LENGTH) group.push(row);
    else groups.push([row]);
  }
  return groups.map((group) => ({
    rows: group,
    length: group.at(-1)!.length,
    reach: group.reduce((sum, row) => sum + row.count * (row.width - 2 * wedge.seam), 0),
  }));
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

function wedgesNeeded(blocks: number, keep: readonly StripSet[], wedge: WedgePlan): Record<Tip, number> {
  const need = { up: (blocks * wedge.perBlock) / 2, down: (blocks * wedge.perBlock) / 2 };
  for (const set of keep) {
    const there = availableWedges(set, wedge);
    need.up -= there.up;
    need.down -= there.down;
  }
  return { up: Math.max(0, need.up), down: Math.max(0, need.down) };
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

function tooNarrow(rows: readonly StripOnHand[], wedge: WedgePlan): Phrase[] {
  const narrow = rows.reduce((sum, row) => sum + (row.width > 2 * wedge.seam + 1e-9 ? 0 : row.count), 0);
  if (narrow === 0) return [];
  const one = '1 strip is left aside: cut {least} wide or less, it would vanish in its two seams.';
  const many =
    '{count} strips are left aside: cut {least} wide or less, they would vanish in their two seams.';
  return [counted(narrow, one, many, { least: { inches: 2 * wedge.seam } })];
}

function tooShort(rows: readonly StripOnHand[], wedge: WedgePlan): Phrase[] {
  const least = lengthFor(2, wedge.cutHeight, wedge);
  const short = rows.reduce((sum, row) => sum + (row.length < least ? row.count : 0), 0);
  if (short === 0) return [];
  const one = '1 strip is left aside: a set needs strips at least {least} long to give two wedges.';
  const many = '{count} strips are left aside: a set needs strips at least {least} long to give two wedges.';
  return [counted(short, one, many, { least: { inches: least } })];
}

/** Says how many sets are missing, and how many strips of which width would mend it for certain. */
function shortage(
  making: SetMaking,
  wanted: number,
  sets: readonly StripSet[],
  classes: readonly LengthClass[],
  left: readonly StripOnHand[],
): Phrase[] {
  const missing = wanted - sets.length;
  if (making.want === 'most' || missing <= 0) return wedgeShortage(making, sets);
  const { wedge } = making;
  const width = usualWidth(classes, wedge);
  const length = classes[0]?.length ?? USUAL_LENGTH;
  const gain = width - 2 * wedge.seam;
  const each = wedge.cutHeight - 2 * wedge.seam;
  const beside = left
    .filter((row) => row.width > 2 * wedge.seam && row.length >= length - 1e-9)
    .reduce((sum, row) => sum + row.count * (row.width - 2 * wedge.seam), 0);
  const first = Math.max(1, Math.ceil((each - beside) / gain - 1e-9));
  const strips = first + (missing - 1) * Math.ceil(each / gain - 1e-9);
  const say =
    sets.length === 0
      ? 'There are not enough strips for a set {height} high.'
      : 'There are strips for {made} of {wanted} sets.';
  const values = { made: sets.length, wanted, height: { inches: wedge.cutHeight } };
  const one = '1 more strip cut {width} wide, {length} long or longer, mends it.';
  const many = '{count} more strips cut {width} wide, {length} long or longer, mend it.';
  const mend = counted(strips, one, many, { width: { inches: width }, length: { inches: length } });
  return [phrase('{what} {mend}', { what: phrase(say, values), mend })];
}

/** The width that adds most to the heights as things are; 1 1/2 in where there are no strips of an inch or more. */
function usualWidth(classes: readonly LengthClass[], wedge: WedgePlan): Inches {
  const reach = new Map<Inches, number>();
  for (const { rows } of classes) {
    for (const { width, count } of rows) {
      if (width < LEAST_USUAL_WIDTH) continue;
      reach.set(width, (reach.get(width) ?? 0) + count * (width - 2 * wedge.seam));
    }
  }
  const most = [...reach].sort((one, other) => other[1] - one[1] || one[0] - other[0])[0];
  return most?.[0] ?? Math.max(1.5, 4 * wedge.seam);
}

/** The sets there were strips for, but their wedges fall short of the blocks (strips shorter than thought). */
function wedgeShortage(making: SetMaking, sets: readonly StripSet[]): Phrase[] {
  const { want, wedge } = making;
  if (want === 'most' || !('blocks' in want)) return [];
  const need = wedgesNeeded(want.blocks, [...making.keep, ...sets], wedge);
  if (need.up + need.down === 0) return [];
  const say = 'For all {blocks} blocks {up} wedges tip up and {down} tip down are missing.';
  return [phrase(say, { blocks: want.blocks, up: need.up, down: need.down })];
}

/** Neighbours of one fabric that could not be helped. */
function sameNeighbours(sets: readonly StripSet[]): Phrase[] {
  const held = sets.filter((set) =>
    set.strips.some((strip, at) => at > 0 && set.strips[at - 1]!.fabric === strip.fabric),
  );
  if (held.length === 0) return [];
  const one = 'In set {sets} a fabric lies beside itself; strips of more fabrics would help.';
  const many = 'In sets {sets} a fabric lies beside itself; strips of more fabrics would help.';
  return [counted(held.length, one, many, { sets: { list: held.map((set) => set.label) } })];
}
