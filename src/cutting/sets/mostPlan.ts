// The sets of all strips that give most wedges: first strips of about one length by themselves; where sets of several lengths
// together give more, longer strips that no set of their own length takes go into shorter sets.
import { HAIR } from '../../model/lengths';
import type { StripOnHand, WedgePlan } from '../../model/project';
import type { Inches } from '../../model/units';
import type { InParts } from '../../model/work/parts';
import { layingMost } from './layHeights';
import { type LengthClass, lengthClasses } from './lengthClass';
import { widestFor } from './oneMoreSet';
import { MOST_SETS, type SetTarget } from './setTarget';
import type { WidthCount } from './shareStrips';
import { wedgeQuotas } from './wedgesAtMost';

export interface MostPlan {
  readonly targets: readonly SetTarget[];
  /** The strips by the length of the sets they are for. */
  readonly classes: readonly LengthClass[];
}

/** Strips of one row: of which class they are, how many no set takes, and how many each class takes. */
interface Lying {
  readonly row: StripOnHand;
  readonly home: number;
  left: number;
  readonly taken: number[];
}

interface Plan extends MostPlan {
  readonly wedges: number;
}

/** Totals of wedges tried from the most that heights would allow downwards. */
const MOST_TRIED = 6;
/** Strips of a fabric there is too much of are left out so many times at the most. */
const MOST_ROUNDS = 4;

/** Plans sets of these strips; `held` are planned already and have the strips they begin with. */
export function* planningMost(
  classes: readonly LengthClass[],
  held: readonly SetTarget[],
  wedge: WedgePlan,
): InParts<MostPlan> {
  const rows = classes.flatMap((one) => one.rows);
  let plan = yield* findingPlan(classes, held, wedge);
  if (held.length > 0) return plan;
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const apart = widestFor(rows, plan.targets.length, wedge);
    const there = plan.classes.flatMap((one) => one.rows);
    if (countOf(apart) >= countOf(there)) return plan;
    plan = yield* findingPlan(lengthClasses(apart, wedge), [], wedge);
  }
  return plan;
}

function* findingPlan(
  classes: readonly LengthClass[],
  held: readonly SetTarget[],
  wedge: WedgePlan,
): InParts<Plan> {
  let best = yield* layingAll(classes, held, wedge, null, false);
  const take = (plan: Plan) => {
    if (plan.wedges > best.wedges) best = plan;
  };
  if (classes.length > 1) take(yield* layingAll(classes, held, wedge, null, true));
  if (held.length > 0) return best;
  const exact = lengthClasses(classes.flatMap((one) => one.rows), wedge, 0); // biome-ignore format: short
  for (const lengths of [classes, exact]) {
    if (lengths.length < 2) continue;
    const quotas = wedgeQuotas(lengths, wedge);
    for (let tried = 0, wedges = quotas.most; tried < MOST_TRIED && wedges > best.wedges; wedges -= 1) {
      const wanted = quotas.of(wedges);
      if (!wanted) continue;
      tried += 1;
      take(yield* layingAll(lengths, held, wedge, wanted, true));
    }
  }
  return best;
}

/** From the longest strips to the shortest, as many wedges of each length as are wanted; all where `wanted` is null. */
function* layingAll(
  classes: readonly LengthClass[],
  held: readonly SetTarget[],
  wedge: WedgePlan,
  wanted: readonly number[] | null,
  mixed: boolean,
): InParts<Plan> {
  const lying = classes.flatMap(({ rows }, home) =>
    rows.map((row): Lying => ({ row, home, left: row.count, taken: classes.map(() => 0) })),
  );
  for (const { lengthClass, start } of held) {
    const own = lying.filter(({ home }) => home === lengthClass);
    for (const width of start ?? []) takeOne(own, width, lengthClass);
  }
  const targets = [...held];
  let wedges = 0;
  for (const [at, { length }] of classes.entries()) {
    const pool = lying.filter(({ home }) => home === at || (mixed && home < at));
    const strips = widthsOf(pool);
    const sets = yield* layingMost(strips, length, wedge, wanted?.[at]);
    for (const { kind, counts } of sets.slice(0, MOST_SETS - targets.length)) {
      yield null;
      const start = counts.flatMap((count, width) =>
        Array.from({ length: count }, () => strips[width]!.width),
      );
      for (const width of start) takeOne(pool, width, at);
      targets.push({ lengthClass: at, least: kind.height, start });
      wedges += kind.wedges;
    }
  }
  return { targets, wedges, classes: classes.map((one, at) => ({ ...one, rows: rowsFor(lying, at) })) };
}

/** A strip so wide for sets of a class: of its own length where there is one, else of the next longer; of the fullest row. */
function takeOne(pool: readonly Lying[], width: Inches, at: number): void {
  const fit = pool.filter((one) => one.left > 0 && Math.abs(one.row.width - width) < HAIR);
  const [first] = fit.sort((one, other) => other.home - one.home || other.left - one.left);
  if (!first) return;
  first.left -= 1;
  first.taken[at]! += 1;
}

/** What a class lays its sets from: what was taken for them, and strips of its own that no set takes. */
function rowsFor(lying: readonly Lying[], at: number): StripOnHand[] {
  return lying.flatMap(({ row, home, left, taken }) => {
    const count = taken[at]! + (home === at ? left : 0);
    return count > 0 ? [{ ...row, count }] : [];
  });
}

function widthsOf(pool: readonly Lying[]): WidthCount[] {
  const strips: { width: Inches; count: number }[] = [];
  for (const { row, left } of pool) {
    if (left === 0) continue;
    const same = strips.find((one) => Math.abs(one.width - row.width) < HAIR);
    if (same) same.count += left;
    else strips.push({ width: row.width, count: left });
  }
  return strips;
}

function countOf(rows: readonly StripOnHand[]): number {
  return rows.reduce((sum, row) => sum + row.count, 0);
}
