// Strips of one length laid into sets by their widths alone, so that the sets give as many wedges as they can. Which fabric
// lies where is setSearch's; how many strips to cut is the plan's; sharing widths out is shareStrips's.
import { finishedWidth } from '../../geometry/stripSet';
import { HAIR } from '../../model/lengths';
import type { WedgePlan } from '../../model/project';
import type { Inches } from '../../model/units';
import { atOnce, type InParts } from '../../model/work/parts';
import { evenSets, type SetKind, setKinds, wedgeTable } from '../wedges/setKinds';
import { fillingTargets, findingMostOfKinds, type WidthCount } from './shareStrips';

/** A set as far as widths go: strips of each width, in the order of the widths, and what the set is to give. */
export interface LaidSet {
  readonly kind: SetKind;
  readonly counts: readonly number[];
}

/** Numbers of wedges tried from the most that the heights would allow downwards. */
const MOST_TRIED = 24;

/**
 * The sets that give most wedges, or `enough`, of strips so long; of more than three widths, or very many strips, perhaps not
 * quite the most. Strips that no set needs are left. Sets are as low as they can be; what is left may make them higher.
 */
export function* layingMost(
  strips: readonly WidthCount[],
  length: Inches,
  wedge: WedgePlan,
  enough = Number.POSITIVE_INFINITY,
): InParts<LaidSet[]> {
  const kinds = setKinds(length, wedge, strips.map((one) => one.width)); // biome-ignore format: short
  if (kinds.length === 0) return [];
  const gains = strips.map((one) => finishedWidth(one.width, wedge.seam));
  const there = strips.reduce((sum, one, at) => sum + one.count * gains[at]!, 0);
  const most = Math.min(enough, wedgeTable(kinds).most(there));
  const quick = yield* layingQuickly(strips, gains, kinds, most);
  if (wedgesOf(quick) >= most) return quick;
  const exact = yield* findingMostOfKinds(strips, gains, kinds);
  if (!exact || wedgesOf(exact) <= wedgesOf(quick)) return quick;
  const sets = exact.sort((one, other) => other.kind.wedges - one.kind.wedges);
  while (wedgesOf(sets.slice(0, -1)) >= enough) sets.pop();
  return sets;
}

/** The same in one go. */
export function layMost(...asked: Parameters<typeof layingMost>): LaidSet[] {
  return atOnce(layingMost(...asked));
}

function wedgesOf(sets: readonly LaidSet[]): number {
  return sets.reduce((sum, set) => sum + set.kind.wedges, 0);
}

/** From the most wedges downwards: the thriftiest sets for so many, else as many sets more alike. */
function* layingQuickly(
  strips: readonly WidthCount[],
  gains: readonly Inches[],
  kinds: readonly SetKind[],
  most: number,
): InParts<LaidSet[]> {
  const table = wedgeTable(kinds);
  const there = strips.reduce((sum, one, at) => sum + one.count * gains[at]!, 0);
  let tried = 0;
  for (let wedges = most; wedges > 0; wedges -= tried > MOST_TRIED ? kinds[0]!.wedges : 1) {
    if (wedges < most && table.gain(wedges + 1) <= table.gain(wedges) + HAIR) continue;
    tried += 1;
    const thrifty = table.sets(wedges);
    for (const sets of [thrifty, evenSets(thrifty.length, wedges, kinds)]) {
      const targets = sets?.map((kind) => kind.gain) ?? [];
      if (!sets || targets.reduce((sum, gain) => sum + gain, 0) > there + HAIR) continue;
      const counts = yield* fillingTargets(strips, gains, targets);
      if (counts) return sets.map((kind, at) => ({ kind, counts: counts[at]! }));
    }
  }
  return [];
}
