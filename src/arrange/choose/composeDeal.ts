// Which wedges go into which block (not yet on which place): dealt out evenly, then improved by a seeded local search whose
// first aim is the exact count of unavoidable rim clashes, its second little of one fabric meeting itself and variety.
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator';
import type { InParts } from '../../model/work/parts';
import { fewestClashes } from './composeRims';

export interface DealInput {
  /** Wedges to use of each type, its tip, and the index of its rim fabric (−1: a rim that cannot clash). */
  readonly types: readonly {
    readonly up: boolean;
    readonly rim: number;
    readonly count: number;
    readonly set: number;
  }[];
  readonly blocks: number;
  /** Wedges of each tip in a block, N/2. */
  readonly half: number;
  /** Inches of clash between an up and a down type side by side. */
  readonly clashInches: (up: number, down: number) => number;
  /** No deal has fewer clashes than this; the search stops trying for fewer. */
  readonly leastClashes: number;
}

export interface Deal {
  /** For each block its ups, then its downs, as types. */
  readonly hands: readonly { readonly ups: number[]; readonly downs: number[] }[];
  readonly clashes: number;
}

/** Steps between two pauses. */
const PAUSE = 250;

const CLASH = 1_000;
/** A type twice in a block; a set in both its tips; a rim fabric again. In inches of clash that it is worth. */
const SAME_KIND = 1.5;
const SAME_SET = 0.4;
const SAME_RIM = 0.4;

/** Deals wedges out. Needs at least blocks × half wedges of each tip. `steps` bounds the second aim only. */
export function* dealing(input: DealInput, steps: number, random: RandomGenerator): InParts<Deal> {
  const table = new DealTable(input, random);
  for (let step = 0; step < steps; step += 1) {
    if (step % PAUSE === 0) yield null;
    table.tryStep(3 * 0.02 ** (step / steps));
  }
  yield* table.mendingClashes();
  return {
    hands: table.hands.map(({ ups, downs }) => ({ ups: [...ups], downs: [...downs] })),
    clashes: table.clashes(),
  };
}

interface Hand {
  ups: number[];
  downs: number[];
}

class DealTable {
  readonly hands: Hand[];
  private readonly spare: { ups: number[]; downs: number[] };
  private readonly costs: number[];
  private readonly input: DealInput;
  private readonly random: RandomGenerator;

  constructor(input: DealInput, random: RandomGenerator) {
    this.input = input;
    this.random = random;
    const ups = this.dealt(true);
    const downs = this.dealt(false);
    this.hands = ups.hands.map((hand, at) => ({ ups: hand, downs: downs.hands[at]! }));
    this.spare = { ups: ups.spare, downs: downs.spare };
    this.costs = this.hands.map((hand) => this.costOf(hand));
  }

  clashes(): number {
    return this.hands.reduce((sum, hand) => sum + this.clashesOf(hand), 0);
  }

  /** Exchanges two wedges of one tip, between two blocks or with one left over. */
  tryStep(heat: number): void {
    const side = this.pick(2) === 0 ? 'ups' : 'downs';
    const from = this.pick(this.hands.length);
    const withSpare = this.spare[side].length > 0 && this.pick(3) === 0;
    const at = this.pick(this.input.half);
    if (withSpare) this.exchange(side, from, at, -1, this.pick(this.spare[side].length), heat);
    else if (this.hands.length > 1) {
      const to = (from + 1 + this.pick(this.hands.length - 1)) % this.hands.length;
      this.exchange(side, from, at, to, this.pick(this.input.half), heat);
    }
  }

  /** Every exchange that lowers the count of clashes is made, until none does or no fewer are possible. */
  *mendingClashes(): InParts<void> {
    let better = true;
    while (better && this.clashes() > this.input.leastClashes) {
      better = false;
      for (let from = 0; from < this.hands.length; from += 1) {
        if (this.clashesOf(this.hands[from]!) > 0 && (yield* this.mendingOne(from))) better = true;
      }
    }
  }

  private *mendingOne(from: number): InParts<boolean> {
    for (const side of ['ups', 'downs'] as const) {
      for (let at = 0; at < this.input.half; at += 1) {
        yield null;
        for (let there = 0; there < this.spare[side].length; there += 1) {
          if (this.exchange(side, from, at, -1, there, 0, true)) return true;
        }
        for (let to = 0; to < this.hands.length; to += 1) {
          if (to === from) continue;
          for (let there = 0; there < this.input.half; there += 1) {
            if (this.exchange(side, from, at, to, there, 0, true)) return true;
          }
        }
      }
    }
    return false;
  }

  /** Makes the exchange when it is better (or, while hot, not much worse). `to` −1 is the pile left over. */
  private exchange(
    side: 'ups' | 'downs',
    from: number,
    at: number,
    to: number,
    there: number,
    heat: number,
    fewerOnly = false,
  ): boolean {
    const mine = this.hands[from]![side];
    const theirs = to < 0 ? this.spare[side] : this.hands[to]![side];
    if (mine[at] === theirs[there]) return false;
    const swap = () => {
      [mine[at], theirs[there]] = [theirs[there]!, mine[at]!];
    };
    const before = this.costs[from]! + (to < 0 ? 0 : this.costs[to]!);
    swap();
    const mineAfter = this.costOf(this.hands[from]!);
    const theirsAfter = to < 0 ? 0 : this.costOf(this.hands[to]!);
    const worse = mineAfter + theirsAfter - before;
    const kept = fewerOnly
      ? worse < -CLASH / 2
      : worse <= 0 || uniformFloat64(this.random) < Math.exp(-worse / heat);
    if (!kept) {
      swap();
      return false;
    }
    this.costs[from] = mineAfter;
    if (to >= 0) this.costs[to] = theirsAfter;
    return true;
  }

  private clashesOf(hand: Hand): number {
    const { types, half } = this.input;
    const rims = new Map<number, [number, number]>();
    const add = (type: number, side: 0 | 1) => {
      const { rim } = types[type]!;
      if (rim < 0) return;
      const pair = rims.get(rim) ?? [0, 0];
      pair[side] += 1;
      rims.set(rim, pair);
    };
    for (const type of hand.ups) add(type, 0);
    for (const type of hand.downs) add(type, 1);
    let clashes = 0;
    for (const [ups, downs] of rims.values()) clashes += fewestClashes(ups, downs, half);
    return clashes;
  }

  private costOf(hand: Hand): number {
    const { types, half, clashInches } = this.input;
    let cost = CLASH * this.clashesOf(hand);
    // Each up lies beside two of the half downs.
    const part = 2 / half;
    for (const up of hand.ups) {
      for (const down of hand.downs) {
        cost += part * clashInches(up, down);
        if (types[up]!.set === types[down]!.set) cost += SAME_SET;
      }
    }
    for (const side of [hand.ups, hand.downs]) {
      for (let at = 0; at < side.length; at += 1) {
        for (let other = 0; other < at; other += 1) {
          if (side[at] === side[other]) cost += SAME_KIND;
          if (types[side[at]!]!.rim === types[side[other]!]!.rim) cost += SAME_RIM;
        }
      }
    }
    return cost;
  }

  /**
   * The start: types in random order give their wedges in proportion to how many they have, and they go round the blocks
   * one by one like cards, so that wedges of a type, and of a rim fabric, lie in different blocks.
   */
  private dealt(up: boolean): { hands: number[][]; spare: number[] } {
    const { types, blocks, half } = this.input;
    const order = types.map((_, type) => type).filter((type) => types[type]!.up === up);
    for (let at = order.length - 1; at > 0; at -= 1) {
      const other = this.pick(at + 1);
      [order[at], order[other]] = [order[other]!, order[at]!];
    }
    const pile = order
      .flatMap((type, rank) =>
        Array.from({ length: types[type]!.count }, (_, copy) => ({
          type,
          rank,
          at: (copy + 0.5) / types[type]!.count,
        })),
      )
      .sort((one, other) => one.at - other.at || one.rank - other.rank);
    const chosen = pile.slice(0, blocks * half);
    // One rim fabric after another, so that a fabric's wedges go to blocks in turn.
    const cards = chosen.sort(
      (one, other) => types[one.type]!.rim - types[other.type]!.rim || one.rank - other.rank,
    );
    const hands: number[][] = Array.from({ length: blocks }, () => []);
    cards.forEach((card, at) => {
      hands[(up ? at : blocks * half - 1 - at) % blocks]!.push(card.type);
    });
    return { hands, spare: pile.slice(blocks * half).map(({ type }) => type) };
  }

  private pick(below: number): number {
    return uniformInt(this.random, 0, below - 1);
  }
}
