import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decisionsOf } from '../../../src/arrange/decisions';
import { BlockLaying } from '../../../src/arrange/live/blockLaying';
import { costTables } from '../../../src/arrange/live/costTables';
import { LiveWall } from '../../../src/arrange/live/liveWall';
import { firstAdditive } from '../../../src/arrange/live/tradePrices';
import { movesBetween } from '../../../src/arrange/movesBetween';
import { ALL_SCOPES } from '../../../src/arrange/score';
import { termScales } from '../../../src/balance/score/termScales';
import { evaluateTerms } from '../../../src/balance/score/terms';
import { DEFAULT_WEIGHTS, weighted } from '../../../src/balance/score/weights';
import { wallModel } from '../../../src/balance/wall/wallModel';
import { clothTable } from '../../../src/cloth/cloths';
import { moved } from '../../../src/model/moves';
import type { Project } from '../../../src/model/project';
import { dice, scrappyTop } from '../../balance/tops';
import { runs } from '../../runs';
import { awkwardTop, ruledTop } from '../awkwardTop';

/** A wall under way, and what a trade may touch in it. */
function underWay(project: Project) {
  const model = wallModel(project, clothTable(project.fabrics));
  const scales = termScales(model);
  const tables = costTables(model, scales, DEFAULT_WEIGHTS);
  const decisions = decisionsOf(project, model, ALL_SCOPES);
  const wall = new LiveWall(tables, decisions.spare);
  const sorts = new Uint8Array(wall.typeAt.length);
  decisions.tradable.forEach((places, tip) => {
    for (const place of places) sorts[place] = tip + 1;
  });
  const full = () => {
    const then = moved(project, movesBetween(project, wall));
    return weighted(evaluateTerms(scales, wallModel(then, model.cloths)), DEFAULT_WEIGHTS);
  };
  return { model, tables, decisions, wall, sorts, laying: new BlockLaying(wall, sorts), full };
}

/** What a wedge trade must leave as it is: wedges of each block's places that are not free, and how many there are of each type. */
function untouched(wall: LiveWall, sorts: Uint8Array) {
  const counts = new Map<number, number>();
  for (const type of wall.typeAt) counts.set(type, (counts.get(type) ?? 0) + 1);
  return {
    fixed: Array.from(wall.typeAt, (type, place) => (sorts[place] === 0 ? type : null)),
    counts: [...counts].sort(([one], [other]) => one - other),
    tips: Array.from(wall.typeAt, (type) => type & 1),
  };
}

const TOPS: readonly (readonly [string, (seed: number) => Project])[] = [
  ['wedges of one size', (seed) => scrappyTop({ rows: 2, columns: 3, seed, perBlock: seed % 2 ? 8 : 12 })],
  ['corners by a rule', (seed) => ruledTop(seed, 8)],
  ['empty places, sewn blocks and pins', (seed) => awkwardTop(seed, 8)],
];

describe('trading wedges and laying both blocks anew', () => {
  it.each(TOPS)(
    'keeps the score, every wedge and what may not be touched; costs no more than allowed: %s',
    (name, topOf) => {
      let done = 0;
      let refused = 0;
      fc.assert(
        fc.property(fc.integer({ min: 0, max: 1e6 }), (seed) => {
          const { tables, decisions, wall, sorts, laying, full } = underWay(topOf(seed));
          if (name === TOPS[0]![0]) expect(firstAdditive(tables)).toBe(0);
          const { perBlock } = tables.model;
          const random = dice(seed);
          const draw = (list: Int32Array) => list[random.below(list.length)]!;
          for (let change = 0; change < 60; change++) {
            const places = decisions.tradable[random.below(2)]!;
            const place = draw(places);
            const other = draw(places);
            if (Math.floor(place / perBlock) !== Math.floor(other / perBlock)) {
              const most = 0.3 * random.part() - 0.1;
              const was = { ...untouched(wall, sorts), types: [...wall.typeAt], cost: wall.cost };
              if (wall.tradeAndLay(place, other, most, laying)) {
                done += 1;
                expect(wall.cost - was.cost).toBeLessThanOrEqual(most + 1e-9);
                expect(untouched(wall, sorts)).toEqual({
                  fixed: was.fixed,
                  counts: was.counts,
                  tips: was.tips,
                });
              } else {
                refused += 1;
                expect([...wall.typeAt]).toEqual(was.types);
                expect(wall.cost).toBe(was.cost);
              }
            }
            if (change % 5 === 0) {
              const [cell, next] = [draw(decisions.cells), draw(decisions.cells)];
              const turns = [draw(decisions.orientations[wall.blockIn[cell]!]!), 0] as const;
              const stands = wall.orientationOf[wall.blockIn[next]!]!;
              if (cell !== next)
                wall.swap(cell, next, turns[0], stands, wall.swapCost(cell, next, turns[0], stands));
            }
            if (change % 10 === 9) expect(wall.cost).toBeCloseTo(full(), 8);
          }
        }),
        { numRuns: runs(5, 30) },
      );
      expect(done).toBeGreaterThan(10);
      expect(refused).toBeGreaterThan(10);
    },
  );
});

describe('a block laid anew', () => {
  it('costs least of all its orders, gone through one by one, or stays where none costs less than asked', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 1e6 }),
        fc.double({ min: 0, max: 0.5, noNaN: true }),
        (seed, room) => {
          const { wall, laying, sorts } = underWay(
            scrappyTop({ rows: 2, columns: 2, seed, perBlock: 6, fabrics: 6 }),
          );
          // One place is not free.
          sorts[3] = 0;
          const was = [...wall.typeAt];
          let least = Number.POSITIVE_INFINITY;
          for (const ups of ordersOf([0, 2, 4])) {
            for (const downs of ordersOf([1, 5])) {
              const from = [ups[0]!, downs[0]!, ups[1]!, 3, ups[2]!, downs[1]!];
              from.forEach((place, at) => {
                wall.typeAt[at] = was[place]!;
              });
              least = Math.min(least, laying.costOf(0));
            }
          }
          wall.typeAt.set(was);
          const found = laying.lay(0, room);
          if (least < room - 1e-9) {
            expect(found).toBeCloseTo(least, 10);
            expect(laying.costOf(0)).toBeCloseTo(least, 10);
            const ascending = (one: number, other: number) => one - other;
            expect([...wall.typeAt].sort(ascending)).toEqual(was.toSorted(ascending));
            expect(wall.typeAt[3]).toBe(was[3]);
          } else if (least > room + 1e-9) {
            expect(found).toBeNull();
            expect([...wall.typeAt]).toEqual(was);
          }
        },
      ),
      { numRuns: runs(60, 200) },
    );
  });
});

function ordersOf(list: readonly number[]): number[][] {
  if (list.length < 2) return [[...list]];
  return list.flatMap((one, at) => ordersOf(list.toSpliced(at, 1)).map((rest) => [one, ...rest]));
}
