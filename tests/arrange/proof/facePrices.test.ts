import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decisionsOf } from '../../../src/arrange/decisions';
import { costTables } from '../../../src/arrange/live/costTables';
import { bestTurns } from '../../../src/arrange/proof/bestTurns';
import { contactsOf } from '../../../src/arrange/proof/contactTables';
import { facePrices } from '../../../src/arrange/proof/facePrices';
import { rimTables } from '../../../src/arrange/proof/rimTables';
import { termScales } from '../../../src/balance/score/termScales';
import { DEFAULT_WEIGHTS } from '../../../src/balance/score/weights';
import { wallModel } from '../../../src/balance/wall/wallModel';
import { clothTable } from '../../../src/cloth/cloths';
import type { Project } from '../../../src/model/project';
import { atOnce } from '../../../src/model/work/parts';
import { dice, scrappyTop } from '../../balance/tops';
import { runs } from '../../runs';

const SCOPES = { swap: true, turn: true, shiftCorners: false, trade: false, strips: false } as const;

/** With corners that may be turned by one wedge, or not. */
function rims(project: Project, shiftCorners: boolean) {
  const model = wallModel(project, clothTable(project.fabrics));
  const tables = costTables(model, termScales(model), DEFAULT_WEIGHTS);
  const contacts = contactsOf(tables, decisionsOf(project, model, { ...SCOPES, shiftCorners }));
  return { model, tables, contacts, prices: atOnce(facePrices(contacts)) };
}

/** Few fabrics, so that some must meet themselves; with sashing, pins and shifted corners now and then. */
function crowded(seed: number): Project {
  const project = scrappyTop({ rows: 2 + (seed % 2), columns: 3, seed, fabrics: 4 + (seed % 5), sets: 3 });
  if (seed % 4 === 0) project.wall.cells[seed % 6]!.pinned = true;
  if (seed % 5 === 0) project.setting.sashing = { ...project.setting.sashing, where: 'around', fabric: 'c0' };
  return project;
}

describe('prices of faces', () => {
  it('are for no two faces of blocks that may move above what their seam costs', () => {
    fc.assert(
      fc.property(fc.nat(), fc.boolean(), (seed, shiftCorners) => {
        const { model, tables, prices, contacts } = rims(crowded(seed), shiftCorners);
        const across = Math.min(...model.sashingFactorAt);
        const movable = Array.from(contacts.decisions.cells, (cell) => contacts.rims[model.blockIn[cell]!]!);
        const there = new Set(movable.flatMap((one) => Array.from(one)));
        for (const one of there) {
          for (const other of there) {
            const cost = across * tables.touching[one * tables.stride + other]!;
            expect(prices.of[one]! + prices.of[other]!).toBeLessThanOrEqual(cost + 1e-9);
          }
        }
      }),
      // Of the example a face is on the pinned block alone, which no other pays for.
      { numRuns: runs(20, 60), examples: [[1723903068, false]] },
    );
  });

  it('leave every order with the cost of its rims or less, and tell of some that they must meet', () => {
    let forced = 0;
    fc.assert(
      fc.property(fc.nat(), fc.boolean(), (seed, shiftCorners) => {
        const { model, contacts } = rims(crowded(seed), shiftCorners);
        const { alone, beside, fixed } = rimTables(contacts);
        const { cells } = contacts.decisions;
        const size = cells.length;
        const random = dice(seed);
        const cellOf = Int32Array.from({ length: size }, (_, item) => item);
        for (let at = size - 1; at > 0; at--) {
          const other = random.below(at + 1);
          [cellOf[at], cellOf[other]] = [cellOf[other]!, cellOf[at]!];
        }
        const blockIn = model.blockIn.slice();
        let bound = fixed;
        cellOf.forEach((cell, item) => {
          blockIn[cells[cell]!] = model.blockIn[cells[item]!]!;
          bound += alone[item * size + cell]!;
          for (let other = 0; other < item; other++)
            bound += beside[(item * size + cell) * size * size + other * size + cellOf[other]!]!;
        });
        const truth = bestTurns(contacts, blockIn).cost;
        expect(bound).toBeLessThanOrEqual(truth + 1e-9);
        if (bound > 1e-6) forced += 1;
      }),
      { numRuns: runs(20, 60), examples: [[703466265, true]] },
    );
    expect(forced).toBeGreaterThan(runs(2, 6));
  });
});
