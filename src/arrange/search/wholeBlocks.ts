// Gives whole blocks other wedges in a search: one of the choices near the average, each drawn the more often the better it fits among
// its neighbours (heat bath; Geman and Geman 1984). A block that changes one wedge at a time would have to leave the average first.
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator';
import type { Choices } from '../choices/choices';
import type { BlockLaying } from '../live/blockLaying';
import type { LiveWall } from '../live/liveWall';

/** Choices that cost so many times the temperature more than the best are never drawn. */
const NEVER = 16;

/** A block that a choice changes by less has these wedges already. */
const SAME = 1e-12;

export class WholeBlocks {
  private readonly costs: Float64Array;
  /** Choices that may be drawn, and the sums of how often they are, up to each. */
  private readonly likely: Int32Array;
  private readonly upTo: Float64Array;

  constructor(
    private readonly wall: LiveWall,
    private readonly choices: Choices,
    private readonly laying: BlockLaying,
    private readonly random: RandomGenerator,
  ) {
    this.costs = new Float64Array(choices.count);
    this.likely = new Int32Array(choices.count);
    this.upTo = new Float64Array(choices.count);
  }

  /** Draws a choice for a block drawn at random; it is given as annealing does, by the contact it adds. */
  tryOne(temperature: number): void {
    const { choices, costs, random, wall, laying } = this;
    const block = choices.blocks[uniformInt(random, 0, choices.blocks.length - 1)]!;
    wall.choiceCosts(block, choices, costs);
    const choice = this.draw(temperature);
    const spread = costs[choice]!;
    // Mostly the one that it has.
    if (Math.abs(spread) < SAME) return;
    const contact = -temperature * Math.log(1 - uniformFloat64(random));
    wall.giveAndLay(block, { choices, choice, spread }, spread + contact, laying);
  }

  private draw(temperature: number): number {
    const { costs, likely, upTo } = this;
    let least = costs[0]!;
    for (let choice = 1; choice < costs.length; choice++) if (costs[choice]! < least) least = costs[choice]!;
    const most = least + NEVER * temperature;
    let count = 0;
    let sum = 0;
    for (let choice = 0; choice < costs.length; choice++) {
      const cost = costs[choice]!;
      if (cost > most) continue;
      sum += Math.exp((least - cost) / temperature);
      likely[count] = choice;
      upTo[count++] = sum;
    }
    const drawn = uniformFloat64(this.random) * sum;
    let at = 0;
    while (at < count - 1 && upTo[at]! <= drawn) at++;
    return likely[at]!;
  }
}
