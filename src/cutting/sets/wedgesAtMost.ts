// The most wedges that strips of several lengths could give, counted by what they add to heights alone: a bound for all sets
// that can be laid from them as they are, and how many wedges a plan should look for at each length.
import { finishedWidth } from '../../geometry/stripSet';
import { HAIR, piecesIn } from '../../model/lengths';
import type { StripOnHand, WedgePlan } from '../../model/project';
import type { Inches } from '../../model/units';
import { setKinds } from '../wedges/setKinds';
import { type LengthClass, lengthClasses } from './lengthClass';
import { mostReach } from './oneMoreSet';

export interface WedgeQuotas {
  /** Nothing gives more. */
  readonly most: number;
  /** Wedges at each length for so many altogether, longest first; null where so many are not to be had. */
  readonly of: (wedges: number) => number[] | null;
}

/**
 * By dynamic programming, one length after another from the longest: the least that sets of so many wedges take, where sets so
 * long or longer take no more than strips so long or longer add. Sets are up to `highest` high.
 */
export function wedgeQuotas(
  classes: readonly LengthClass[],
  wedge: WedgePlan,
  highest?: Inches,
): WedgeQuotas {
  let least: Inches[] = [0];
  const given: number[][] = [];
  classes.forEach(({ length }, at) => {
    const rows = classes.slice(0, at + 1).flatMap((one) => one.rows);
    const widths = [...new Set(rows.map((row) => row.width))];
    const reach = reachOf(rows, wedge);
    const next = [...least];
    const here: number[] = next.map(() => 0);
    const kinds = setKinds(length, wedge, widths, wedge.cutHeight, highest);
    for (let wedges = 2, empty = 0; kinds.length > 0 && empty <= kinds.at(-1)!.wedges; wedges += 1) {
      for (const kind of kinds) {
        const before = next[wedges - kind.wedges] ?? Number.POSITIVE_INFINITY;
        const sum = before + kind.gain;
        if (sum > reach + HAIR || sum >= (next[wedges] ?? Number.POSITIVE_INFINITY) - HAIR) continue;
        next[wedges] = sum;
        here[wedges] = here[wedges - kind.wedges]! + kind.wedges;
      }
      empty = next[wedges] === undefined && wedges >= least.length ? empty + 1 : 0;
    }
    least = next;
    given.push(here);
  });
  const of = (wedges: number) => {
    if (least[wedges] === undefined) return null;
    const quotas: number[] = [];
    let open = wedges;
    for (const here of given.toReversed()) {
      quotas.unshift(here[open] ?? 0);
      open -= quotas[0]!;
    }
    return quotas;
  };
  return { most: least.length - 1, of };
}

/** What strips add at the most to sets in which no fabric lies beside itself, however many sets they make. */
function reachOf(rows: readonly StripOnHand[], wedge: WedgePlan): Inches {
  const each = finishedWidth(wedge.cutHeight, wedge.seam);
  let reach = mostReach(rows, Number.POSITIVE_INFINITY, wedge);
  for (let less = true; less; ) {
    const fewer = mostReach(rows, piecesIn(reach, each), wedge);
    less = fewer < reach - HAIR;
    reach = fewer;
  }
  return reach;
}

/** No sets of two wedges or more laid from these strips as they are, of any height, give more wedges than this. */
export function wedgesAtMost(rows: readonly StripOnHand[], wedge: WedgePlan): number {
  const lengths = lengthClasses(rows, wedge, 0);
  return wedgeQuotas(lengths, wedge, 2 * wedge.cutHeight).most;
}
