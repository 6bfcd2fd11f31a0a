// Trades wedges between blocks in a search: weighs every trade of one tip between two blocks, and lays the wedges of both anew
// where a trade is taken up. Where wedges lie in their block is then no hindrance to evening the blocks out.
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator';
import type { Decisions } from '../decisions';
import { BlockLaying } from '../live/blockLaying';
import type { LiveWall } from '../live/liveWall';

/** On so few blocks every order meets somewhere, and laying them anew costs more time than it gains (measured on six and nine). */
const FEW_BLOCKS = 9;
/**
 * Where fewer seams than this share are free of contact, most orders of a block meet somewhere: laying anew then takes up to ten times as
 * long as single trades and ends higher (measured: 9 fabrics have a share below 0.25 and end 0.14 higher; 24 have 0.45 to 0.55, 0.03 lower).
 */
const FREE_SEAMS = 0.4;
/** So many wedge types of a tip are looked at for that share. */
const MOST_SAMPLED = 30;

export class Trades {
  private readonly wall: LiveWall;
  private readonly random: RandomGenerator;
  readonly laying: BlockLaying;
  /** By tip, the places of each block that hold a wedge to trade. */
  private readonly byBlock: readonly (readonly Int32Array[])[];
  private readonly layable: boolean;

  constructor(wall: LiveWall, { tradable }: Decisions, random: RandomGenerator) {
    const { perBlock } = wall.tables.model;
    this.wall = wall;
    this.random = random;
    const sorts = new Uint8Array(wall.typeAt.length);
    tradable.forEach((places, tip) => {
      for (const place of places) sorts[place] = tip + 1;
    });
    this.laying = new BlockLaying(wall, sorts);
    const blocks = [...wall.tables.model.blocks.keys()];
    this.byBlock = tradable.map((places) =>
      blocks
        .map((block) => places.filter((place) => Math.floor(place / perBlock) === block))
        .filter((held) => held.length > 0),
    );
    this.layable = freeSeams(wall, tradable) >= FREE_SEAMS;
  }

  /** Whether there are blocks enough with wedges of the tip to trade, and seams enough that cost nothing. */
  hasPairs(tip: number): boolean {
    return this.layable && this.byBlock[tip]!.length > FEW_BLOCKS;
  }

  /** Tries each trade of a tip between two blocks drawn at random, one after the other, as annealing does. */
  tryPair(tip: number, temperature: number): void {
    const { wall, laying } = this;
    const blocks = this.byBlock[tip]!;
    const first = uniformInt(this.random, 0, blocks.length - 1);
    const step = uniformInt(this.random, 1, blocks.length - 1);
    const others = blocks[(first + step) % blocks.length]!;
    const most = -temperature * Math.log(1 - uniformFloat64(this.random));
    for (const place of blocks[first]!) {
      for (const other of others) {
        if (wall.typeAt[place] !== wall.typeAt[other]) wall.tradeAndLay(place, other, most, laying);
      }
    }
  }
}

/** The share of seams without contact, 0–1, among the wedges that may be traded, a sample of each tip; 0 where there are none. */
function freeSeams(wall: LiveWall, tradable: readonly Int32Array[]): number {
  const [ups, downs] = tradable.map((places) => sampled(Array.from(places, (place) => wall.typeAt[place]!)));
  const costs = ups!.flatMap((up) => downs!.map((down) => wall.contact.seam(up, down)));
  return costs.filter((cost) => cost < 1e-9).length / Math.max(1, costs.length);
}

function sampled(types: readonly number[]): number[] {
  const distinct = [...new Set(types)];
  const every = Math.ceil(distinct.length / MOST_SAMPLED);
  return distinct.filter((_, at) => at % every === 0);
}
