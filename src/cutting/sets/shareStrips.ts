// Strips shared out among sets by their widths: how many of each width every set takes to be as high as it has to be. Quickly
// by each set's share, or exactly for up to three widths by dynamic programming.
import { HAIR } from '../../model/lengths';
import type { Inches } from '../../model/units';
import type { InParts } from '../../model/work/parts';
import type { SetKind } from '../wedges/setKinds';

/** Strips of one cut width, whatever their fabric. */
export interface WidthCount {
  readonly width: Inches;
  readonly count: number;
}

/**
 * Strips of each width for sets that are to add so much to the height each, in this order; null where they cannot be filled
 * this way. Each takes its share of every width first, then the few strips that go least beyond what it wants; where that
 * does not do, up to three widths are shared out exactly as far as the work allows.
 */
export function* fillingTargets(
  strips: readonly WidthCount[],
  gains: readonly Inches[],
  targets: readonly Inches[],
): InParts<number[][] | null> {
  return (yield* fillingByShare(strips, gains, targets)) ?? (yield* fillingExactly(strips, gains, targets));
}

function* fillingByShare(
  strips: readonly WidthCount[],
  gains: readonly Inches[],
  targets: readonly Inches[],
): InParts<number[][] | null> {
  const left = strips.map((one) => one.count);
  let open = targets.reduce((sum, target) => sum + target, 0);
  const filled: number[][] = [];
  for (const target of targets) {
    yield null;
    const share = open > HAIR ? Math.min(1, target / open) : 0;
    const counts = fillOne(left, gains, target, share);
    if (!counts) return null;
    counts.forEach((count, at) => {
      left[at]! -= count;
    });
    filled.push(counts);
    open -= target;
  }
  return filled;
}

/** Most strips that are chosen one against another; the others are a set's share. */
const MOST_CHOSEN = 5;
/** With many widths fewer, as choices multiply. */
const FEW_CHOSEN = 3;
const MANY_WIDTHS = 5;

function fillOne(
  left: readonly number[],
  gains: readonly Inches[],
  target: Inches,
  share: number,
): number[] | null {
  const counts = left.map((count) => Math.floor(count * share + HAIR));
  const sum = () => counts.reduce((reach, count, at) => reach + count * gains[at]!, 0);
  const chosen = gains.length > MANY_WIDTHS ? FEW_CHOSEN : MOST_CHOSEN;
  // Some of the share is given back, so that there is a choice; the width taken most often first.
  const widest = Math.max(...gains);
  for (let reach = sum(); reach > Math.max(0, target - (chosen - 1) * widest) + HAIR; reach = sum()) {
    const most = counts.indexOf(Math.max(...counts));
    if (counts[most] === 0) break;
    counts[most]! -= 1;
  }
  for (;;) {
    const rest = left.map((count, at) => count - counts[at]!);
    const more = leastBeyond(rest, gains, target - sum(), chosen);
    if (more) return counts.map((count, at) => count + more[at]!);
    // Too narrow to reach with so few: one more of the width there is most of.
    const most = rest.indexOf(Math.max(...rest));
    if (rest[most]! <= 0) return null;
    counts[most]! += 1;
  }
}

/** At most `most` strips that add `wanted` or more, going least beyond it; null where none do. Of equals the evenest. */
function leastBeyond(
  left: readonly number[],
  gains: readonly Inches[],
  wanted: Inches,
  most: number,
): number[] | null {
  if (wanted <= HAIR) return left.map(() => 0);
  let best: { beyond: Inches; uneven: number; counts: number[] } | null = null;
  const counts = left.map(() => 0);
  const all = Math.max(1, left.reduce((sum, count) => sum + count, 0)); // biome-ignore format: short
  const choose = (at: number, sum: Inches, chosen: number) => {
    if (sum >= wanted - HAIR) {
      const beyond = sum - wanted;
      const uneven = counts.reduce((off, count, width) => off + Math.abs(count - (chosen * left[width]!) / all), 0); // biome-ignore format: short
      if (
        !best ||
        beyond < best.beyond - HAIR ||
        (beyond < best.beyond + HAIR && uneven < best.uneven - HAIR)
      )
        best = { beyond, uneven, counts: [...counts] };
      return;
    }
    for (let width = at; chosen < most && width < gains.length; width += 1) {
      if (counts[width]! >= left[width]!) continue;
      counts[width]! += 1;
      choose(width, sum + gains[width]!, chosen + 1);
      counts[width]! -= 1;
    }
  };
  choose(0, 0, 0);
  return (best as { counts: number[] } | null)?.counts ?? null;
}

/** Steps the exact sharing may take: it is asked several times over. */
const MOST_WORK = 6_000_000;
const NOT_REACHED = 32_767;

/**
 * Every way to share up to three widths out, by dynamic programming: after each set, for so many strips used of two widths the
 * fewest of the third. Null where there is no way, or too much work.
 */
function* fillingExactly(
  strips: readonly WidthCount[],
  gains: readonly Inches[],
  targets: readonly Inches[],
): InParts<number[][] | null> {
  if (strips.length === 0 || strips.length > 3) return null;
  const { columns, most, gain } = threeColumns(strips, gains);
  const [first, second, third] = most;
  const across = second + 1;
  const states = (first + 1) * across;
  const ways = new Map(targets.map((target) => [target, waysToReach(target, gain, most)]));
  const work = targets.reduce((sum, target) => sum + states * ways.get(target)!.length, 0);
  if (work > MOST_WORK || third >= NOT_REACHED) return null;
  let table = new Int16Array(states).fill(NOT_REACHED);
  table[0] = 0;
  const chosen: Int16Array[] = [];
  for (const target of targets) {
    yield null;
    const next = new Int16Array(states).fill(NOT_REACHED);
    const by = new Int16Array(states);
    for (const [way, [a, b, c]] of ways.get(target)!.entries()) {
      for (let x = 0; x + a <= first; x += 1) {
        for (let y = 0; y + b <= second; y += 1) {
          const used = table[x * across + y]! + c;
          const to = (x + a) * across + y + b;
          if (used > third || used >= next[to]!) continue;
          next[to] = used;
          by[to] = way;
        }
      }
    }
    table = next;
    chosen.push(by);
  }
  let at = table.findIndex((used) => used < NOT_REACHED);
  if (at < 0) return null;
  const filled: number[][] = [];
  for (let set = targets.length - 1; set >= 0; set -= 1) {
    const way = ways.get(targets[set]!)![chosen[set]![at]!]!;
    filled.unshift(strips.map((_, width) => way[columns.indexOf(width)]!));
    at -= way[0] * across + way[1];
  }
  return filled;
}

/** Three widths, missing ones first; of the last there is most, so that it costs a table no states. */
function threeColumns(strips: readonly WidthCount[], gains: readonly Inches[]) {
  const order = strips.map((_, at) => at).sort((one, other) => strips[one]!.count - strips[other]!.count);
  const columns = [...Array.from({ length: 3 - order.length }, () => -1), ...order];
  const most = columns.map((at) => (at < 0 ? 0 : strips[at]!.count)) as [number, number, number];
  return { columns, most, gain: columns.map((at) => (at < 0 ? 0 : gains[at]!)) };
}

type Way = readonly [first: number, second: number, third: number];

/** Strips that reach the target, none of which could be left out. */
function waysToReach(target: Inches, gains: readonly Inches[], most: Way): Way[] {
  if (target <= HAIR) return [[0, 0, 0]];
  const ways: Way[] = [];
  for (let a = 0; a <= most[0]; a += 1) {
    for (let b = 0; b <= most[1]; b += 1) {
      const open = target - a * gains[0]! - b * gains[1]!;
      const c = open <= HAIR ? 0 : Math.ceil(open / gains[2]! - HAIR);
      const over = c * gains[2]! - open;
      const spare = (count: number, at: number) => count > 0 && over >= gains[at]! - HAIR;
      if (c <= most[2] && !spare(a, 0) && !spare(b, 1)) ways.push([a, b, c]);
      if (c === 0) break;
    }
    if (a * gains[0]! >= target - HAIR) break;
  }
  return ways;
}

/**
 * The sets of these kinds that give most wedges, by dynamic programming over the strips left of each width; null for more than
 * three widths, or too much work.
 */
export function* findingMostOfKinds(
  strips: readonly WidthCount[],
  gains: readonly Inches[],
  kinds: readonly SetKind[],
): InParts<{ kind: SetKind; counts: number[] }[] | null> {
  if (strips.length === 0 || strips.length > 3) return null;
  const { columns, most, gain } = threeColumns(strips, gains);
  const [, second, third] = most;
  const ways = kinds.flatMap((kind) => waysToReach(kind.gain, gain, most).map((way) => ({ kind, way })));
  const states = most.reduce((product, count) => product * (count + 1), 1);
  if (states * ways.length > MOST_WORK) return null;
  const at = ([a, b, c]: Way) => (a * (second + 1) + b) * (third + 1) + c;
  const best = new Int32Array(states);
  const by = new Int16Array(states).fill(-1);
  for (const [index, { kind, way }] of ways.entries()) {
    yield null;
    const back = at(way);
    for (let x = way[0]; x <= most[0]; x += 1) {
      for (let y = way[1]; y <= second; y += 1) {
        for (let z = way[2], state = at([x, y, z]); z <= third; z += 1, state += 1) {
          const wedges = best[state - back]! + kind.wedges;
          if (wedges <= best[state]!) continue;
          best[state] = wedges;
          by[state] = index;
        }
      }
    }
  }
  const sets: { kind: SetKind; counts: number[] }[] = [];
  for (let state = states - 1; by[state]! >= 0; ) {
    const { kind, way } = ways[by[state]!]!;
    sets.push({ kind, counts: strips.map((_, width) => way[columns.indexOf(width)]!) });
    state -= at(way);
  }
  return sets;
}
