// A quilt with blocks in pictures stands as the same quilt with those blocks pieced: in every figure of the analysis, for any mix of
// the two kinds, straight, on point, with sashing, corners by rule, and with wedges that are known in part.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { analyse, reanalyse } from '../../src/balance/analyse';
import { standingAfter } from '../../src/balance/standing';
import { asPieced } from '../../src/geometry/asPieced';
import { finishedWidth } from '../../src/geometry/stripSet';
import { findSet } from '../../src/model/find';
import { moved } from '../../src/model/moves';
import type { Project, StripSet } from '../../src/model/project';
import { awkwardTop, ruledTop } from '../arrange/awkwardTop';
import { inMask, withPictures, withSewn } from '../geometry/pictured';
import { runs } from '../runs';
import { figures, rounded } from './figures';

const RUNS = { numRuns: runs(3, 60), seed: 1206 };
const mask = fc.integer({ min: 1, max: 2 ** 20 - 1 });
const top = fc
  .tuple(fc.integer({ min: 0, max: 400 }), fc.constantFrom(6, 8, 10, 12), fc.boolean())
  .map(([seed, perBlock, ruled]) => (ruled ? ruledTop : awkwardTop)(seed, perBlock as 6 | 8 | 10 | 12));

/** So many bands of the wedge are read in this block and place: none of some, all of most. */
function read(block: number, place: number): number {
  return [0, 1, 2, Infinity, Infinity][(block * 5 + place * 3) % 5]!;
}

/** The quilt with the wedges of masked blocks written out by hand as sets of their own, as far as `read` goes. */
function byHand(project: Project, masked: number): Project {
  const { seam } = project.wedge;
  const sets: StripSet[] = [];
  const blocks = withSewn(project, masked).blocks.map((block, at) => {
    if (!inMask(masked, at)) return block;
    const places = block.places.map((place, index) => {
      const set = place && findSet(project, place.set)!;
      const known = read(at, index);
      if (!set || known === 0) return null;
      const strips = place.tip === 'up' ? set.strips : set.strips.toReversed();
      const some = strips.slice(0, known).map((strip) => ({ ...strip }));
      // The seam that joins it to the next strip is not there.
      if (some.length < strips.length) some[some.length - 1]!.width -= seam;
      sets.push({ ...set, id: `own ${at} ${index}`, label: `${at}x${index}`, strips: some, cut: { up: 1, down: 0 } });
      return { set: `own ${at} ${index}`, tip: 'up' as const };
    }); // biome-ignore format: short
    return { ...block, places };
  });
  return { ...project, blocks, stripSets: [...project.stripSets, ...sets] };
}

describe('a quilt with blocks in pictures', () => {
  it('is analysed as the same quilt pieced', () => {
    fc.assert(
      fc.property(top, mask, (project, some) => {
        const options = { intent: project.preferences.intent };
        const mixed = analyse(withPictures(project, some), options);
        expect(rounded(figures(mixed))).toEqual(rounded(figures(analyse(withSewn(project, some), options))));
      }),
      RUNS,
    );
  });

  it('is analysed as far as the pictures are known', () => {
    fc.assert(
      fc.property(top, mask, (project, some) => {
        const mixed = analyse(withPictures(project, some, read));
        expect(rounded(figures(mixed))).toEqual(rounded(figures(analyse(byHand(project, some)))));
      }),
      RUNS,
    );
  });

  it('is analysed anew after turns and swaps as it is from the start', () => {
    fc.assert(
      fc.property(top, mask, fc.nat(), fc.nat(), (project, some, one, other) => {
        const before = withPictures(project, some);
        const cells = before.wall.cells.length;
        const first = analyse(before);
        const after = moved(before, [{ kind: 'swap', cell: one % cells, other: other % cells }]);
        expect(rounded(figures(reanalyse(first, after)))).toEqual(rounded(figures(analyse(after))));
        expect(standingAfter(first, after).clashes).toBe(analyse(after).clashes.length);
        // Types of wedges are measured once: the list of sets is the same as long as no picture changes.
        expect(asPieced(after).stripSets).toBe(asPieced(before).stripSets);
      }),
      RUNS,
    );
  });

  it('leaves a project without pictures as it is', () => {
    fc.assert(
      fc.property(top, (project) => {
        expect(asPieced(project)).toBe(project);
      }),
      { ...RUNS, numRuns: 5 },
    );
  });

  it('shows the width of every band that is known, beside its seams', () => {
    fc.assert(
      fc.property(top, mask, (project, some) => {
        const mixed = withPictures(project, some);
        const { stripSets } = asPieced(mixed);
        for (const block of mixed.blocks) {
          if (block.kind !== 'pictured') continue;
          for (const [at, { bands }] of block.wedges.entries()) {
            const set = stripSets.find(({ label }) => label === `${block.number}.${at + 1}`);
            expect(set?.strips.length ?? 0).toBe(bands.length);
            bands.slice(1, -1).forEach(({ width }, band) => {
              const cut = set!.strips[band + 1]!.width;
              expect(finishedWidth(cut, project.wedge.seam)).toBeCloseTo(width, 9);
            });
          }
        }
      }),
      RUNS,
    );
  });
});
