// What is played on the wall between two drawings: random moves, one upon the other while the last is under way, with the hand
// letting go anywhere.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawProject } from '../../../src/drawing/drawProject';
import { type Move, moved } from '../../../src/model/moves';
import type { Project } from '../../../src/model/project';
import { type Flight, flightsBetween, lieOf, MOST_FLIGHTS } from '../../../src/ui/wall/flights';
import { scrappyTop } from '../../balance/tops';
import { runs } from '../../runs';

const someMoves = (project: Project, picks: readonly number[]): Move[] => {
  const cells = project.wall.cells;
  const [one = 0, other = 0, kind = 0] = picks;
  const block = cells[one % cells.length]?.block;
  if (kind % 2 === 0 && block) return [{ kind: 'turn', block, turn: other % 4 }];
  const to = other % cells.length;
  return one % cells.length === to ? [] : [{ kind: 'swap', cell: one % cells.length, other: to }];
};

describe('what is played on the wall', () => {
  it('ends where every block hangs, whatever comes between, and plays what moved and nothing else', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1000 }),
        fc.constantFrom(2, 5),
        fc.array(fc.array(fc.nat(1000), { minLength: 3, maxLength: 3 }), { minLength: 1, maxLength: 6 }),
        fc.boolean(),
        (seed, columns, steps, hand) => {
          let project = scrappyTop({ rows: 3, columns, seed });
          let drawing = drawProject(project);
          let flights: readonly Flight[] = [];
          const ever = new Set<string>();
          for (const picks of steps) {
            const next = moved(project, someMoves(project, picks));
            const after = drawProject(next);
            const first = after.blocks[picks[2]! % after.blocks.length]!;
            const held = hand ? { block: first.block, at: { x: -3, y: 7 }, degrees: 33 } : null;
            const before = new Map(drawing.blocks.map((hung) => [hung.block, lieOf(hung)]));
            flights = flightsBetween(drawing, after, held, flights);
            for (const hung of after.blocks) {
              const lie = lieOf(hung);
              const was = before.get(hung.block)!;
              const flight = flights.find((one) => one.hung.block === hung.block);
              if (
                was.at.x !== lie.at.x ||
                was.at.y !== lie.at.y ||
                was.degrees !== lie.degrees ||
                (hand && hung === first)
              )
                ever.add(hung.block);
              expect(flight !== undefined).toBe(ever.has(hung.block));
              if (!flight) continue;
              expect(flight.hung).toBe(hung);
              expect(flight.to.at).toEqual(lie.at);
              expect((((flight.to.degrees - lie.degrees) % 360) + 360) % 360).toBeCloseTo(0, 9);
            }
            [project, drawing] = [next, after];
          }
        },
      ),
      { numRuns: runs(67, 200) },
    );
  });

  it('turns by the shorter way: from three quarters on to four, not back to none', () => {
    const project = scrappyTop({ rows: 2, columns: 2, seed: 1 });
    const block = project.blocks[0]!.id;
    for (let quarters = 0; quarters < 4; quarters += 1) {
      const stands = (turn: number) => drawProject(moved(project, [{ kind: 'turn', block, turn: turn % 4 }]));
      const [flight] = flightsBetween(stands(quarters), stands(quarters + 1), null, []);
      expect(flight!.to.degrees - flight!.from.degrees).toBe(90);
    }
  });

  it('plays nothing where more blocks move than are played, or the setting changed', () => {
    const project = scrappyTop({ rows: 6, columns: 6, seed: 2 });
    const cells = [...project.wall.cells.slice(1), project.wall.cells[0]!];
    const all = drawProject({ ...project, wall: { ...project.wall, cells } });
    expect(all.blocks.length).toBeGreaterThan(MOST_FLIGHTS);
    expect(flightsBetween(drawProject(project), all, null, [])).toEqual([]);
    const wider = { ...project, wedge: { ...project.wedge, cutHeight: project.wedge.cutHeight + 1 } };
    expect(flightsBetween(drawProject(project), drawProject(wider), null, [])).toEqual([]);
  });
});
