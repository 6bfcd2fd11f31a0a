import { describe, expect, it } from 'vitest';
import { decisionsOf } from '../../../src/arrange/decisions';
import { costTables } from '../../../src/arrange/live/costTables';
import { contactsOf } from '../../../src/arrange/proof/contactTables';
import { boundAfter } from '../../../src/arrange/proof/rootBound';
import { spreadOf } from '../../../src/arrange/proof/spreadAssignment';
import { termScales } from '../../../src/balance/score/termScales';
import { DEFAULT_WEIGHTS } from '../../../src/balance/score/weights';
import { wallModel } from '../../../src/balance/wall/wallModel';
import { clothTable } from '../../../src/cloth/cloths';
import { COLOUR_INTENTS, type Project, VALUE_INTENTS } from '../../../src/model/project';
import { scrappyTop } from '../../balance/tops';
import { runs } from '../../runs';
import { arrange, lowerBound } from '../toTheEnd';

const SCOPES = { swap: true, turn: true, shiftCorners: false, trade: false, strips: false } as const;

function proving(project: Project) {
  const model = wallModel(project, clothTable(project.fabrics));
  const scales = termScales(model, project.preferences.intent);
  const tables = costTables(model, scales, DEFAULT_WEIGHTS);
  return { contacts: contactsOf(tables, decisionsOf(project, model, SCOPES)), spread: spreadOf(tables) };
}

describe('the bound after a shuffle', () => {
  it('is never above what a shuffle finds on 32 to 42 blocks, whatever is wanted, and mostly far above projection', () => {
    let higher = 0;
    const shapes = [
      [4, 8],
      [5, 7],
      [6, 6],
      [6, 7],
    ] as const;
    // Every day two walls: one with corners by a rule and a pinned block, one with sashing.
    const seeds = [12, 5, 1, 2, 3, 4, 6, 7, 8, 9, 10, 11, 13, 14, 15, 16].slice(0, runs(2, 16));
    for (const seed of seeds) {
      const [rows, columns] = shapes[seed % 4]!;
      const project = scrappyTop({ rows, columns, seed, fabrics: 8 + 2 * seed });
      project.preferences.intent = {
        value: VALUE_INTENTS[seed % VALUE_INTENTS.length]!,
        colour: COLOUR_INTENTS[Math.floor(seed / 4) % COLOUR_INTENTS.length]!,
      };
      project.setting.cornerFabric = 'c0';
      if (seed % 3 === 0) project.setting.cornerRule = { kind: 'checkerboard', fabric: 'c1' };
      if (seed % 4 === 0) project.wall.cells[seed]!.pinned = true;
      if (seed % 5 === 0)
        project.setting.sashing = { ...project.setting.sashing, where: 'around', fabric: 'c1' };
      const { after, bound } = arrange(project, { seed, scopes: SCOPES, budget: { steps: 60_000 } });
      expect(bound).toBeLessThanOrEqual(after.total + 1e-9);
      const { contacts, spread } = proving(project);
      if (bound > lowerBound(contacts, spread) + 0.1) higher += 1;
    }
    expect(higher).toBeGreaterThan(seeds.length / 2);
  });

  it('holds as far as it has come, and is not begun after a short search or where cells are empty', () => {
    const project = scrappyTop({ rows: 5, columns: 7, seed: 3 });
    const { after } = arrange(project, { seed: 3, scopes: SCOPES, budget: { steps: 60_000 } });
    const { contacts, spread } = proving(project);
    const going = boundAfter(contacts, spread, 60_000)!;
    expect(going.bound).toBe(Number.NEGATIVE_INFINITY);
    const told = new Set<number>();
    while (going.goesOn) {
      going.advance();
      expect(going.bound).toBeLessThanOrEqual(after.total + 1e-9);
      told.add(going.bound);
    }
    expect(told.size).toBeGreaterThan(2);
    expect(boundAfter(contacts, spread, 1000)).toBeNull();
    project.wall.cells[4] = null;
    const open = proving(project);
    expect(boundAfter(open.contacts, open.spread, 60_000)).toBeNull();
  });
});
