// The number of pieces of a top is known before it is drawn: the count is never below what is drawn, and a project with more
// than can be drawn is refused where it is opened and where it is changed, without drawing it.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { drawProject } from '../../src/drawing/drawProject';
import { apply } from '../../src/editing/apply';
import { openProject } from '../../src/editing/openProject';
import { MOST_PIECES, pieceCount } from '../../src/geometry/pieceCount';
import { phrase, speak } from '../../src/model/phrase';
import type { Border, Project } from '../../src/model/project';
import { writeProject } from '../../src/model/reading/read';
import { demo } from '../demo';
import { randomProject } from '../drawing/samples';
import { runs } from '../runs';

const drawn = (project: Project) => {
  const { blocks, setting, binding } = drawProject(project);
  return blocks.reduce((all, block) => all + block.pieces.length, 0) + setting.length + binding.length;
};

const borders: fc.Arbitrary<Border[]> = fc.array(
  fc.record({
    fabric: fc.constant('a'),
    width: fc.double({ min: 0.25, max: 6, noNaN: true }),
    keys: fc.array(
      fc.record({ fabric: fc.constantFrom('a', 'b'), width: fc.double({ min: 0.52, max: 4, noNaN: true }) }),
      { minLength: 1, maxLength: 9 },
    ),
  }),
  { maxLength: 3 },
);

it('is never below what is drawn', () => {
  let close = 0;
  fc.assert(
    fc.property(
      fc.nat(9999),
      fc.constantFrom(6, 8, 10, 12),
      fc.integer({ min: 1, max: 4 }),
      borders,
      fc.constantFrom('none', 'between', 'around'),
      fc.boolean(),
      (seed, perBlock, rows, rounds, where, onPoint) => {
        const straight = randomProject(seed, perBlock as 8, rows, 2);
        const sashing = { ...straight.setting.sashing, where: where as 'none', cornerstones: 'b' };
        const setting = { ...straight.setting, borders: rounds, sashing };
        const turned = onPoint && perBlock % 4 === 0 && where !== 'between';
        const cells = [...straight.wall.cells, ...Array.from({ length: rows - 1 }, () => null)];
        const project: Project = turned
          ? { ...straight, wall: { ...straight.wall, cells }, setting: { ...setting, layout: { kind: 'onPoint', sides: 'a', corners: 'a' } } }
          : { ...straight, setting };
        const pieces = drawn(project);
        expect(pieceCount(project)).toBeGreaterThanOrEqual(pieces);
        if (pieceCount(project) < 2 * pieces + 200) close += 1;
      },
    ),
    { numRuns: runs(67, 200), seed: 88 },
  );
  // Not a bound that says nothing: mostly within twice the number.
  expect(close).toBeGreaterThan(runs(50, 150));
}); // biome-ignore format: short

const fringed = (width: number): Project => {
  const project = demo('harbour-reading-corner');
  const fabric = project.fabrics[0]!.id;
  return { ...project, setting: { ...project.setting, borders: [{ fabric, width: 2, keys: [{ fabric, width }] }] } };
}; // biome-ignore format: short

it.each([0.5001, 0.50001, 0.5000001, 0.515])(
  'refuses a border of pieces cut %f wide in one sentence',
  (width) => {
    const opened = openProject(writeProject(fringed(width)));
    expect(opened.ok ? [] : opened.problems.map((one) => one.code)).toEqual(['strip-too-narrow']);
  },
);

it('refuses more pieces than are drawn, in a file and in a change, and says which border has them', () => {
  const project = fringed(0.515625);
  expect(openProject(writeProject(project)).ok).toBe(true);
  const bare = { blocks: [], wall: { ...project.wall, cells: project.wall.cells.map(() => null) } };
  const rounds = Array.from({ length: 12 }, () => project.setting.borders[0]!);
  const wide: Project = {
    ...project,
    ...bare,
    wedge: { ...project.wedge, cutHeight: 40 },
    setting: { ...project.setting, borders: rounds },
  };
  expect(pieceCount(wide)).toBeGreaterThan(MOST_PIECES);
  const opened = openProject(writeProject(wide));
  expect(opened.ok ? '' : speak(opened.problems[0]!.message)).toMatch(
    /^The top would have .* pieces, .* in border \d+; at most 150.?000 are drawn/,
  );
  const refused = apply(project, {
    label: phrase('widen'),
    change: (draft) => {
      Object.assign(draft, bare);
      draft.wedge = wide.wedge;
      draft.setting = wide.setting;
    },
  });
  expect(refused.ok ? '' : refused.problems.map((one) => one.code)).toContain('too-many-pieces');
});
