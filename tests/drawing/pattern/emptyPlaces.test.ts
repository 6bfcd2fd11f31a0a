// A wall with places where no block hangs, as the steps of setting tell it: what is counted is there, and every empty place is
// named, with what to do about it.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { slantedRows } from '../../../src/cutting/sewing/slantedRows';
import type { Project } from '../../../src/model/project';
import { cellCount, isPlain, rowAndColumn } from '../../../src/model/wallCells';
import { runs } from '../../runs';
import { randomProject } from '../samples';
import { told } from './makePdf';

const WALLS = fc.record({
  seed: fc.integer({ min: 1, max: 9999 }),
  perBlock: fc.constantFrom(8 as const, 12 as const),
  rows: fc.integer({ min: 1, max: 4 }),
  columns: fc.integer({ min: 1, max: 4 }),
  onPoint: fc.boolean(),
  sashing: fc.constantFrom('none' as const, 'between' as const, 'around' as const),
  stones: fc.boolean(),
  plain: fc.constantFrom(null, 'first' as const, 'second' as const),
  holes: fc.array(fc.nat({ max: 24 }), { maxLength: 5 }),
});

function wall(one: typeof WALLS extends fc.Arbitrary<infer One> ? One : never): Project {
  const project = randomProject(one.seed, one.perBlock, 5, 5);
  const layout = one.onPoint ? { kind: 'onPoint' as const, sides: 'a', corners: 'b' } : { kind: 'straight' as const };
  const { width } = project.setting.sashing;
  const setting: Project['setting'] = {
    ...project.setting,
    layout,
    plain: one.plain && { fabric: 'd', cells: one.plain },
    sashing: {
      where: one.onPoint && one.sashing === 'between' ? 'around' : one.sashing,
      width,
      fabric: 'c',
      ...(one.stones ? { cornerstones: 'e' } : {}),
    },
  };
  const made = { ...project, setting, wall: { rows: one.rows, columns: one.columns, cells: [] } };
  const holes = new Set(one.holes);
  const cells = Array.from({ length: cellCount(one.rows, one.columns, layout) }, (_, cell) =>
    holes.has(cell) || isPlain(cell, made) ? null : { ...project.wall.cells[cell]!, turn: 0 },
  );
  return { ...made, wall: { ...made.wall, cells } };
} // biome-ignore format: a fixture

/** 2 × (A · block) · A as its parts, one by one. */
function parted(words: string): string[] {
  const flat = words.replaceAll(/(\d+) × (?:\(([^)]*)\)|([^·]*[^·\s]))/g, (_, times, group, single) =>
    Array.from({ length: Number(times) }, () => group ?? single).join(' · '),
  );
  return flat.split(' · ');
}

/** Cells of every row in the order it is sewn. */
function cellsByRow(project: Project): number[][] {
  if (project.setting.layout.kind === 'onPoint') {
    return slantedRows(project).map((row) => row.flatMap((entry) => (typeof entry === 'object' ? [entry.cell] : [])));
  }
  const { rows, columns } = project.wall;
  return Array.from({ length: rows }, (_, row) => Array.from({ length: columns }, (__, column) => row * columns + column));
} // biome-ignore format: two settings

function rowsNamed(words: string): number[] {
  const run = /^(\d+) to (\d+)$/.exec(words);
  if (run) return Array.from({ length: Number(run[2]) - Number(run[1]) + 1 }, (_, at) => Number(run[1]) + at);
  return words.split(/, | and /).map(Number);
} // biome-ignore format: two ways

describe('a wall with empty places', () => {
  it('has in the steps as many blocks in every row as hang there, and every empty place by name', () => {
    let [empty, straight, slanted] = [0, 0, 0];
    fc.assert(
      fc.property(WALLS, (one) => {
        const project = wall(one);
        if (project.wall.cells.every((cell) => cell === null)) return;
        const said = told(project, ['setting']);
        const rows = cellsByRow(project);
        const hangs = (cell: number) => project.wall.cells[cell] !== null;
        const isHole = (cell: number) => !hangs(cell) && !isPlain(cell, project);
        const holes = rows.flat().filter(isHole);
        for (const text of said) {
          const [, named, parts] = /^Rows? ([\d, and to]+): (.*)$/.exec(text) ?? [];
          if (!named || !parts) continue;
          for (const row of rowsNamed(named)) {
            const own = rows[row - 1]!;
            const list = parted(parts);
            expect(list.filter((part) => part === 'block').length, text).toBe(own.filter(hangs).length);
            expect(list.filter((part) => part === 'empty place').length, text).toBe(own.filter(isHole).length);
          }
        }
        const about = said.filter((text) => /is empty:|are empty:/.test(text)).join(' ');
        expect(about === '').toBe(holes.length === 0);
        if (holes.length > 0) expect(about).toMatch(/Hang (a block there|blocks there) before you sew/);
        rows.forEach((cells, index) => {
          cells.filter(isHole).forEach((cell) => {
            const { row, column } = rowAndColumn(cell, project);
            const place = one.onPoint ? `diagonal row ${index + 1}, square ${cells.indexOf(cell) + 1}` : `row ${row}, column ${column}`;
            expect(about).toContain(place);
            empty += 1;
          });
        });
        if (holes.length > 0) [straight, slanted] = one.onPoint ? [straight, slanted + 1] : [straight + 1, slanted];
      }),
      { numRuns: runs(30, 200) },
    );
    expect(Math.min(empty, straight, slanted)).toBeGreaterThan(runs(0, 10));
  }, 600_000); // biome-ignore format: one law
});
