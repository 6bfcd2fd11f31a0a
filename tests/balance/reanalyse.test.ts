// Re-analysis equals a full analysis, in every figure, under random changes.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { analyse, reanalyse } from '../../src/balance/analyse';
import { type Move, moved } from '../../src/model/moves';
import type { Project } from '../../src/model/project';
import { cellCount } from '../../src/model/wallCells';
import { runs } from '../runs';
import { figures } from './figures';
import { scrappyTop } from './tops';

const ROWS = 3;
const COLUMNS = 4;
const top = scrappyTop({ rows: ROWS, columns: COLUMNS, seed: 21, fabrics: 8 });
const cells = ROWS * COLUMNS;
const block = fc.integer({ min: 0, max: cells - 1 }).map((at) => `b${at}`);
const cell = fc.integer({ min: 0, max: cells - 1 });
const move: fc.Arbitrary<(project: Project) => Move[]> = fc.oneof(
  fc.tuple(cell, fc.integer({ min: 0, max: 3 })).map(([at, turn]) => (project: Project): Move[] => {
    const hung = project.wall.cells[at];
    return hung ? [{ kind: 'turn', block: hung.block, turn }] : [];
  }),
  fc.tuple(cell, cell).map(([one, other]) => (): Move[] => [{ kind: 'swap', cell: one, other }]),
  block.map((one) => (): Move[] => [{ kind: 'take', block: one }]),
  fc.tuple(block, cell).map(([one, at]) => (): Move[] => [{ kind: 'hang', block: one, cell: at, turn: 1 }]),
  fc
    .tuple(block, block, fc.integer({ min: 0, max: 7 }))
    .map(([one, other, place]) => (project: Project): Move[] => {
      const find = (id: string) => project.blocks.find((item) => item.id === id)!.places[place]!;
      return [
        { kind: 'place', block: one, place, wedge: find(other) },
        { kind: 'place', block: other, place, wedge: find(one) },
      ];
    }),
  fc.tuple(block, fc.integer({ min: 0, max: 7 })).map(([one, place]) => (): Move[] => [
    { kind: 'place', block: one, place, wedge: null },
  ]),
);

/** What commands change besides moves. */
const edit: fc.Arbitrary<(project: Project) => Project> = fc.constantFrom(
  (project: Project): Project => ({
    ...project,
    setting: { ...project.setting, sashing: { where: 'around', width: 2, fabric: 'c1' } },
  }),
  (project: Project): Project => ({
    ...project,
    fabrics: project.fabrics.map((fabric) =>
      fabric.id === 'c2' ? { ...fabric, colour: '#204060' } : fabric,
    ),
  }),
  (project: Project): Project => ({ ...project, setting: { ...project.setting, cornerFabric: 'c3' } }),
  (project: Project): Project => ({ ...project, stripSets: project.stripSets.toReversed() }),
  (project: Project): Project => ({ ...project, wall: { ...project.wall, rows: 4, columns: 3 } }),
);

describe('re-analysis', () => {
  it('equals a full analysis in every figure under random turns, swaps, trades and edits', () => {
    fc.assert(
      fc.property(
        fc.array(fc.oneof({ weight: 6, arbitrary: move }, { weight: 1, arbitrary: edit.map((one) => one) }), {
          minLength: 1,
          maxLength: 6,
        }),
        (steps) => {
          let project: Project = top;
          let analysis = analyse(project);
          for (const step of steps) {
            const result = step(project);
            project = Array.isArray(result) ? moved(project, result) : result;
            analysis = reanalyse(analysis, project);
          }
          expect(figures(analysis)).toEqual(figures(analyse(project)));
        },
      ),
      { numRuns: runs(5, 40), seed: 5 },
    );
  }, 60_000);

  it('does so on walls of every kind, whose middle lines go through blocks or between them', () => {
    const hung = scrappyTop({ rows: 3, columns: 3, seed: 8, fabrics: 7 });
    const layout = { kind: 'onPoint', sides: 'c0', corners: 'c1' } as const;
    const { cells: straight } = hung.wall;
    const slanted = Array.from({ length: cellCount(3, 3, layout) }, (_, at) => straight[at] ?? null);
    const walls: readonly Project[] = [
      scrappyTop({ rows: 4, columns: 4, seed: 3, fabrics: 9 }),
      scrappyTop({ rows: 5, columns: 2, seed: 4, fabrics: 9, perBlock: 6 }),
      scrappyTop({ rows: 3, columns: 3, seed: 5, fabrics: 9, perBlock: 12 }),
      { ...hung, setting: { ...hung.setting, layout }, wall: { ...hung.wall, cells: slanted } },
    ];
    const at = fc.nat(8);
    const act = fc.oneof(
      fc.tuple(at, fc.nat(3)).map(([cell, turn]) => (project: Project): Move[] => {
        const there = project.wall.cells[cell];
        return there ? [{ kind: 'turn', block: there.block, turn: project.wedge.perBlock === 6 ? turn % 2 : turn }] : [];
      }),
      fc.tuple(at, at).map(([cell, other]) => (): Move[] => [{ kind: 'swap', cell, other }]),
    ); // biome-ignore format: short
    fc.assert(
      fc.property(fc.constantFrom(...walls), fc.array(act, { minLength: 1, maxLength: 6 }), (wall, acts) => {
        let project = wall;
        let analysis = analyse(project);
        for (const one of acts) {
          project = moved(project, one(project));
          analysis = reanalyse(analysis, project);
        }
        // Nothing that was remembered helps a full analysis: it has a list of fabrics of its own.
        expect(figures(analysis)).toEqual(figures(analyse({ ...project, fabrics: [...project.fabrics] })));
      }),
      { numRuns: runs(10, 60), seed: 14 },
    );
  }, 60_000);

  it('finds nothing new to say after a block was turned once round, step by step', () => {
    let analysis = analyse(top);
    const first = figures(analysis);
    for (let step = 1; step <= 4; step++) {
      const turn = (top.wall.cells[6]!.turn + step) % 4;
      analysis = reanalyse(analysis, moved(top, [{ kind: 'turn', block: 'b6', turn }]));
    }
    expect(figures(analysis)).toEqual(first);
  });

  it('keeps the options of the first analysis', () => {
    const analysis = analyse(top, { lookalikes: 3, intent: { value: 'light middle', colour: 'scattered' } });
    const turned = moved(top, [{ kind: 'turn', block: 'b0', turn: 2 }]);
    expect(figures(reanalyse(analysis, turned))).toEqual(figures(analyse(turned, analysis.options)));
  });

  it('of an empty wall says nothing', () => {
    const empty: Project = { ...top, wall: { ...top.wall, cells: top.wall.cells.map(() => null) } };
    const analysis = analyse(empty);
    expect(analysis.value).toBeNull();
    expect(analysis.dominant).toBeNull();
    expect(analysis.pools).toEqual([]);
    expect(analysis.findings.every((one) => one.kind === 'rim' || one.kind === 'radial')).toBe(true);
    expect(Object.values(analysis.terms).every(Number.isFinite)).toBe(true);
  });
});
