// Every choice of strips by fabric, tried one after another: whether a set can be laid from them within the rules. Slow and
// plain, for the laws only.
import { wedgesOnLength } from '../../../src/cutting/wedges/yield';
import type { Strip, StripOnHand, WedgePlan } from '../../../src/model/project';
import { flatHeight } from '../../geometry/strips';

export interface SetRules {
  /** A fabric does not lie beside itself. */
  readonly neighboursDiffer: boolean;
  /** A set is as long as its shortest strip; false lets every strip be as long as one likes. */
  readonly lengths: boolean;
}

/** Sets are not planned higher than an inch above the wedge, so strips too short for two wedges on such a set are too short. */
export function isTooShort(length: number, wedge: WedgePlan): boolean {
  return wedgesOnLength(length, wedge.cutHeight + 1, wedge) < 2;
}

/**
 * A set from these strips, of two wedges or more, or null where no choice of them makes one; with `including` only sets that
 * strip lies in. Of each fabric the widest strips are taken: a higher set gives no fewer wedges.
 */
export function aSetOf(
  rows: readonly StripOnHand[],
  wedge: WedgePlan,
  rules: SetRules,
  including?: StripOnHand,
): Strip[] | null {
  const fit = rows.filter((row) => row.width > 2 * wedge.seam + 1e-9 && !isTooShort(row.length, wedge));
  if (including && !fit.includes(including)) return null;
  const lengths = rules.lengths ? [...new Set(fit.map((row) => row.length))] : [1_000];
  for (const length of lengths) {
    if (including && rules.lengths && including.length < length - 1e-9) continue;
    const long = fit.filter((row) => !rules.lengths || row.length >= length - 1e-9);
    const stacks = new Map<string, Strip[]>();
    for (const row of long) {
      const singles = Array.from({ length: row.count }, () => ({ fabric: row.fabric, width: row.width }));
      const first = row === including ? singles.splice(0, 1) : [];
      stacks.set(row.fabric, [...(stacks.get(row.fabric) ?? []), ...singles]);
      if (first.length > 0) stacks.set('the one', first);
    }
    const one = stacks.get('the one')?.[0];
    stacks.delete('the one');
    const widest = [...stacks.values()].map((stack) => stack.sort((a, b) => b.width - a.width));
    const found = choose(widest, 0, one ? [one] : [], (strips) => isSet(strips, length, wedge, rules));
    if (found) return found;
  }
  return null;
}

function choose(
  stacks: readonly Strip[][],
  at: number,
  chosen: readonly Strip[],
  good: (strips: readonly Strip[]) => boolean,
): Strip[] | null {
  const stack = stacks[at];
  if (!stack) return good(chosen) ? [...chosen] : null;
  for (let count = 0; count <= stack.length; count += 1) {
    const found = choose(stacks, at + 1, [...chosen, ...stack.slice(0, count)], good);
    if (found) return found;
  }
  return null;
}

function isSet(strips: readonly Strip[], length: number, wedge: WedgePlan, rules: SetRules): boolean {
  const height = flatHeight(strips, wedge.seam);
  if (height < wedge.cutHeight - 1e-9 || wedgesOnLength(length, height, wedge) < 2) return false;
  const counts = new Map<string, number>();
  for (const { fabric } of strips) counts.set(fabric, (counts.get(fabric) ?? 0) + 1);
  // Every other strip at the most is of one fabric.
  return !rules.neighboursDiffer || [...counts.values()].every((count) => 2 * count <= strips.length + 1);
}
