// How a top would stand after moves is what the full analysis says of it once they are made.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { analyse } from '../../src/balance/analyse';
import { TERM_NAMES } from '../../src/balance/score/weights';
import { standingAfter } from '../../src/balance/standing';
import { type Move, moved } from '../../src/model/moves';
import type { Project } from '../../src/model/project';
import { runs } from '../runs';
import { scrappyTop } from './tops';

const WALLS: readonly Project[] = [
  scrappyTop({ rows: 3, columns: 4, seed: 21, fabrics: 8 }),
  scrappyTop({ rows: 4, columns: 2, seed: 3, fabrics: 12, perBlock: 6 }),
  withSashing(scrappyTop({ rows: 3, columns: 3, seed: 8, fabrics: 6, perBlock: 12 })),
];
const ANALYSES = WALLS.map((project) => {
  const intent = { value: 'light middle', colour: 'families together' } as const;
  return [analyse(project), analyse(project, { lookalikes: 14, intent })];
});

describe('how a top would stand', () => {
  it('after a swap, a turn, a block taken down or hung: as the full analysis says', () => {
    fc.assert(
      fc.property(
        fc.nat(WALLS.length - 1),
        fc.nat(1),
        fc.array(fc.tuple(fc.nat(4), fc.nat(50), fc.nat(50)), { minLength: 1, maxLength: 3 }),
        (at, wish, picks) => {
          const analysis = ANALYSES[at]![wish]!;
          let project = WALLS[at]!;
          for (const pick of picks) project = moved(project, [moveOf(project, pick)]);
          const full = analyse(project, analysis.options);
          const standing = standingAfter(analysis, project);
          expect(standing.clashes).toBe(full.clashes.length);
          for (const name of TERM_NAMES) expect(standing.terms[name]).toBeCloseTo(full.terms[name], 9);
        },
      ),
      { numRuns: runs(18, 300) },
    );
  });
});

/** Half of them swaps, which a hand does most. */
function moveOf(project: Project, [kind, one, other]: readonly [number, number, number]): Move {
  const cells = project.wall.cells.length;
  const block = project.blocks[one % project.blocks.length]!.id;
  const turn = other % (project.wedge.perBlock % 4 === 0 ? 4 : 2);
  const hangs = project.wall.cells.some((cell) => cell?.block === block);
  if (kind === 0 && hangs) return { kind: 'take', block };
  if (kind === 1 && hangs) return { kind: 'turn', block, turn };
  if (kind === 2 && !hangs) return { kind: 'hang', block, cell: other % cells, turn };
  return { kind: 'swap', cell: one % cells, other: other % cells };
}

function withSashing(project: Project): Project {
  return {
    ...project,
    setting: { ...project.setting, sashing: { where: 'around', width: 2, fabric: 'c1' }, cornerFabric: 'c3' },
  };
}
