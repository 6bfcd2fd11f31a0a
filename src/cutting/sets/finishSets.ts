// What is done once the search has laid the sets: where a fabric lies beside itself the set is sewn in another order or taken
// apart, one set more is laid as long as the strips left make one, and a strip left is sewn in where it gives a wedge more.
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator';
import { setHeight } from '../../geometry/stripSet';
import { HAIR } from '../../model/lengths';
import type { StripOnHand } from '../../model/project';
import type { Inches } from '../../model/units';
import type { InParts } from '../../model/work/parts';
import { highestPlanned } from '../wedges/setKinds';
import { wedgesOnLength } from '../wedges/yield';
import { layingAnew } from './layAnew';
import { lengthClasses } from './lengthClass';
import { canBeLaid, canDiffer, oneMoreSet } from './oneMoreSet';
import { type RatedStrip, type SetScoring, setCost } from './setScore';
import { MOST_SETS } from './setTarget';
import { wedgeQuotas } from './wedgesAtMost';

/** A strip of a set, and the row on hand it comes from. */
export interface LaidStrip extends RatedStrip {
  readonly fabric: string;
  readonly row: string;
  readonly locked?: true;
}

/** A set as it is laid; one with locked strips stays as it is. */
export interface LaidStrips {
  readonly strips: readonly LaidStrip[];
  readonly held: boolean;
}

/** Sets in which no fabric lies beside itself, but for those with locked strips: sewn in another order, or left out. */
export function* takingApart(sets: readonly LaidStrips[], scoring: SetScoring): InParts<LaidStrips[]> {
  const laid: LaidStrips[] = [];
  for (const set of sets) {
    yield null;
    if (set.held || differs(set.strips)) laid.push(set);
    else if (canDiffer(set.strips)) laid.push({ ...set, strips: sewn(set.strips, scoring) });
  }
  return laid;
}

/** The sets with those that can still be laid from the rows, as long as more are wanted. */
export function* layingMore(
  sets: readonly LaidStrips[],
  rows: readonly StripOnHand[],
  scoring: SetScoring,
  wanted: (sets: readonly LaidStrips[]) => boolean,
): InParts<LaidStrips[]> {
  const laid = [...sets];
  while (laid.length < MOST_SETS && wanted(laid)) {
    yield null;
    const more = oneMoreSet(rowsLeft(rows, laid), scoring.wedge);
    if (!more) break;
    laid.push({ strips: sewn(more.map((row) => stripOf(row, scoring)), scoring), held: false }); // biome-ignore format: short
  }
  return laid;
}

/** The sets with strips of the rows sewn in where each gives a wedge more; none becomes shorter, or higher than is planned. */
export function* raising(
  sets: readonly LaidStrips[],
  rows: readonly StripOnHand[],
  scoring: SetScoring,
): InParts<LaidStrips[]> {
  const { wedge } = scoring;
  const lengths = lengthOf(rows);
  const left = rowsLeft(rows, sets)
    .filter((row) => canBeLaid(row, wedge))
    .map((row) => ({ ...row }))
    .sort((one, other) => one.width - other.width);
  const higher = (set: LaidStrips): LaidStrips => {
    const length = Math.min(...set.strips.map(lengths));
    const now = wedgesOnLength(length, setHeight(set.strips, wedge.seam), wedge);
    for (const row of left) {
      if (set.held || row.count === 0 || row.length < length - HAIR) continue;
      const strips = sewnIn(set.strips, stripOf(row, scoring), scoring);
      if (!strips) continue;
      const height = setHeight(strips, wedge.seam);
      if (height > highestPlanned(wedge) + HAIR || wedgesOnLength(length, height, wedge) <= now) continue;
      row.count -= 1;
      return { ...set, strips };
    }
    return set;
  };
  const laid: LaidStrips[] = [];
  for (const set of sets) {
    yield null;
    laid.push(higher(set));
  }
  return laid;
}

/** The sets, or others laid from the same rows where those give more wedges; sets that hold locked strips stay. */
export function* bettering(
  sets: readonly LaidStrips[],
  rows: readonly StripOnHand[],
  scoring: SetScoring,
  random: RandomGenerator,
): InParts<LaidStrips[]> {
  const { wedge } = scoring;
  const held = sets.filter((set) => set.held);
  const free = rowsLeft(rows, held);
  const enough = wedgeQuotas(lengthClasses(free, wedge, 0), wedge).most;
  const byId = new Map(free.map((row) => [row.id, row]));
  const open = sets.filter((set) => !set.held).map(({ strips }) => strips.map(({ row }) => byId.get(row)!));
  const left = rowsLeft(rows, sets).flatMap((row) =>
    Array.from({ length: row.count }, () => byId.get(row.id)!),
  );
  const anew = yield* layingAnew(open, left, wedge, enough, random);
  if (anew === open) return [...sets];
  const before = sets.filter((set) => !set.held);
  const laid = [...held];
  for (const set of anew.slice(0, MOST_SETS - held.length)) {
    yield null;
    const at = open.indexOf(set as StripOnHand[]);
    if (at >= 0) laid.push(before[at]!);
    else laid.push({ strips: sewn(set.map((row) => stripOf(row, scoring)), scoring), held: false }); // biome-ignore format: short
  }
  return laid;
}

/** The rows less the strips in the sets; rows used up are left out. */
export function rowsLeft(rows: readonly StripOnHand[], sets: readonly LaidStrips[]): StripOnHand[] {
  const taken = new Map<string, number>();
  for (const { row } of sets.flatMap((set) => set.strips)) taken.set(row, (taken.get(row) ?? 0) + 1);
  return rows
    .map((row) => ({ ...row, count: row.count - (taken.get(row.id) ?? 0) }))
    .filter((row) => row.count > 0);
}

/** The length of a strip by the row it comes from; Infinity for a locked strip, whose set has its own. */
export function lengthOf(rows: readonly StripOnHand[]): (strip: LaidStrip) => Inches {
  const lengths = new Map(rows.map((row) => [row.id, row.length]));
  return ({ row }) => lengths.get(row) ?? Number.POSITIVE_INFINITY;
}

function stripOf({ fabric, width, id }: StripOnHand, scoring: SetScoring): LaidStrip {
  return { fabric, width, fabricAt: scoring.fabricIndex.get(fabric)!, row: id };
}

function differs(strips: readonly LaidStrip[]): boolean {
  return strips.every((strip, at) => at === 0 || strips[at - 1]!.fabricAt !== strip.fabricAt);
}

/** Strips that can lie so that neighbours differ, in the best order that swaps of two find. */
function sewn(strips: readonly LaidStrip[], scoring: SetScoring): LaidStrip[] {
  let best = inTurn(strips);
  let cost = setCost(best, scoring);
  for (let better = true; better; ) {
    better = false;
    for (let one = 0; one < best.length; one += 1) {
      for (let other = one + 1; other < best.length; other += 1) {
        const swapped = best.with(one, best[other]!).with(other, best[one]!);
        const now = setCost(swapped, scoring);
        if (now >= cost - HAIR || !differs(swapped)) continue;
        [best, cost, better] = [swapped, now, true];
      }
    }
  }
  return best;
}

/** Neighbours differ: next comes a strip of the fabric most of which is left, but never the one before. */
function inTurn(strips: readonly LaidStrip[]): LaidStrip[] {
  const left = [...strips];
  const order: LaidStrip[] = [];
  while (left.length > 0) {
    const counts = new Map<number, number>();
    for (const { fabricAt } of left) counts.set(fabricAt, (counts.get(fabricAt) ?? 0) + 1);
    const free = left.filter((strip) => strip.fabricAt !== order.at(-1)?.fabricAt);
    const next = (free.length > 0 ? free : left).reduce((best, strip) =>
      counts.get(strip.fabricAt)! > counts.get(best.fabricAt)! ? strip : best,
    );
    order.push(...left.splice(left.indexOf(next), 1));
  }
  return order;
}

/** The strips with one more, where it costs least; null where its fabric would lie beside itself everywhere. */
function sewnIn(
  strips: readonly LaidStrip[],
  strip: LaidStrip,
  scoring: SetScoring,
): readonly LaidStrip[] | null {
  const ways = Array.from({ length: strips.length + 1 }, (_, at) => strips.toSpliced(at, 0, strip))
    .filter(differs)
    .map((way) => ({ way, cost: setCost(way, scoring) }));
  const best = ways.sort((one, other) => one.cost - other.cost)[0];
  return best?.way ?? null;
}
