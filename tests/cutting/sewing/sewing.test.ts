// The steps of the pattern, sewn: every piece of the cutting list is used once, edges that are sewn together fit, and the top
// that comes out is the one that is drawn (areas by polygon-clipping).
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sewingSteps } from '../../../src/cutting/sewing/sewingSteps';
import type { SewingStep } from '../../../src/cutting/sewing/step';
import { settingPieces } from '../../../src/cutting/yardage/settingPieces';
import { drawProject } from '../../../src/drawing/drawProject';
import { boxOutline, type Outline, placed } from '../../../src/geometry/point';
import { layOut } from '../../../src/geometry/setting';
import { checkReferences } from '../../../src/model/check';
import { createProject } from '../../../src/model/create';
import { speak } from '../../../src/model/phrase';
import type { Border, Project } from '../../../src/model/project';
import { cellCount, isPlain } from '../../../src/model/wallCells';
import { clippedArea, xor } from '../../geometry/clipping';
import { runs } from '../../runs';
import { type Box, cutToBox, rulerStep, type SewnTop, sew } from './sew';

const base = createProject('p', 'test');
const FABRICS = ['f1', 'sash', 'stone', 'side', 'corner', 'plain', 'border', 'border stone'];

interface Wanted {
  readonly rows: number;
  readonly columns: number;
  readonly perBlock?: 6 | 8 | 10 | 12;
  readonly unit?: 'in' | 'cm';
  readonly wedge?: Partial<Project['wedge']>;
  readonly setting: Partial<Project['setting']>;
}

function top({ rows, columns, perBlock = 8, unit = 'in', wedge, setting }: Wanted): Project {
  const whole = { ...base.setting, ...setting };
  const count = cellCount(rows, columns, whole.layout);
  return {
    ...base,
    fabrics: FABRICS.map((id) => ({ ...base.fabrics[0]!, id })),
    wedge: { ...base.wedge, perBlock, ...wedge },
    wall: { rows, columns, cells: Array.from({ length: count }, () => null) },
    setting: whole,
    preferences: { ...base.preferences, unit },
  };
}

const onPoint = { kind: 'onPoint', sides: 'side', corners: 'corner' } as const;

/** The finished top: what the binding or the next border leaves of the raw one. */
function finished({ raw }: SewnTop, seam: number): Box {
  return { left: raw.left + seam, right: raw.right - seam, top: raw.top + seam, bottom: raw.bottom - seam };
}

/**
 * What lists round up to a ruler's step adds up along a line. Where every size lies on the ruler nothing is rounded but what
 * runs aslant over the whole top, and that is sewn to the middle of what it lies on.
 */
function tolerance(project: Project, exact: boolean): number {
  if (exact) return 1e-6;
  const { rows, columns } = project.wall;
  return rulerStep(project) * (2 * (rows + columns) + 4 + project.setting.borders.length);
}

function expectSewn(project: Project, exact = false): void {
  expect(checkReferences(project).map((one) => speak(one.message))).toEqual([]);
  const sewn = sew(project);
  expectAllTaken(project, sewn);
  const { outerSeam } = project.wedge;
  const edge = finished(sewn, outerSeam);
  const layout = layOut(project);
  const drawing = drawProject(project);
  const off = tolerance(project, exact);
  // Size, and every piece in its place.
  expect(Math.abs(edge.right - edge.left - drawing.width)).toBeLessThan(off);
  expect(Math.abs(edge.bottom - edge.top - drawing.height)).toBeLessThan(off);
  const { width, height } = layout.block;
  const block = boxOutline({ x: -width / 2, y: -height / 2, width, height });
  for (const { of, shows } of sewn.parts) {
    const drawn = typeof of === 'number' ? placed(block, 0, layout.centres[of]!, layout.tilt) : of.outline;
    const inside = cutToBox(shows, edge).map(({ x, y }) => ({ x: x - edge.left, y: y - edge.top }));
    const name = typeof of === 'number' ? `block ${of}` : `${of.part} ${JSON.stringify(of.place ?? of.side)}`;
    expect(difference(inside, drawn), name).toBeLessThan(around(drawn) * off + 1e-5);
  }
  expectSeamAllRound(sewn, edge, outerSeam, off);
}

function difference(one: Outline, other: Outline): number {
  return one.length < 3 ? Number.POSITIVE_INFINITY : clippedArea(xor(one, other));
}

function around(outline: Outline): number {
  return outline.reduce((sum, { x, y }, at) => {
    const next = outline[(at + 1) % outline.length]!;
    return sum + Math.hypot(next.x - x, next.y - y);
  }, 0);
}

/** Every piece of the list once, of its fabric; squares for triangles leave fewer over than one gives. Every block once. */
function expectAllTaken(project: Project, { parts, taken }: SewnTop): void {
  const list = settingPieces(project).filter((row) => row.step !== 'binding');
  list.forEach((row, index) => {
    const each = row.shape === 'quartered' ? 4 : row.shape === 'halved' ? 2 : 1;
    expect(Math.ceil((taken.get(index) ?? 0) / each), row.what.say).toBe(row.count);
  });
  expectStripsKeepTheirWidth(project);
  const pieces = parts.flatMap(({ of }) => (typeof of === 'number' ? [] : [of]));
  expect(new Set(pieces)).toEqual(new Set(layOut(project).pieces));
  expect(pieces).toHaveLength(layOut(project).pieces.length);
  const cells = parts.flatMap(({ of }) => (typeof of === 'number' ? [of] : []));
  const blocks = [...project.wall.cells.keys()].filter((cell) => !isPlain(cell, project));
  expect(cells.toSorted((one, other) => one - other)).toEqual(blocks);
}

/** Pieces of a pieced border are strips cut across: as wide as the strip, but for the last of each of four runs. */
function expectStripsKeepTheirWidth(project: Project): void {
  for (const [index, { keys: strips }] of project.setting.borders.entries()) {
    if (!strips) continue;
    const own = settingPieces(project).filter(
      (row) => row.inPiecedBorder && row.what.with?.border === index + 1,
    );
    const along = ({ what, width, height }: (typeof own)[number]) =>
      /top$|bottom$/.test(what.say) ? width : height;
    const cutOff = own.filter((row) => !strips.some((strip) => Math.abs(strip.width - along(row)) < 1e-6));
    expect(cutOff.reduce((sum, row) => sum + row.count, 0)).toBeLessThanOrEqual(4);
  }
}

/**
 * Cloth reaches past the finished edge all round. Where a square end is cut off aslant by the edge, its corner lacks a nick
 * s(1 − 1/√2) deep of the seam (plane geometry), so 0.7 of the seam is asked.
 */
function expectSeamAllRound({ parts }: SewnTop, edge: Box, seam: number, off: number): void {
  const by = seam * 0.7;
  const [left, right, high, low] = [edge.left - by, edge.right + by, edge.top - by, edge.bottom + by];
  const steps = 53;
  for (let at = 0; at <= steps; at += 1) {
    const [x, y] = [left + ((right - left) * at) / steps, high + ((low - high) * at) / steps];
    for (const point of [
      { x, y: high },
      { x, y: low },
      { x: left, y },
      { x: right, y },
    ]) {
      const covered = parts.some(({ shows }) => holds(shows, point, off));
      if (!covered) expect.fail(`no cloth at ${JSON.stringify(point)} outside ${JSON.stringify(edge)}`);
    }
  }
}

/** Whether a convex outline holds a point, or all but does. */
function holds(outline: Outline, { x, y }: { x: number; y: number }, off: number): boolean {
  if (outline.length < 3) return false;
  const sides = outline.map((from, at) => {
    const to = outline[(at + 1) % outline.length]!;
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    return length < 1e-9 ? 0 : ((to.x - from.x) * (y - from.y) - (to.y - from.y) * (x - from.x)) / length;
  });
  return sides.every((side) => side >= -off) || sides.every((side) => side <= off);
}

const sixteenths = (min: number, max: number) => fc.integer({ min, max }).map((count) => count / 16);
const keys = fc.array(
  fc.record({ fabric: fc.constantFrom('f1', 'border'), width: sixteenths(14, 48) }),
  { minLength: 1, maxLength: 7 },
); // biome-ignore format: short
const border: fc.Arbitrary<Border> = fc
  .record({
    width: sixteenths(8, 64),
    ends: fc.option(sixteenths(8, 64)),
    kind: fc.constantFrom('butted', 'mitred', 'cornerstones', 'pieced', 'pieced with cornerstones'),
    keys,
  })
  .map(
    ({ width, ends, kind, keys: pieces }): Border => ({
      fabric: 'border',
      width,
      ...(ends === null ? {} : { ends }),
      ...(kind === 'mitred' ? { corners: { kind } } : {}),
      ...(kind.endsWith('cornerstones') ? { corners: { kind: 'cornerstones', fabric: 'border stone' } } : {}),
      ...(kind.startsWith('pieced') ? { keys: pieces } : {}),
    }),
  );
const plain = fc.constantFrom(
  null,
  { fabric: 'plain', cells: 'first' as const },
  { fabric: 'plain', cells: 'second' as const },
);
const gaps = fc.uniqueArray(fc.record({ after: fc.integer({ min: 1, max: 4 }), width: sixteenths(8, 64) }), {
  selector: (gap) => gap.after,
  maxLength: 3,
});
const size = { rows: fc.integer({ min: 1, max: 5 }), columns: fc.integer({ min: 1, max: 5 }) };
const more = {
  width: sixteenths(8, 64),
  stones: fc.boolean(),
  plain,
  borders: fc.array(border, { maxLength: 3 }),
  unit: fc.constantFrom('in' as const, 'cm' as const),
};

/** A wall of one plain square is no quilt. */
function isOnePlainSquare(project: Project): boolean {
  return project.wall.cells.length === 1 && isPlain(0, project);
}

describe('a top sewn by its steps is the top that is drawn', () => {
  it('straight: sashing none, between and around, cornerstones, gaps of several widths, plain squares, borders', () => {
    fc.assert(
      fc.property(
        fc.record({
          ...size,
          ...more,
          perBlock: fc.constantFrom(6 as const, 8 as const, 10 as const, 12 as const),
          where: fc.constantFrom('none' as const, 'between' as const, 'around' as const),
          columnGaps: gaps,
          rowGaps: gaps,
        }),
        ({ rows, columns, perBlock, unit, ...one }) => {
          const sashing = {
            where: one.where,
            width: one.width,
            fabric: 'sash',
            columnGaps: one.columnGaps,
            rowGaps: one.rowGaps,
            ...(one.stones ? { cornerstones: 'stone' } : {}),
          };
          const setting = { sashing, plain: one.plain, borders: one.borders };
          const project = top({ rows, columns, perBlock, unit, setting });
          fc.pre(!isOnePlainSquare(project));
          const even = unit === 'in' && perBlock % 4 === 0;
          expectSewn(project, even && one.borders.every((each) => each.keys === undefined));
        },
      ),
      { seed: 20260401, numRuns: runs(9, 120) },
    );
  });

  it('on point: with and without sashing and cornerstones, plain squares, borders', () => {
    fc.assert(
      fc.property(
        fc.record({
          ...size,
          ...more,
          perBlock: fc.constantFrom(8 as const, 12 as const),
          where: fc.constantFrom('none' as const, 'around' as const),
        }),
        ({ rows, columns, perBlock, unit, ...one }) => {
          const sashing = {
            where: one.where,
            width: one.width,
            fabric: 'sash',
            ...(one.stones ? { cornerstones: 'stone' } : {}),
          };
          const setting = { layout: onPoint, sashing, plain: one.plain, borders: one.borders };
          const project = top({ rows, columns, perBlock, unit, setting });
          fc.pre(!isOnePlainSquare(project));
          expectSewn(project, unit === 'in' && one.borders.length === 0);
        },
      ),
      { seed: 20260402, numRuns: runs(9, 120) },
    );
  });

  it('with seams that differ: the strips’, the blocks’ and the one round the blocks', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(0.25, 0.375),
        fc.constantFrom(0.1875, 0.25, 0.375),
        fc.boolean(),
        fc.array(border, { minLength: 1, maxLength: 2 }),
        (assemblySeam, outerSeam, aslant, borders) => {
          const setting = {
            borders,
            layout: aslant ? onPoint : ({ kind: 'straight' } as const),
            sashing: { where: 'around' as const, width: 1.5, fabric: 'sash', cornerstones: 'stone' },
          };
          expectSewn(top({ rows: 2, columns: 3, wedge: { assemblySeam, outerSeam }, setting }));
        },
      ),
      { seed: 20260403, numRuns: runs(6, 30) },
    );
  });
});

describe('the sewing of the test tells', () => {
  const sashed = (cornerstones: boolean) =>
    top({
      rows: 2,
      columns: 3,
      setting: {
        layout: onPoint,
        sashing: { where: 'around', width: 1.5, fabric: 'sash', ...(cornerstones ? { cornerstones: 'stone' } : {}) },
      },
    }); // biome-ignore format: a sample

  it('a top that is trimmed a seam outside the points of the blocks: 2 1/8" too small both ways', () => {
    const project = sashed(true);
    const steps = sewingSteps(project).map((step): SewingStep => {
      return step.does === 'trim' ? { ...step, beyond: project.wedge.outerSeam } : step;
    });
    const { raw } = sew(project, steps);
    const drawing = drawProject(project);
    // g√2 of 1 1/2": 2.1213.
    expect(drawing.width - (raw.right - raw.left - 0.5)).toBeCloseTo(1.5 * Math.SQRT2, 6);
    expect(drawing.height - (raw.bottom - raw.top - 0.5)).toBeCloseTo(1.5 * Math.SQRT2, 6);
  });

  it('sashing that is left out at the ends of the rows', () => {
    const project = sashed(false);
    const steps = sewingSteps(project).map((step): SewingStep => {
      if (step.does !== 'rows') return step;
      const lines = step.lines.map((line) => ({
        ...line,
        parts: line.parts.filter((part, at, all) => {
          const beside = [all[at - 1], all[at + 1]];
          return part.kind !== 'piece' || beside.every((other) => other?.kind === 'block');
        }),
      }));
      return { ...step, lines };
    });
    expect(() => expectAllTaken(project, sew(project, steps))).toThrow();
  });
});
