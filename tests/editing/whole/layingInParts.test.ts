// A quilt laid out in parts: others laid out in between change nothing, and sets and blocks are made in many parts too.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { layingQuilt, type QuiltLaid } from '../../../src/editing/whole/layingQuilt';
import type { ClothOnHand, Project } from '../../../src/model/project';
import { plainFabrics, projectOf, stripsOf } from '../../cutting/fabrics';
import { runs } from '../../runs';
import { laidOut, WISH } from './toTheEnd';

const seed = 92_100;
const fabrics = plainFabrics(10);
const yard = (fabric: string): ClothOnHand => ({ id: `c${fabric}`, fabric, kind: 'yardage', stripLength: 40, depth: 12, count: 1 }); // biome-ignore format: a row

const quilts = fc
  .record({
    each: fc.array(fc.tuple(fc.constantFrom(1, 1.25, 1.5, 2), fc.integer({ min: 1, max: 3 })), { minLength: 1, maxLength: 3 }),
    kinds: fc.integer({ min: 2, max: 8 }),
    cloth: fc.integer({ min: 0, max: 4 }),
    number: fc.nat(99),
  }) // biome-ignore format: short
  .map(({ each, kinds, cloth, number }) => ({
    project: projectOf({
      fabrics,
      stripsOnHand: stripsOf(fabrics.slice(0, kinds), each).map((row, at) => ({ ...row, id: `h${at}` })),
      clothOnHand: fabrics.slice(0, cloth).map(({ id }) => yard(id)),
    }),
    wish: { ...WISH, cut: cloth > 0, seed: number, budget: { steps: 300 } },
  }));

it('lays out the same quilt whatever else is laid out between two parts', () => {
  let blocks = 0;
  fc.assert(
    fc.property(
      fc.tuple(quilts, quilts),
      fc.array(fc.integer({ min: 1, max: 60 }), { minLength: 1 }),
      (asked, turns) => {
        const going = asked.map(({ project, wish }) => layingQuilt(project, wish));
        const laid = going.map((): QuiltLaid | null => null);
        for (let turn = 0; laid.includes(null); turn += 1) {
          const at = turn % 2;
          for (let part = 0; part < turns[turn % turns.length]! && laid[at] === null; part += 1) {
            const step = going[at]!.next(false);
            if (step.done) laid[at] = step.value;
          }
        }
        expect(laid).toEqual(asked.map(({ project, wish }) => laidOut(project, wish)));
        for (const one of laid) blocks += one?.parts?.blocks.length ?? 0;
      },
    ),
    { seed, numRuns: runs(2, 20) },
  );
  expect(blocks).toBeGreaterThan(runs(2, 40));
});

it('makes sets and blocks in parts, and tells a share only where one is known', () => {
  const stripsOnHand = stripsOf(fabrics, [[1, 6], [1.5, 6], [2, 3]]); // biome-ignore format: short
  const project: Project = projectOf({ fabrics, stripsOnHand });
  const told = new Map<string, (number | null)[]>();
  laidOut(project, {}, undefined, ({ stage, share }) => told.set(stage, [...(told.get(stage) ?? []), share]));
  expect(told.get('sets')!.length).toBeGreaterThan(400);
  expect(told.get('blocks')!.length).toBeGreaterThan(50);
  expect(new Set(told.get('blocks'))).toEqual(new Set([null]));
  const shares = told.get('sets')!.filter((share) => share !== null);
  expect(shares).toEqual(shares.toSorted((one, other) => one - other));
  expect([Math.min(...shares), Math.max(...shares) < 1]).toEqual([0, true]);
  expect(told.get('sets')!.at(0)).toBeNull();
});
