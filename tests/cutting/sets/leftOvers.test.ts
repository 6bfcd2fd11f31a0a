// The strips left over beside the sets: none lost, alike ones in one row, and how high those of one length reach.
import { expect, it } from 'vitest';
import { leftOvers, lengthsLeft } from '../../../src/cutting/sets/leftOvers';
import { setHeight } from '../../../src/geometry/stripSet';
import { demo, unsewn } from '../../demo';

const project = unsewn(demo('kiln-shed'));

it('is all that is on hand while there are no sets, and less by the strips of a set', () => {
  const bare = { ...project, stripSets: [] };
  const count = (rows: readonly { count: number }[]) => rows.reduce((sum, row) => sum + row.count, 0);
  const all = leftOvers(bare);
  expect(count(all)).toBe(count(project.stripsOnHand));
  expect(new Set(all.map((row) => `${row.fabric} ${row.width} ${row.length}`)).size).toBe(all.length);
  const strips = all.slice(0, 4).map(({ fabric, width }) => ({ fabric, width }));
  const set = { id: 's1', label: 'A', strips, length: 10, pressing: 'last', firstTip: 'up', progress: 'planned', cut: null, locked: false } as const; // biome-ignore format: short
  expect(count(leftOvers({ ...project, stripSets: [{ ...set, strips: [...strips] }] }))).toBe(count(all) - 4);
});

it('tells the length that reaches highest first, as high as all its strips sewn into one set', () => {
  const rows = [
    { fabric: 'f1', width: 2, length: 36, count: 2 },
    { fabric: 'f2', width: 1.5, length: 42, count: 4 },
    { fabric: 'f3', width: 1.25, length: 42, count: 1 },
    { fabric: 'f3', width: 0.5, length: 42, count: 9 },
  ];
  const lengths = lengthsLeft(rows, 0.25);
  expect(lengths.map(({ length, count }) => [length, count])).toEqual([
    [42, 5],
    [36, 2],
  ]);
  const widths = (list: readonly number[]) => list.map((width) => ({ width }));
  expect(lengths[0]!.height).toBeCloseTo(setHeight(widths([1.5, 1.5, 1.5, 1.5, 1.25]), 0.25), 9);
  expect(lengths[1]!.height).toBeCloseTo(setHeight(widths([2, 2]), 0.25), 9);
});
