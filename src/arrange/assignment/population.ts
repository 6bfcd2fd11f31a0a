// Owns a dozen good arrangements that are unlike each other, and makes new ones of two of them: what both agree on (one laid
// over the other as the places' symmetries allow) is kept, the rest drawn from either. Says when it has nothing new to give.
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator';
import { laidOver } from './placeSymmetry';
import { shuffled } from './shuffled';

const MEMBERS = 12;
/** Arrangements nearer than this share of the items count as the same one, of which the better is kept. */
const NEAR = 0.1;
/** After so many children in a row, for each member, that came to nothing, the population is spent and all new. */
const PATIENCE = 2;
const TRIES = 10;

interface Member {
  readonly places: Int32Array;
  readonly cost: number;
}

export class Population {
  private members: Member[] = [];
  private fruitless = 0;

  constructor(
    private readonly size: number,
    private readonly symmetries: readonly Int32Array[],
    private readonly random: RandomGenerator,
  ) {}

  /** An arrangement to be improved next: random ones until there are enough, then children. */
  next(): Int32Array {
    if (this.members.length < MEMBERS) return shuffled(this.size, this.random);
    const child = this.fruitless > PATIENCE * MEMBERS ? undefined : this.child();
    if (child) return child;
    this.members = [];
    this.fruitless = 0;
    return shuffled(this.size, this.random);
  }

  /** Takes an improved arrangement in if it is better than the one it resembles or, being new, than the worst. */
  offer(places: Int32Array, cost: number): void {
    const offered = { places: places.slice(), cost };
    const near = this.members.findIndex(
      (one) => laidOver(one.places, places, this.symmetries).differing <= NEAR * this.size,
    );
    if (near < 0 && this.members.length < MEMBERS) {
      this.members.push(offered);
      return;
    }
    const rival = near >= 0 ? near : this.worst();
    if (cost < this.members[rival]!.cost) {
      this.members[rival] = offered;
      this.fruitless = 0;
    } else this.fruitless++;
  }

  private worst(): number {
    return this.members.reduce((at, one, index) => (one.cost > this.members[at]!.cost ? index : at), 0);
  }

  private child(): Int32Array | undefined {
    for (let attempt = 0; attempt < TRIES; attempt++) {
      const first = uniformInt(this.random, 0, MEMBERS - 1);
      const second = (first + uniformInt(this.random, 1, MEMBERS - 1)) % MEMBERS;
      const one = this.members[first]!.places;
      const other = laidOver(one, this.members[second]!.places, this.symmetries);
      if (other.differing >= Math.max(3, NEAR * this.size)) return crossed(one, other.places, this.random);
    }
    return undefined;
  }
}

/** A child of two arrangements: each item, in random order, where either parent has it if still free, else anywhere. */
function crossed(one: Int32Array, other: Int32Array, random: RandomGenerator): Int32Array {
  const size = one.length;
  const child = new Int32Array(size).fill(-1);
  const taken = new Uint8Array(size);
  const put = (item: number, place: number) => {
    if (child[item]! >= 0 || taken[place]) return;
    child[item] = place;
    taken[place] = 1;
  };
  for (let item = 0; item < size; item++) if (one[item] === other[item]) put(item, one[item]!);
  for (const item of shuffled(size, random)) {
    const first = uniformInt(random, 0, 1) === 0;
    put(item, (first ? one : other)[item]!);
    put(item, (first ? other : one)[item]!);
  }
  const open = shuffled(size, random).filter((place) => !taken[place]);
  let next = 0;
  for (let item = 0; item < size; item++) if (child[item]! < 0) child[item] = open[next++]!;
  return child;
}
