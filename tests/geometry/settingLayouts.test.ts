// Every way of setting the blocks: the pieces and the cells tile the top without gap or overlap (areas by polygon-clipping),
// and the cut sizes of setting triangles are those of published tables.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { area, boxOutline, type Outline, placed } from '../../src/geometry/point';
import { layOut } from '../../src/geometry/setting';
import { finishedBlock } from '../../src/geometry/wedge';
import { checkReferences } from '../../src/model/check';
import { createProject } from '../../src/model/create';
import { speak } from '../../src/model/phrase';
import type { Border, Project } from '../../src/model/project';
import { cellCount, cellToward, halfPlace, isPlain } from '../../src/model/wallCells';
import { runs } from '../runs';
import { tilingError } from './clipping';

const base = createProject('p', 'test');

function top(
  rows: number,
  columns: number,
  perBlock: 6 | 8 | 10 | 12,
  setting: Partial<Project['setting']>,
): Project {
  const whole = { ...base.setting, ...setting };
  const count = cellCount(rows, columns, whole.layout);
  return {
    ...base,
    wedge: { ...base.wedge, perBlock },
    wall: { rows, columns, cells: Array.from({ length: count }, () => null) },
    setting: whole,
  };
}

/** Cells without a plain square, and every piece of the setting. */
function allPieces(project: Project): Outline[] {
  const layout = layOut(project);
  const { width, height } = layout.block;
  const square = boxOutline({ x: -width / 2, y: -height / 2, width, height });
  return [
    ...layout.centres.flatMap((middle, cell) =>
      isPlain(cell, project) ? [] : [placed(square, 0, middle, layout.tilt)],
    ),
    ...layout.pieces.map((piece) => piece.outline),
  ];
}

function expectTiled(project: Project): void {
  expect(checkReferences(project).map((one) => speak(one.message))).toEqual([]);
  const layout = layOut(project);
  const whole = boxOutline({ x: 0, y: 0, width: layout.width, height: layout.height });
  expect(tilingError(allPieces(project), whole)).toBeLessThan(1e-6);
}

const width = fc.integer({ min: 4, max: 60 }).map((sixteenths) => sixteenths / 16);
const border: fc.Arbitrary<Border> = fc
  .record({
    wide: width,
    ends: fc.option(width),
    kind: fc.constantFrom('butted', 'mitred', 'cornerstones', 'pieced', 'pieced with cornerstones'),
    keys: fc.array(
      fc.integer({ min: 11, max: 40 }).map((sixteenths) => sixteenths / 16),
      { minLength: 1, maxLength: 9 },
    ),
  })
  .map(
    ({ wide, ends, kind, keys }): Border => ({
      fabric: 'f1',
      width: wide,
      ...(ends === null ? {} : { ends }),
      ...(kind === 'mitred' ? { corners: { kind } } : {}),
      ...(kind.endsWith('cornerstones') ? { corners: { kind: 'cornerstones', fabric: 'f1' } } : {}),
      ...(kind.startsWith('pieced') ? { keys: keys.map((cut) => ({ fabric: 'f1', width: cut })) } : {}),
    }),
  );
const plain = fc.constantFrom(
  null,
  { fabric: 'f1', cells: 'first' as const },
  { fabric: 'f1', cells: 'second' as const },
);
const gaps = fc.uniqueArray(fc.record({ after: fc.integer({ min: 1, max: 4 }), width }), {
  selector: (gap) => gap.after,
  maxLength: 3,
});

describe('whatever the setting, its pieces and the cells tile the top', () => {
  it('straight, with or without cornerstones, uneven gaps, plain squares, and any borders', () => {
    fc.assert(
      fc.property(
        fc.record({
          rows: fc.integer({ min: 1, max: 3 }),
          columns: fc.integer({ min: 1, max: 4 }),
          perBlock: fc.constantFrom(6 as const, 8 as const, 10 as const, 12 as const),
          where: fc.constantFrom('none' as const, 'between' as const, 'around' as const),
          width,
          stones: fc.boolean(),
          columnGaps: gaps,
          rowGaps: gaps,
          plain,
          borders: fc.array(border, { maxLength: 2 }),
        }),
        (one) => {
          const sashing = {
            where: one.where,
            width: one.width,
            fabric: 'f1',
            columnGaps: one.columnGaps,
            rowGaps: one.rowGaps,
            ...(one.stones ? { cornerstones: 'f1' } : {}),
          };
          expectTiled(
            top(one.rows, one.columns, one.perBlock, { sashing, plain: one.plain, borders: one.borders }),
          );
        },
      ),
      { seed: 20260101, numRuns: runs(13, 40) },
    );
  });

  it('on point, with sashing round every block or none, plain squares, and any borders', () => {
    fc.assert(
      fc.property(
        fc.record({
          rows: fc.integer({ min: 1, max: 3 }),
          columns: fc.integer({ min: 1, max: 3 }),
          perBlock: fc.constantFrom(8 as const, 12 as const),
          where: fc.constantFrom('none' as const, 'around' as const),
          width,
          stones: fc.boolean(),
          plain,
          borders: fc.array(border, { maxLength: 1 }),
        }),
        (one) => {
          const sashing = {
            where: one.where,
            width: one.width,
            fabric: 'f1',
            ...(one.stones ? { cornerstones: 'f1' } : {}),
          };
          const layout = { kind: 'onPoint', sides: 'f1', corners: 'f1' } as const;
          expectTiled(
            top(one.rows, one.columns, one.perBlock, {
              layout,
              sashing,
              plain: one.plain,
              borders: one.borders,
            }),
          );
        },
      ),
      { seed: 20260102, numRuns: runs(10, 30) },
    );
  });
});

describe('on point', () => {
  const layout = { kind: 'onPoint', sides: 'f1', corners: 'f1' } as const;

  // Common practice, no source: blocks r·c + (r − 1)(c − 1), side triangles 2(r − 1) + 2(c − 1), corners 4.
  it.each([
    [1, 1],
    [2, 3],
    [4, 3],
    [5, 5],
  ])('%i rows of %i have the usual numbers of blocks and setting triangles', (rows, columns) => {
    const project = top(rows, columns, 8, { layout });
    expect(project.wall.cells).toHaveLength(rows * columns + (rows - 1) * (columns - 1));
    const { pieces } = layOut(project);
    expect(pieces.filter((piece) => piece.part === 'side')).toHaveLength(2 * (rows - 1) + 2 * (columns - 1));
    expect(pieces.filter((piece) => piece.part === 'setting-corner')).toHaveLength(4);
  });

  it('the top is √2 blocks for each row and column, its triangles a half and a quarter of a block', () => {
    const project = top(3, 2, 8, { layout });
    const { width: wide, height, pieces } = layOut(project);
    const block = finishedBlock(project.wedge).width;
    expect(wide).toBeCloseTo(2 * Math.SQRT2 * block, 9);
    expect(height).toBeCloseTo(3 * Math.SQRT2 * block, 9);
    for (const piece of pieces) {
      expect(area(piece.outline)).toBeCloseTo((block * block) / (piece.part === 'side' ? 2 : 4), 8);
    }
  });

  it('blocks that are not square are refused with the reason', () => {
    const say = checkReferences(top(2, 2, 6, { layout })).map((one) => speak(one.message));
    expect(say).toEqual(['Blocks of 6 wedges are not square; only square blocks can be set on point.']);
  });

  it('arrows lead from every cell to every other', () => {
    const project = top(4, 3, 8, { layout });
    const reached = new Set([0]);
    for (const cell of reached) {
      for (const [across, down] of [
        [1, 0],
        [-1, 0],
        [0, 1],
        [0, -1],
      ] as const) {
        const next = cellToward(cell, across, down, project);
        const [from, to] = [halfPlace(cell, project.wall), halfPlace(next, project.wall)];
        if (next !== cell && down !== 0) expect(Math.sign(to.down - from.down)).toBe(down);
        reached.add(next);
      }
    }
    expect(reached.size).toBe(project.wall.cells.length);
  });
});
