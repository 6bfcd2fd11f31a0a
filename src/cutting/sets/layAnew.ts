// Sets of all strips laid anew by a search that looks at wedges alone: a few sets are taken apart and their strips, with those
// left, laid otherwise, as often as that gives more. It knows fabrics and lengths, of which the plan by widths knows little.
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator';
import { finishedWidth, setHeight } from '../../geometry/stripSet';
import { HAIR } from '../../model/lengths';
import type { StripOnHand, WedgePlan } from '../../model/project';
import type { Inches } from '../../model/units';
import type { InParts } from '../../model/work/parts';
import { setKinds } from '../wedges/setKinds';
import { wedgesOnLength } from '../wedges/yield';
import { canBeLaid, canDiffer, oneMoreSet } from './oneMoreSet';

/** Strips of one set: the row each comes from. */
export type RowsOfSet = readonly StripOnHand[];

/** Times sets are taken apart, and ways tried for each set laid from their strips. */
const TRIES = 500;
const WAYS = 5;
/** Sets taken apart at once, at the most. */
const MOST_APART = 4;
/** With more strips beside the sets than this only some of them are looked at each time. */
const MOST_BESIDE = 40;

/** The sets, or others of the same rows that give more wedges; stops at `enough` wedges. No set has a fabric beside itself. */
export function* layingAnew(
  sets: readonly RowsOfSet[],
  left: RowsOfSet,
  wedge: WedgePlan,
  enough: number,
  random: RandomGenerator,
): InParts<readonly RowsOfSet[]> {
  const table = new Table(wedge, random);
  let best = { sets: [...sets], left: left.filter((row) => canBeLaid(row, wedge)), wedges: table.all(sets) };
  const before = best.wedges;
  for (let tried = 0; tried < TRIES && best.wedges < enough; tried += 1) {
    yield null;
    const tries = table.otherwise(best.sets, best.left);
    if (tries && tries.wedges >= best.wedges) best = tries;
  }
  return best.wedges > before ? best.sets : sets;
}

class Table {
  private readonly wedge: WedgePlan;
  private readonly random: RandomGenerator;
  private readonly gainsFor = new Map<Inches, readonly Inches[]>();

  constructor(wedge: WedgePlan, random: RandomGenerator) {
    this.wedge = wedge;
    this.random = random;
  }

  all(sets: readonly RowsOfSet[]): number {
    return sets.reduce((sum, set) => sum + this.wedgesOf(set), 0);
  }

  /** Some sets taken apart and laid otherwise; null where there is nothing to lay. */
  otherwise(sets: readonly RowsOfSet[], left: RowsOfSet) {
    const kept = [...sets];
    const shuffled = this.shuffled(left);
    const [pool, beside] = [shuffled.slice(0, MOST_BESIDE), shuffled.slice(MOST_BESIDE)];
    for (let apart = 1 + this.pick(MOST_APART); apart > 0 && kept.length > 0; apart -= 1) {
      pool.push(...kept.splice(this.pick(kept.length), 1)[0]!);
    }
    if (pool.length === 0) return null;
    for (let set = this.anySet(pool); set; set = this.anySet(pool)) {
      for (const row of set) pool.splice(pool.indexOf(row), 1);
      kept.push(set);
    }
    return { sets: kept, left: [...pool, ...beside], wedges: this.all(kept) };
  }

  private wedgesOf(set: RowsOfSet): number {
    return wedgesOnLength(lengthOf(set), setHeight(set, this.wedge.seam), this.wedge);
  }

  /** A set from the pool, by chance; null only where none can be laid. */
  private anySet(pool: RowsOfSet): RowsOfSet | null {
    let best: { set: RowsOfSet; over: Inches } | null = null;
    const { length } = pool[this.pick(Math.max(1, pool.length))] ?? { length: 0 };
    const long = pool.filter((row) => row.length >= length - HAIR);
    const gains = this.gains(length);
    const wanted = gains[this.pick(Math.max(1, gains.length))];
    for (let way = 0; wanted !== undefined && way < WAYS; way += 1) {
      const set = this.reaching(long, wanted);
      if (!set) continue;
      const over = this.gainOf(set) - wanted;
      if (!best || over < best.over - HAIR) best = { set, over };
    }
    return best?.set ?? this.surely(pool);
  }

  /** What strips add to the sets of this length worth laying. */
  private gains(length: Inches): readonly Inches[] {
    const known = this.gainsFor.get(length);
    if (known) return known;
    const gains = setKinds(length, this.wedge, []).map((kind) => kind.gain);
    this.gainsFor.set(length, gains);
    return gains;
  }

  /** Strips in any order until they reach, without those it can do without; null where a fabric would lie beside itself. */
  private reaching(rows: RowsOfSet, wanted: Inches): RowsOfSet | null {
    const set: StripOnHand[] = [];
    let open = wanted;
    for (const row of this.shuffled(rows)) {
      if (open <= HAIR) break;
      set.push(row);
      open -= finishedWidth(row.width, this.wedge.seam);
    }
    if (open > HAIR) return null;
    const needed = set.filter((row) => {
      const gain = finishedWidth(row.width, this.wedge.seam);
      if (open + gain > HAIR) return true;
      open += gain;
      return false;
    });
    return canDiffer(needed) ? needed : null;
  }

  private surely(pool: RowsOfSet): RowsOfSet | null {
    const counts = new Map<StripOnHand, number>();
    for (const row of pool) counts.set(row, (counts.get(row) ?? 0) + 1);
    const rows = Array.from(counts, ([row, count]) => ({ ...row, count }));
    const found = oneMoreSet(rows, this.wedge);
    return found?.map((one) => pool.find((row) => row.id === one.id)!) ?? null;
  }

  private gainOf(set: RowsOfSet): Inches {
    return set.reduce((sum, row) => sum + finishedWidth(row.width, this.wedge.seam), 0);
  }

  private shuffled<T>(list: readonly T[]): T[] {
    const all = [...list];
    for (let at = all.length - 1; at > 0; at -= 1) {
      const other = this.pick(at + 1);
      [all[at], all[other]] = [all[other]!, all[at]!];
    }
    return all;
  }

  private pick(below: number): number {
    return uniformInt(this.random, 0, below - 1);
  }
}

function lengthOf(set: RowsOfSet): Inches {
  return Math.min(...set.map((row) => row.length));
}
