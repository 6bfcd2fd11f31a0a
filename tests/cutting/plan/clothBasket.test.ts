// What the largest top is planned from: cloth on hand is straightened as bought cloth is.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clothBasket } from '../../../src/cutting/plan/clothBasket';
import { clothOnHand } from '../../../src/cutting/yardage/fabricYardage';
import { createProject } from '../../../src/model/create';
import type { ClothOnHand, Project } from '../../../src/model/project';

const seed = 20261128;
const WIDTHS = [{ width: 1.5, part: 1 }];

function projectWith(clothRows: readonly ClothOnHand[], straighten: number): Project {
  const project = createProject('p', 'Cloth');
  const fabric = { ...project.fabrics[0]!, id: 'f1', background: false };
  return {
    ...project,
    fabrics: [fabric],
    clothOnHand: [...clothRows],
    buying: { ...project.buying, straighten },
  };
}

const row = fc.record({
  id: fc.constantFrom('c1', 'c2', 'c3'),
  fabric: fc.constant('f1'),
  kind: fc.constantFrom<ClothOnHand['kind']>('yardage', 'fat quarter', 'precut strips', 'remnant'),
  stripLength: fc.integer({ min: 40, max: 176 }).map((quarters) => quarters / 4),
  depth: fc.integer({ min: 1, max: 160 }).map((eighths) => eighths / 8),
  count: fc.integer({ min: 1, max: 4 }),
});

describe('the basket of the largest top', () => {
  it('can cut just what the cutting list can cut of the same cloth', () => {
    fc.assert(
      fc.property(fc.array(row, { maxLength: 4 }), fc.constantFrom(0, 0.5, 1, 2.5), (rows, straighten) => {
        const project = projectWith(rows, straighten);
        const depths = clothBasket(project, WIDTHS).clothOnHand.flatMap(({ depth, count }) =>
          Array.from({ length: count }, () => depth),
        );
        const listed = clothOnHand(project, 'f1').map(({ along }) => along);
        expect(depths).toEqual(listed.filter((along) => along > 0));
      }),
      { seed, numRuns: 300 },
    );
  });

  it('takes the straightening off every piece but precut strips', () => {
    const piece = { fabric: 'f1', stripLength: 40, depth: 18.5, count: 1 };
    const rows: ClothOnHand[] = [
      { ...piece, id: 'c1', kind: 'yardage' },
      { ...piece, id: 'c2', kind: 'precut strips', depth: 2.5 },
      { ...piece, id: 'c3', kind: 'remnant', depth: 1 },
    ];
    const { clothOnHand: left } = clothBasket(projectWith(rows, 1), WIDTHS);
    expect(left.map(({ id, depth }) => [id, depth])).toEqual([
      ['c1', 17.5],
      ['c2', 2.5],
    ]);
  });
});
