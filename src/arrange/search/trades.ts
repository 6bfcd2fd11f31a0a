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

export class Trades {
  private readonly wall: LiveWall;
  private readonly random: RandomGenerator;
  private readonly laying: BlockLaying;
  /** By tip, the places of each block that hold a wedge to trade. */
  private readonly byBlock: readonly (readonly Int32Array[])[];

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
  }

  /** Whether there are blocks enough with wedges of the tip to trade. */
  hasPairs(tip: number): boolean {
    return this.byBlock[tip]!.length > FEW_BLOCKS;
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
