// One block's wedges laid in a ring, ups and downs in turn: the fewest rim clashes first, then the least of one fabric
// meeting itself deeper in. Branch and bound; exact for up to eight wedges, and for more unless it says otherwise.

/** Costs between types, by index. Rim clashes are counted, everything else is added up in inches. */
export interface RingCosts {
  readonly clash: (up: number, down: number) => number;
  readonly deep: (up: number, down: number) => number;
}

export interface Ring {
  /** Kinds by place: up, down, up, … */
  readonly places: number[];
  readonly clashes: number;
  readonly deep: number;
}

/** Branches looked at after the first ring with the fewest clashes was found; eight wedges never need as many. */
const ENOUGH_BRANCHES = 30_000;

/**
 * Lays the ring with `allowed` clashes (the fewest possible, see composeRims) and the least cost deeper in. The first up
 * stays on place 1. `ups` and `downs` are equally many.
 */
export function layRing(
  ups: readonly number[],
  downs: readonly number[],
  allowed: number,
  costs: RingCosts,
): Ring {
  const half = ups.length;
  const places: number[] = [];
  const left = { up: counted(ups), down: counted(downs) };
  let best: Ring | null = null;
  let branches = 0;
  const step = (clashes: number, deep: number): void => {
    if (best && (branches > ENOUGH_BRANCHES || deep >= best.deep - 1e-9)) return;
    branches += best ? 1 : 0;
    if (places.length === 2 * half) {
      const [first, last] = [places[0]!, places.at(-1)!];
      const closed = { clashes: clashes + costs.clash(first, last), deep: deep + costs.deep(first, last) };
      if (closed.clashes <= allowed && (!best || closed.deep < best.deep - 1e-9)) {
        best = { places: [...places], ...closed };
      }
      return;
    }
    const up = places.length % 2 === 0;
    const last = places.at(-1)!;
    const choices = [...(up ? left.up : left.down)]
      .filter(([, count]) => count > 0)
      .map(([type]) => ({
        type,
        clash: up ? costs.clash(type, last) : costs.clash(last, type),
        deep: up ? costs.deep(type, last) : costs.deep(last, type),
      }))
      .filter((choice) => clashes + choice.clash <= allowed)
      .sort((one, other) => one.deep - other.deep);
    const stock = up ? left.up : left.down;
    for (const choice of choices) {
      stock.set(choice.type, stock.get(choice.type)! - 1);
      places.push(choice.type);
      step(clashes + choice.clash, deep + choice.deep);
      places.pop();
      stock.set(choice.type, stock.get(choice.type)! + 1);
    }
  };
  const first = ups[0]!;
  left.up.set(first, left.up.get(first)! - 1);
  places.push(first);
  step(0, 0);
  if (!best) throw new Error('layRing: no ring has as few clashes as composeRims promises');
  return best;
}

function counted(types: readonly number[]): Map<number, number> {
  const counts = new Map<number, number>();
  for (const type of types) counts.set(type, (counts.get(type) ?? 0) + 1);
  return counts;
}
