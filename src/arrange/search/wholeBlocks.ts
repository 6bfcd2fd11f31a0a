// Gives whole blocks other wedges in a search: choices near the average, tried one after the other. A block that changes one wedge
// at a time would have to leave the average first.
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator';
import type { Choices } from '../choices/choices';
import type { BlockLaying } from '../live/blockLaying';
import type { LiveWall } from '../live/liveWall';

/** Choices tried for one block in a row. */
const IN_A_ROW = 32;

export class WholeBlocks {
  constructor(
    private readonly wall: LiveWall,
    private readonly choices: Choices,
    private readonly laying: BlockLaying,
    private readonly random: RandomGenerator,
  ) {}

  /** Tries some choices for a block drawn at random until one is taken, as annealing does. */
  tryOne(temperature: number): void {
    const { choices, random, wall, laying } = this;
    const block = choices.blocks[uniformInt(random, 0, choices.blocks.length - 1)]!;
    const most = -temperature * Math.log(1 - uniformFloat64(random));
    const first = uniformInt(random, 0, choices.count - 1);
    for (let at = 0; at < Math.min(IN_A_ROW, choices.count); at++) {
      if (wall.giveAndLay(block, choices, (first + at) % choices.count, most, laying)) return;
    }
  }
}
