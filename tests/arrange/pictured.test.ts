// The arranger on quilts with blocks in pictures: it only turns and moves those, its moves are moves of the quilt itself, and it finds
// what it finds for the same quilt pieced.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { propose } from '../../src/arrange/mend/proposals';
import { ALL_SCOPES } from '../../src/arrange/score';
import { analyse } from '../../src/balance/analyse';
import { evaluateTerms } from '../../src/balance/score/terms';
import { DEFAULT_WEIGHTS, weighted } from '../../src/balance/score/weights';
import { asPieced } from '../../src/geometry/asPieced';
import { movedIfFree } from '../../src/model/moves';
import type { Project } from '../../src/model/project';
import { withPictures, withSewn } from '../geometry/pictured';
import { runs } from '../runs';
import { awkwardTop, ruledTop } from './awkwardTop';
import { alternatives, searched } from './toTheEnd';

const mask = fc.integer({ min: 1, max: 2 ** 20 - 1 });
const top = fc
  .tuple(fc.integer({ min: 0, max: 400 }), fc.constantFrom(6, 8, 10, 12), fc.boolean())
  .map(([seed, perBlock, ruled]) => (ruled ? ruledTop : awkwardTop)(seed, perBlock as 6 | 8 | 10 | 12));
const wish = (seed: number, steps: number) => ({ seed, scopes: ALL_SCOPES, budget: { steps } });

/** The blocks in pictures without where they hang. */
function pictures({ blocks }: Project) {
  return blocks.filter(({ kind }) => kind === 'pictured');
}

/** The quilt after moves, none of which may be locked on the quilt itself; its pictures are as they were. */
function after(project: Project, moves: Parameters<typeof movedIfFree>[1]): Project {
  const { project: then, reason } = movedIfFree(project, moves);
  if (!then) throw new Error(reason.say);
  expect(pictures(then)).toEqual(pictures(project));
  return then;
}

const score = (project: Project) => weighted(analyse(project).terms, DEFAULT_WEIGHTS);

it('shuffles by moves of the quilt itself, which leave pictures as they are and score as told', () => {
  fc.assert(
    fc.property(top, mask, fc.nat(99), (project, some, seed) => {
      const mixed = withPictures(project, some);
      const { moves, before, after: told } = searched(mixed, wish(seed, 4000));
      expect(before.total).toBeCloseTo(score(mixed), 6);
      // A shuffle is scored by what chance gives for the wall as it was.
      const { model } = analyse(after(mixed, moves));
      expect(told.total).toBeCloseTo(
        weighted(evaluateTerms(analyse(mixed).scales, model), DEFAULT_WEIGHTS),
        6,
      );
    }),
    { numRuns: runs(3, 20), seed: 1208 },
  );
});

it('shuffles as it does the same quilt with those blocks pieced and sewn', () => {
  fc.assert(
    fc.property(top, mask, (project, some) => {
      const found = searched(withPictures(project, some), wish(1, 4000));
      const pieced = searched(withSewn(project, some), wish(1, 4000));
      expect(found.before.total).toBeCloseTo(pieced.before.total, 6);
      // Wedges of pictures are of sets of their own, so chance may take another way; neither may be much worse.
      expect(found.after.total).toBeLessThan(pieced.before.total + 1e-6);
    }),
    { numRuns: runs(2, 8), seed: 1209 },
  );
});

it('finds several layouts and mends by moves of the quilt itself', () => {
  fc.assert(
    fc.property(top, mask, (project, some) => {
      const mixed = withPictures(project, some);
      for (const { moves } of alternatives(mixed, wish(2, 4000), 3)) after(mixed, moves);
      const analysis = analyse(mixed);
      for (const finding of analysis.findings.slice(0, 3))
        for (const { moves } of propose(finding, analysis)) after(mixed, moves);
    }),
    { numRuns: runs(4, 8), seed: 1210 },
  );
});

it('arranges hundreds of blocks in pictures without a table of all their wedges against each other', () => {
  // A few of them are pieced, so that wedges are traded and strips are laid in other orders beside the pictures.
  const mixed = withPictures(awkwardTop(1, 8), (2 ** 20 - 1) & ~0b1001010);
  const wide = {
    ...mixed,
    blocks: Array.from({ length: 10 }, (_, copy) =>
      mixed.blocks.map((block) => ({
        ...block,
        id: `${block.id} ${copy}`,
        number: block.number + 20 * copy,
      })),
    ).flat(),
  };
  const cells = wide.blocks.map(({ id }) => ({ block: id, turn: 0, pinned: false }));
  const wall: Project = {
    ...wide,
    setting: { ...wide.setting, layout: { kind: 'straight' }, cornerRule: null },
    wall: { rows: 10, columns: 20, cells },
  };
  expect(2 * asPieced(wall).stripSets.length).toBeGreaterThan(2048);
  const { after: told, before, moves } = searched(wall, wish(3, 60_000));
  expect(told.total).toBeLessThan(before.total);
  expect(moves.some(({ kind }) => kind === 'place' || kind === 'strips')).toBe(true);
  const { model } = analyse(after(wall, moves));
  expect(told.total).toBeCloseTo(weighted(evaluateTerms(analyse(wall).scales, model), DEFAULT_WEIGHTS), 6);
});
