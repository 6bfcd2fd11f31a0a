// The straight setting: sizes against worked figures, and its pieces against polygon-clipping.
// Source of the border example: community sewing-group block-of-the-month hand-out, section "Borders" (top 32 1/2 × 44
// unfinished, borders 1, 2, 4 finished: 34 1/2 × 46, 38 1/2 × 50; recomputed 46 1/2 × 58 after the third).
import { describe, expect, it } from 'vitest';
import { boxOutline, type Outline, placed, quarterTurned } from '../../src/geometry/point';
import { layOut } from '../../src/geometry/setting';
import { createProject } from '../../src/model/create';
import type { Project } from '../../src/model/project';
import { tilingError } from './clipping';

function project(rows: number, columns: number, setting: Partial<Project['setting']>): Project {
  const plain = createProject('p', 'test');
  return {
    ...plain,
    wall: { rows, columns, cells: Array.from({ length: rows * columns }, () => null) },
    setting: { ...plain.setting, ...setting },
  };
}

function pieces(top: Project): Outline[] {
  const layout = layOut(top);
  const { width, height } = layout.block;
  return [
    ...layout.centres.map((middle) =>
      boxOutline({ x: middle.x - width / 2, y: middle.y - height / 2, width, height }),
    ),
    ...layout.pieces.map((piece) => piece.outline),
  ];
}

function boxOf(outline: Outline): { width: number; height: number } {
  const spread = (values: number[]) => Math.max(...values) - Math.min(...values);
  return {
    width: spread(outline.map((point) => point.x)),
    height: spread(outline.map((point) => point.y)),
  };
}

describe('the straight setting', () => {
  it('makes a top of 32 1/2 × 48 from 2 × 3 blocks of 14 with 1 1/2 sashing between and around (trade notes 5)', () => {
    const layout = layOut(project(3, 2, { sashing: { where: 'around', width: 1.5, fabric: 'f1' } }));
    expect(layout.width).toBeCloseTo(32.5, 9);
    expect(layout.height).toBeCloseTo(48, 9);
  });

  it('is smaller by two sashings where they lie between the blocks only, and 28 × 42 without any', () => {
    const between = layOut(project(3, 2, { sashing: { where: 'between', width: 1.5, fabric: 'f1' } }));
    expect([between.width, between.height].map((inches) => Number(inches.toFixed(9)))).toEqual([29.5, 45]);
    const none = layOut(project(3, 2, {}));
    expect([none.width, none.height].map((inches) => Number(inches.toFixed(9)))).toEqual([28, 42]);
    expect(none.pieces).toHaveLength(0);
  });

  it('grows by twice each border, as in the published three-border example', () => {
    // Only the growth is compared: the published top is no multiple of our block.
    const borders = [1, 2, 4].map((width) => ({ fabric: 'f1', width }));
    const bare = layOut(project(3, 2, {}));
    const growth = [1, 2, 3].map((count) => {
      const layout = layOut(project(3, 2, { borders: borders.slice(0, count) }));
      return [layout.width - bare.width, layout.height - bare.height].map((inches) =>
        Number(inches.toFixed(9)),
      );
    });
    expect(growth).toEqual([[34.5 - 32.5, 46 - 44], [38.5 - 32.5, 50 - 44], [46.5 - 32.5, 58 - 44]]); // biome-ignore format: a table
    const first = layOut(project(3, 2, { borders }))
      .pieces.filter((piece) => piece.border === 0)
      .map((piece) => boxOf(piece.outline));
    // Verticals first (as long as the top is high), then horizontals across the new width.
    expect(first.map((box) => [box.width, box.height].map((inches) => Number(inches.toFixed(9))))).toEqual([
      [1, bare.height], [1, bare.height], [bare.width + 2, 1], [bare.width + 2, 1],
    ]); // biome-ignore format: a table
  });

  it.each(['none', 'between', 'around'] as const)(
    'tiles the whole top with sashing %s and two borders',
    (where) => {
      for (const perBlock of [6, 8] as const) {
        const base = project(3, 4, {
          sashing: { where, width: 1.25, fabric: 'f1' },
          borders: [
            { fabric: 'f1', width: 1 },
            { fabric: 'f1', width: 3.5 },
          ],
        });
        const top: Project = { ...base, wedge: { ...base.wedge, perBlock } };
        const layout = layOut(top);
        const whole = boxOutline({ x: 0, y: 0, width: layout.width, height: layout.height });
        expect(tilingError(pieces(top), whole)).toBeLessThan(1e-6);
      }
    },
  );
});

describe('turning outlines by quarters', () => {
  it('keeps them exact: four quarters are none, and one takes the top to the right', () => {
    const point = { x: 1.23456789, y: -7.7 };
    expect(quarterTurned(quarterTurned(point, 3), 1)).toEqual(point);
    expect(quarterTurned({ x: 0, y: -1 }, 1)).toEqual({ x: 1, y: 0 });
    expect(quarterTurned(point, -1)).toEqual(quarterTurned(point, 3));
    expect(placed([{ x: 0, y: -1 }], 2, { x: 5, y: 5 })).toEqual([{ x: 5, y: 6 }]);
  });
});
