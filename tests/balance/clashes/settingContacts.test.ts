// Neighbours in every setting: the clashes against the polygons of the exported picture, and the score kept up step by step
// against the full one, on point, with plain squares between the blocks and with gaps of different widths.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decisionsOf } from '../../../src/arrange/decisions';
import { costTables } from '../../../src/arrange/live/costTables';
import { LiveWall } from '../../../src/arrange/live/liveWall';
import { movesBetween } from '../../../src/arrange/movesBetween';
import { ALL_SCOPES } from '../../../src/arrange/score';
import type { Clash } from '../../../src/balance/clashes/clashes';
import { termScales } from '../../../src/balance/score/termScales';
import { evaluateTerms } from '../../../src/balance/score/terms';
import { DEFAULT_WEIGHTS, weighted } from '../../../src/balance/score/weights';
import { sashingFactor, wallModel } from '../../../src/balance/wall/wallModel';
import { clothTable } from '../../../src/cloth/cloths';
import { drawProject } from '../../../src/drawing/drawProject';
import { drawingToSvg } from '../../../src/drawing/svg';
import { latticeOf } from '../../../src/geometry/lattice';
import { layOut } from '../../../src/geometry/setting';
import { finishedBlock, rimLength } from '../../../src/geometry/wedge';
import { checkReferences } from '../../../src/model/check';
import { moved } from '../../../src/model/moves';
import type { Project, Setting } from '../../../src/model/project';
import { cellCount, isPlain } from '../../../src/model/wallCells';
import { runs } from '../../runs';
import { clashList } from '../clashList';
import { dice, scrappyTop } from '../tops';
import { piecesOfSvg, sameClothContacts } from './measuredContacts';

const ON_POINT = { kind: 'onPoint', sides: 'c0', corners: 'c1' } as const;

/** A scrappy top hung again, block by block, in the cells of another setting. */
function hungIn(
  rows: number,
  columns: number,
  seed: number,
  setting: Partial<Setting>,
  fabrics = 5,
): Project {
  const count = cellCount(rows, columns, setting.layout ?? { kind: 'straight' });
  const top = scrappyTop({ rows: 1, columns: count, seed, fabrics });
  const whole: Project = {
    ...top,
    setting: { ...top.setting, ...setting },
    wall: { rows, columns, cells: top.wall.cells },
  };
  const cells = top.wall.cells.map((cell, index) => (isPlain(index, whole) ? null : cell));
  return { ...whole, wall: { ...whole.wall, cells } };
}

function listed(clashes: readonly Clash[]): Map<string, number> {
  const found = new Map<string, number>();
  for (const clash of clashes) {
    if (clash.likeness < 1) continue;
    const first = `${clash.numbers[0]}.${clash.places[0]}`;
    const second =
      clash.kind === 'setting'
        ? clash.settingPart!
        : `${clash.numbers[1] ?? clash.numbers[0]}.${clash.places[1]}`;
    const key = [first, second].sort().join(' | ');
    found.set(key, (found.get(key) ?? 0) + clash.inches);
  }
  return found;
}

/** What the file says of wedges and of what touches them; both kinds of setting triangle under one name. */
function measured(project: Project): Map<string, number> {
  const pieces = piecesOfSvg(drawingToSvg(drawProject(project)))
    .filter((piece) => piece.part !== 'corner' && piece.part !== 'bare')
    .map((piece) => ({
      ...piece,
      part: piece.part === 'side' || piece.part === 'setting-corner' ? 'triangle' : piece.part,
    }));
  return new Map(
    [...sameClothContacts(pieces)].filter(([key]) => key.split(' | ').some((name) => /\d\.\d/.test(name))),
  );
}

function expectMeasured(project: Project, about: string): void {
  expect(checkReferences(project)).toEqual([]);
  const found = listed(clashList(project).filter((clash) => clash.cells.length > 0));
  const file = measured(project);
  expect([...file.keys()].filter((key) => key.includes(about)).length, about).toBeGreaterThan(0);
  expect([...found.keys()].sort()).toEqual([...file.keys()].sort());
  for (const [key, inches] of file) expect(found.get(key), key).toBeCloseTo(inches, 2);
}

describe('clashes are those of the exported picture', () => {
  it('on point, where blocks meet slantwise and rims run into setting triangles', () => {
    expectMeasured(hungIn(3, 3, 11, { layout: ON_POINT }), 'triangle');
  });

  it('with plain squares in every other cell, straight and on point', () => {
    expectMeasured(hungIn(4, 5, 12, { plain: { fabric: 'c1', cells: 'second' } }), 'plain');
    expectMeasured(hungIn(3, 3, 13, { layout: ON_POINT, plain: { fabric: 'c2', cells: 'first' } }), 'plain');
  });
});

describe('across gaps of different widths', () => {
  it('a contact counts by its own gap', () => {
    const sashing: Setting['sashing'] = {
      where: 'between', width: 1.5, fabric: 'f1', columnGaps: [{ after: 2, width: 3 }],
    }; // biome-ignore format: a table
    const project = hungIn(3, 4, 14, { sashing });
    const rim = rimLength(project.wedge);
    const facing = clashList(project).filter((clash) => clash.kind === 'facing' && clash.places.length > 0);
    const factors = new Set(
      facing.map((clash) => {
        const [left, right] = clash.cells.map((cell) => cell % 4) as [number, number];
        const gap = left === 1 && right === 2 ? 3 : 1.5;
        expect(clash.weight).toBeCloseTo(clash.inches * clash.likeness * sashingFactor(gap, rim), 9);
        return gap;
      }),
    );
    expect(factors.size).toBe(2);
  });
});

describe('neighbours on the lattice', () => {
  it('are each other’s, at the distance of a block and the gap, whatever the setting', () => {
    for (const [layout, plain] of [
      [{ kind: 'straight' }, null],
      [ON_POINT, null],
      [ON_POINT, { fabric: 'c1', cells: 'second' }],
      [{ kind: 'straight' }, { fabric: 'c1', cells: 'first' }],
    ] as const) {
      const sashing = {
        where: 'around',
        width: 1.25,
        fabric: 'f1',
        rowGaps: [{ after: 1, width: 2 }],
      } as const;
      const project = hungIn(4, 3, 15, {
        layout,
        plain,
        sashing: { ...sashing, rowGaps: [...sashing.rowGaps] },
      });
      const { sides } = latticeOf(project);
      const { centres } = layOut(project);
      const block = finishedBlock(project.wedge).width;
      sides.forEach((side, at) => {
        if (side.cell < 0) return;
        expect(sides[side.cell * 4 + ((at + 2) % 4)]!.cell).toBe(at >> 2);
        const [from, to] = [centres[at >> 2]!, centres[side.cell]!];
        expect(Math.hypot(to.x - from.x, to.y - from.y)).toBeCloseTo(block + side.gap, 9);
      });
    }
  });
});

describe('the score kept up to date while a wall is arranged', () => {
  const settings: readonly Partial<Setting>[] = [
    { layout: ON_POINT },
    { layout: ON_POINT, sashing: { where: 'around', width: 1, fabric: 'c2' } },
    { plain: { fabric: 'c1', cells: 'second' } },
    { layout: ON_POINT, plain: { fabric: 'c1', cells: 'second' } },
    { sashing: { where: 'between', width: 1, fabric: 'c2', rowGaps: [{ after: 2, width: 4 }] } },
  ];

  it('is the score of the moved project in every setting', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1e6 }), fc.constantFrom(...settings), (seed, setting) => {
        const project = hungIn(4, 3, seed, setting, 7);
        const model = wallModel(project, clothTable(project.fabrics));
        const scales = termScales(model);
        const { cells, orientations, spare } = decisionsOf(project, model, ALL_SCOPES);
        const wall = new LiveWall(costTables(model, scales, DEFAULT_WEIGHTS), spare);
        const random = dice(seed);
        for (let round = 0; round < 8; round++) {
          const cell = cells[random.below(cells.length)]!;
          const other = cells[random.below(cells.length)]!;
          const orientation = (block: number) =>
            orientations[block]![random.below(orientations[block]!.length)]!;
          wall.turn(wall.blockIn[cell]!, orientation(wall.blockIn[cell]!));
          if (cell === other) continue;
          const turns = [orientation(wall.blockIn[cell]!), orientation(wall.blockIn[other]!)] as const;
          wall.swap(cell, other, ...turns, wall.swapCost(cell, other, ...turns));
          const then = moved(project, movesBetween(project, wall));
          const full = weighted(evaluateTerms(scales, wallModel(then, model.cloths)), DEFAULT_WEIGHTS);
          expect(wall.cost).toBeCloseTo(full, 8);
        }
      }),
      { seed: 20260201, numRuns: runs(8, 25) },
    );
  });
});
