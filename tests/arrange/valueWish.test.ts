// A wish for values is seen in grey once the shuffle has followed it: against many random layouts of the same blocks.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { shuffleWish } from '../../src/arrange/asked';
import { valueOrder, valueOrderWords } from '../../src/balance/evenness/valueOrder';
import { wallModel } from '../../src/balance/wall/wallModel';
import { clothTable } from '../../src/cloth/cloths';
import { moved } from '../../src/model/moves';
import { speak } from '../../src/model/phrase';
import type { Project } from '../../src/model/project';
import { dice, scrappyTop } from '../balance/tops';
import { runs } from '../runs';
import { searched } from './toTheEnd';

const WISHES = ['light middle', 'dark middle', 'light to dark'] as const;

function wishing(project: Project, value: (typeof WISHES)[number]): Project {
  const intent = { value, colour: 'scattered' as const };
  return { ...project, preferences: { ...project.preferences, intent } };
}

function orderOf(project: Project) {
  return valueOrder(wallModel(project, clothTable(project.fabrics)), project.preferences.intent);
}

/** The same blocks in a random layout. */
function dealt(project: Project, seed: number): Project {
  const random = dice(seed);
  const cells = [...project.wall.cells];
  for (let at = cells.length - 1; at > 0; at -= 1) {
    const other = random.below(at + 1);
    [cells[at], cells[other]] = [cells[other]!, cells[at]!];
  }
  return { ...project, wall: { ...project.wall, cells } };
}

describe('a wish for values', () => {
  it('is seen in grey after a shuffle: by more than in nearly all random layouts', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 10_000 }),
        fc.constantFrom(...WISHES),
        fc.constantFrom([4, 3, 0.8], [5, 5, 0.95], [8, 6, 0.98]),
        (seed, value, [rows, columns, share]) => {
          const project = wishing(scrappyTop({ rows: rows!, columns: columns!, seed, fabrics: 14 }), value);
          // Far fewer steps than a person's shuffle has, which only finds better.
          const { moves } = searched(project, { ...shuffleWish(project), budget: { steps: 6000 } });
          const after = orderOf(moved(project, moves))!;
          const random = Array.from({ length: 200 }, (_, at) => orderOf(dealt(project, at + 1))!.more);
          const less = random.filter((one) => one < after.more).length;
          expect(less / random.length).toBeGreaterThanOrEqual(share!);
        },
      ),
      { numRuns: runs(2, 40) },
    );
  });

  it('what is said of chance is what dealing gives: 1 in 20 layouts differ by more', () => {
    const project = wishing(scrappyTop({ rows: 6, columns: 5, seed: 4, fabrics: 14 }), 'light middle');
    const deals = Array.from({ length: 2000 }, (_, at) => orderOf(dealt(project, at + 1))!);
    const beyond = deals.filter((one) => one.more > one.chance).length / deals.length;
    expect(beyond).toBeGreaterThan(0.03);
    expect(beyond).toBeLessThan(0.075);
  });

  it('has no figure where no third of the cells stands apart, or nothing is wanted', () => {
    expect(orderOf(wishing(scrappyTop({ rows: 2, columns: 2, seed: 1 }), 'light middle'))).toBeNull();
    expect(orderOf(scrappyTop({ rows: 3, columns: 3, seed: 1 }))).toBeNull();
    expect(orderOf(wishing(scrappyTop({ rows: 2, columns: 3, seed: 1 }), 'light to dark'))).not.toBeNull();
  });

  it('says the difference of the two figures it says', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 10_000 }), fc.constantFrom(...WISHES), (seed, value) => {
        const project = wishing(scrappyTop({ rows: 3, columns: 3, seed, fabrics: 14 }), value);
        const said = speak(valueOrderWords(orderOf(project)!)[0]!, 'in');
        const [third, rest, by] = [.../third has (\d+), the rest (\d+), (\d+) /.exec(said)!]
          .slice(1)
          .map(Number);
        expect(by).toBe(Math.abs(third! - rest!));
      }),
      { numRuns: runs(8, 100) },
    );
  });
});
