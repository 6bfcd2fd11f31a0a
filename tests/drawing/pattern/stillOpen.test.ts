// A pattern of a wall that is not whole says so on its cover, with how many blocks and places are open; of a whole one it says nothing.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Project } from '../../../src/model/project';
import { runs } from '../../runs';
import { randomProject } from '../samples';
import { told } from './makePdf';

const WALLS = fc.record({
  seed: fc.integer({ min: 1, max: 9999 }),
  bare: fc.uniqueArray(fc.nat({ max: 8 }), { maxLength: 9 }),
  holes: fc.uniqueArray(fc.nat({ max: 8 }), { maxLength: 9 }),
});

/** A wall of nine, with blocks without their first wedge and cells without a block. */
function wall({ seed, bare, holes }: typeof WALLS extends fc.Arbitrary<infer One> ? One : never): Project {
  const made = randomProject(seed, 8, 3, 3);
  return {
    ...made,
    blocks: made.blocks.map((block, at) => ({
      ...block,
      places: block.places.map((place, index) => (bare.includes(at) && index === 0 ? null : place)),
    })),
    wall: { ...made.wall, cells: made.wall.cells.map((cell, at) => (holes.includes(at) ? null : cell)) },
  };
}

describe('the cover of a pattern', () => {
  it('tells how many blocks hang with empty places and how many places are empty, and nothing of a whole wall', () => {
    const met = { whole: 0, bare: 0, holes: 0, nothing: 0 };
    fc.assert(
      fc.property(WALLS, (one) => {
        const project = wall(one);
        const { cells } = project.wall;
        const hung = project.blocks.filter(({ id }) => cells.some((cell) => cell?.block === id));
        const bare = hung.filter(({ places }) => places.some((place) => place === null)).length;
        const holes = cells.filter((cell) => cell === null).length;
        const said = [...new Set(told(project, ['cover']))].join(' ');
        const counts = (pattern: RegExp) => Number(pattern.exec(said)?.[1] ?? 0);
        if (hung.length === 0) {
          expect(said).toContain('No block hangs on the wall');
          met.nothing += 1;
          return;
        }
        expect(counts(/(\d+) blocks? on the wall ha(?:s|ve) empty places/)).toBe(bare);
        expect(counts(/(\d+) places? on the wall (?:is|are) empty/)).toBe(holes);
        met.whole += bare + holes === 0 ? 1 : 0;
        met.bare += bare > 0 ? 1 : 0;
        met.holes += holes > 0 ? 1 : 0;
      }),
      {
        numRuns: runs(15, 60),
        examples: [
          [{ seed: 1, bare: [], holes: [] }],
          [{ seed: 2, bare: [], holes: [0, 1, 2, 3, 4, 5, 6, 7, 8] }],
          [{ seed: 3, bare: [4], holes: [] }],
        ],
      },
    );
    expect(Math.min(met.whole, met.nothing)).toBeGreaterThan(0);
    expect(Math.min(met.bare, met.holes)).toBeGreaterThan(runs(5, 10));
  });
});
