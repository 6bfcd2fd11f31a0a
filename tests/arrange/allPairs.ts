// The score of a small wall as sums over blocks and pairs of blocks, taken from balance/terms alone by hanging one block, then
// two: a route to the best arrangement that shares nothing with the arranger. The score is of second degree in what hangs.

import { type Intent, SCATTERED } from '../../src/balance/score/intent';
import { termScales } from '../../src/balance/score/termScales';
import { evaluateTerms } from '../../src/balance/score/terms';
import { DEFAULT_WEIGHTS, type Terms, weighted } from '../../src/balance/score/weights';
import { wallModel } from '../../src/balance/wall/wallModel';
import { clothTable } from '../../src/cloth/cloths';
import { orientation } from '../../src/model/find';
import type { Project } from '../../src/model/project';

export interface AllPairs {
  readonly cells: number;
  /** Blocks × 4 turns: option = block × 4 + turn. */
  readonly options: number;
  readonly empty: number;
  /** cell × options + option. */
  readonly alone: Float64Array;
  /** ((cell × cells + other) × options + option) × options + other option, cell < other. */
  readonly pair: Float64Array;
}

export function allPairs(
  project: Project,
  weights: Terms = DEFAULT_WEIGHTS,
  intent: Intent = SCATTERED,
): AllPairs {
  const model = wallModel(project, clothTable(project.fabrics));
  const scales = termScales(model, intent);
  const cells = model.blockIn.length;
  const options = project.blocks.length * 4;
  const score = (hung: readonly (readonly [cell: number, option: number])[]) => {
    const blockIn = new Int32Array(cells).fill(-1);
    const cellOf = new Int32Array(project.blocks.length).fill(-1);
    const orientationOf = model.orientationOf.slice();
    for (const [cell, option] of hung) {
      const block = option >> 2;
      blockIn[cell] = block;
      cellOf[block] = cell;
      orientationOf[block] = orientation(project.blocks[block]!, option & 3, project.wedge);
    }
    // By a rule of the corners a block is another one in another cell.
    const hanging = project.setting.cornerRule
      ? wallModel(withHung(project, hung), model.cloths)
      : { ...model, blockIn, cellOf, orientationOf };
    return weighted(evaluateTerms(scales, hanging), weights);
  };
  const empty = score([]);
  const alone = new Float64Array(cells * options);
  for (let cell = 0; cell < cells; cell++) {
    for (let option = 0; option < options; option++)
      alone[cell * options + option] = score([[cell, option]]) - empty;
  }
  const pair = new Float64Array(cells * cells * options * options);
  for (let cell = 0; cell < cells; cell++) {
    for (let other = cell + 1; other < cells; other++) {
      for (let one = 0; one < options; one++) {
        for (let two = 0; two < options; two++) {
          if (one >> 2 === two >> 2) continue;
          pair[((cell * cells + other) * options + one) * options + two] =
            score([
              [cell, one],
              [other, two],
            ]) -
            alone[cell * options + one]! -
            alone[other * options + two]! -
            empty;
        }
      }
    }
  }
  return { cells, options, empty, alone, pair };
}

function withHung(project: Project, hung: readonly (readonly [cell: number, option: number])[]): Project {
  const cells: Project['wall']['cells'] = project.wall.cells.map(() => null);
  for (const [cell, option] of hung) {
    cells[cell] = { block: project.blocks[option >> 2]!.id, turn: option & 3, pinned: false };
  }
  return { ...project, wall: { ...project.wall, cells } };
}

/** The least score over every order and every turn, by going through them all. Counts them, to show that it did. */
export function leastOfAll(pairs: AllPairs): { least: number; count: number } {
  const { cells, options, pair, alone } = pairs;
  const chosen: number[] = [];
  let least = Number.POSITIVE_INFINITY;
  let count = 0;
  const hang = (used: number, cost: number) => {
    const cell = chosen.length;
    if (cell === cells) {
      count += 1;
      if (cost < least) least = cost;
      return;
    }
    for (let option = 0; option < options; option++) {
      if (used & (1 << (option >> 2))) continue;
      let sum = cost + alone[cell * options + option]!;
      for (let other = 0; other < cell; other++) {
        sum += pair[((other * cells + cell) * options + chosen[other]!) * options + option]!;
      }
      chosen.push(option);
      hang(used | (1 << (option >> 2)), sum);
      chosen.pop();
    }
  };
  hang(0, pairs.empty);
  return { least, count };
}
