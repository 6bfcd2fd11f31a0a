// How many sets to make, of strips of which length, and how high each has to be for the wedges counted on it. Which strips
// they become is the search's (setSearch.ts); the widths to begin with are laid here, so that the heights are within reach.
import { finishedWidth } from '../../geometry/stripSet';
import { HAIR, piecesIn, USUAL } from '../../model/lengths';
import type { StripSet, WedgePlan } from '../../model/project';
import type { Inches, LengthUnit } from '../../model/units';
import type { InParts } from '../../model/work/parts';
import { evenSets, type SetKind, setKinds } from '../wedges/setKinds';
import { heightFor, wedgesNeeded, wedgesOnLength } from '../wedges/yield';
import { layingMost } from './layHeights';
import type { LengthClass } from './lengthClass';
import { planningMost } from './mostPlan';
import { HEIGHT_TO_SPARE } from './setScore';
import { MOST_SETS, type SetTarget } from './setTarget';
import { fillingTargets, type WidthCount } from './shareStrips';

export interface SetsPlan {
  /** Sets with locked strips first, in their order. */
  readonly targets: readonly SetTarget[];
  /** So many sets were asked for. */
  readonly wanted: number;
  /** The strips by the length of the sets they are for: longer ones may be laid into shorter sets. */
  readonly classes: readonly LengthClass[];
}

export interface SetsAsked {
  readonly wedge: WedgePlan;
  /** Where there are no strips to go by, sets are as long as fabric of the person's unit is wide. */
  readonly unit: LengthUnit;
  readonly keep: readonly StripSet[];
  readonly held: readonly StripSet[];
  readonly want: { readonly sets: number } | { readonly blocks: number } | 'most';
}

/** For fewer sets they are made up to so much higher than the wedge (as planning forwards). */
const MOST_SPARE: Inches = 0.75;

/** Strips of one length class by width, with what the sets planned so far leave of them. */
interface Stock {
  readonly lengthClass: number;
  readonly length: Inches;
  strips: WidthCount[];
}

/** The longest strips first, as far as they reach. What cannot be made of these strips still counts as wanted. */
export function* planningSets(asked: SetsAsked, classes: readonly LengthClass[]): InParts<SetsPlan> {
  const { wedge, held, want } = asked;
  const stocks = classes.map((one, at) => stockOf(one, at));
  const targets = yield* planningHeld(held, stocks, classes, wedge, want === 'most' ? 0 : HEIGHT_TO_SPARE);
  const add = (more: readonly SetTarget[]) => targets.push(...more.slice(0, MOST_SETS - targets.length));
  if (want === 'most') {
    const plan = yield* planningMost(classes, targets, wedge);
    return { ...plan, wanted: plan.targets.length };
  }
  if ('sets' in want) {
    for (const stock of stocks) add(yield* planningCount(stock, want.sets - targets.length, wedge));
    return { targets, wanted: want.sets, classes };
  }
  const need = wedgesNeeded(want.blocks, asked.keep, wedge);
  const heldWedges = targets.reduce((sum, { lengthClass, least }) => {
    return sum + wedgesOnLength(classes[lengthClass]?.length ?? 0, least, wedge);
  }, 0);
  let open = 2 * Math.max(need.up, need.down) - heldWedges;
  for (const stock of stocks) {
    if (open <= 0) break;
    const made = (yield* planningFewest(stock, open, wedge)) ?? (yield* planningAsMany(stock, open, wedge));
    add(made);
    open -= made.reduce((sum, { least }) => sum + wedgesOnLength(stock.length, least, wedge), 0);
  }
  // Where strips run out the count still says how many sets of the same length are missing.
  const length = classes.at(-1)?.length ?? USUAL[asked.unit].usableWidth;
  const each = Math.max(2, wedgesOnLength(length, wedge.cutHeight + HEIGHT_TO_SPARE, wedge));
  return { targets, wanted: targets.length + Math.ceil(Math.max(0, open) / each), classes };
}

function stockOf({ rows, length }: LengthClass, lengthClass: number): Stock {
  const strips: { width: Inches; count: number }[] = [];
  for (const { width, count } of rows) {
    const same = strips.find((one) => Math.abs(one.width - width) < HAIR);
    if (same) same.count += count;
    else strips.push({ width, count });
  }
  return { lengthClass, length, strips };
}

function gainsOf(stock: Stock, wedge: WedgePlan): Inches[] {
  return stock.strips.map(({ width }) => finishedWidth(width, wedge.seam));
}

function reachOf(stock: Stock, wedge: WedgePlan): Inches {
  return stock.strips.reduce((sum, { width, count }) => sum + count * finishedWidth(width, wedge.seam), 0);
}

/** Takes these strips out of the stock and gives the sets that begin with them. */
function taken(
  stock: Stock,
  counts: readonly (readonly number[])[],
  least: (at: number) => Inches,
): SetTarget[] {
  const targets = counts.map((set, at): SetTarget => {
    const start = set.flatMap((count, width) =>
      Array.from({ length: count }, () => stock.strips[width]!.width),
    );
    return { lengthClass: stock.lengthClass, least: least(at), start };
  });
  stock.strips = stock.strips.map(({ width, count }, at) => {
    return { width, count: counts.reduce((left, set) => left - set[at]!, count) };
  });
  return targets;
}

/** Sets with locked strips have theirs before others are thought of: so much to spare, or just enough to be high enough. */
function* planningHeld(
  held: readonly StripSet[],
  stocks: readonly Stock[],
  classes: readonly LengthClass[],
  wedge: WedgePlan,
  spare: Inches,
): InParts<SetTarget[]> {
  const targets: SetTarget[] = [];
  for (const set of held) targets.push(yield* planningOneHeld(set, stocks, classes, wedge, spare));
  return targets;
}

function* planningOneHeld(
  set: StripSet,
  stocks: readonly Stock[],
  classes: readonly LengthClass[],
  wedge: WedgePlan,
  spare: Inches,
): InParts<SetTarget> {
  const lengthClass = nearestClass(set.length, classes);
  const has = set.strips.reduce(
    (sum, { width, locked }) => sum + (locked ? finishedWidth(width, wedge.seam) : 0),
    0,
  );
  const stock = stocks[lengthClass];
  for (const height of stock ? [wedge.cutHeight + spare, wedge.cutHeight] : []) {
    const counts = yield* filling(stock!, wedge, [Math.max(0, finishedWidth(height, wedge.seam) - has)]);
    const least = heightFor(wedgesOnLength(stock!.length, height, wedge), stock!.length, wedge);
    if (counts) return taken(stock!, counts, () => least)[0]!;
  }
  return { lengthClass, least: wedge.cutHeight, start: null };
}

/** The class whose strips are nearest in length to a set's; 0 where there are none. */
function nearestClass(length: Inches, classes: readonly LengthClass[]): number {
  const off = (index: number) => Math.abs(classes[index]!.length - length);
  return classes.reduce((best, _, index) => (off(index) < off(best) ? index : best), 0);
}

/** The sets that give most wedges, no more than `enough`. */
function* planningAsMany(stock: Stock, enough: number, wedge: WedgePlan): InParts<SetTarget[]> {
  const sets = yield* layingMost(stock.strips, stock.length, wedge, enough);
  return taken(stock, sets.map((set) => set.counts), (at) => sets[at]!.kind.height); // biome-ignore format: short
}

/** So many sets at the most, with half an inch to spare where the strips reach, else just high enough. */
function* planningCount(stock: Stock, wanted: number, wedge: WedgePlan): InParts<SetTarget[]> {
  const each = finishedWidth(wedge.cutHeight, wedge.seam);
  const count = Math.min(wanted, MOST_SETS, piecesIn(reachOf(stock, wedge), each));
  if (count <= 0) return [];
  for (const spare of [HEIGHT_TO_SPARE, HEIGHT_TO_SPARE / 2, 0]) {
    const counts = yield* filling(stock, wedge, Array.from({ length: count }, () => each + spare)); // biome-ignore format: short
    if (counts) return taken(stock, counts, () => wedge.cutHeight);
  }
  return Array.from({ length: count }, () => {
    return { lengthClass: stock.lengthClass, least: wedge.cutHeight, start: null };
  });
}

/** The fewest sets that give so many wedges, with half an inch to spare where that can be; null where these strips do not. */
function* planningFewest(stock: Stock, wedges: number, wedge: WedgePlan): InParts<SetTarget[] | null> {
  const widths = stock.strips.map((one) => one.width);
  const kinds = setKinds(stock.length, wedge, widths, wedge.cutHeight, wedge.cutHeight + MOST_SPARE);
  const usual = finishedWidth(wedge.cutHeight + HEIGHT_TO_SPARE, wedge.seam);
  if (kinds.length === 0) return null;
  const most = piecesIn(reachOf(stock, wedge), kinds[0]!.gain);
  for (let count = Math.ceil(wedges / kinds.at(-1)!.wedges); count <= most; count += 1) {
    yield null;
    const [thrifty, even] = [thriftiest(count, wedges, kinds), evenSets(count, wedges, kinds)];
    for (const { sets, least } of [
      { sets: thrifty, least: usual },
      { sets: thrifty, least: 0 },
      { sets: even, least: 0 },
    ]) {
      const counts = sets && (yield* filling(stock, wedge, sets.map((kind) => Math.max(kind.gain, least)))); // biome-ignore format: short
      if (counts) return taken(stock, counts, (at) => sets[at]!.height);
    }
  }
  return null;
}

/** So many sets that give so many wedges: all as low as can be, then those higher that cost least height for a wedge. */
function thriftiest(count: number, wedges: number, kinds: readonly SetKind[]): SetKind[] {
  const sets = Array.from({ length: count }, () => 0);
  let made = count * kinds[0]!.wedges;
  while (made < wedges) {
    let best = { set: -1, to: 0, cost: Number.POSITIVE_INFINITY };
    for (const [set, from] of sets.entries()) {
      for (let to = from + 1; to < kinds.length; to += 1) {
        const [low, high] = [kinds[from]!, kinds[to]!];
        const cost = (high.gain - low.gain) / (high.wedges - low.wedges);
        if (cost < best.cost - HAIR) best = { set, to, cost };
      }
      // Sets alike come one after another; the first of them stands for all.
      if (from === 0) break;
    }
    if (best.set < 0) break;
    made += kinds[best.to]!.wedges - kinds[sets[best.set]!]!.wedges;
    sets[best.set] = best.to;
    sets.sort((one, other) => other - one);
  }
  return sets.map((kind) => kinds[kind]!);
}

function* filling(stock: Stock, wedge: WedgePlan, targets: readonly Inches[]): InParts<number[][] | null> {
  const wanted = targets.reduce((sum, target) => sum + target, 0);
  if (wanted > reachOf(stock, wedge) + HAIR) return null;
  return yield* fillingTargets(stock.strips, gainsOf(stock, wedge), targets);
}
