// Clashes against the polygons of the exported SVG (measuredContacts), and the laws they obey.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Clash } from '../../../src/balance/clashes/clashes';
import { sashingFactor } from '../../../src/balance/wall/wallModel';
import { drawProject } from '../../../src/drawing/drawProject';
import { drawingToSvg } from '../../../src/drawing/svg';
import { turnsOf } from '../../../src/model/find';
import type { Project } from '../../../src/model/project';
import { runs } from '../../runs';
import { clashList } from '../clashList';
import { scrappyTop } from '../tops';
import { type FilePiece, piecesOfSvg, sameClothContacts } from './measuredContacts';

/** The inches of same-fabric clash between places, keyed as measuredContacts keys them. */
function listed(clashes: readonly Clash[]): Map<string, number> {
  const found = new Map<string, number>();
  for (const clash of clashes) {
    if (clash.likeness < 1) continue;
    const first = `${clash.numbers[0]}.${clash.places[0]}`;
    const second =
      clash.kind === 'setting'
        ? `${clash.settingPart}`
        : `${clash.numbers[1] ?? clash.numbers[0]}.${clash.places[1]}`;
    const key = [first, second].sort().join(' | ');
    found.set(key, (found.get(key) ?? 0) + clash.inches);
  }
  return found;
}

function expectSame(found: ReadonlyMap<string, number>, measured: ReadonlyMap<string, number>): void {
  expect([...found.keys()].sort()).toEqual([...measured.keys()].sort());
  for (const [key, inches] of measured) expect(found.get(key), key).toBeCloseTo(inches, 2);
}

/** Few fabrics, so that much meets. */
const busy = (seed: number, perBlock: 6 | 8 | 10 | 12) =>
  scrappyTop({ rows: 3, columns: 4, seed, fabrics: 5, perBlock });

function withSashing(project: Project, width: number): Project {
  return {
    ...project,
    setting: {
      ...project.setting,
      sashing: { where: 'around', width, fabric: 'c0' },
      borders: [{ fabric: 'c1', width: 3 }],
    },
  };
}

const summed = (clashes: readonly Clash[]) => clashes.reduce((sum, clash) => sum + clash.weight, 0);

describe('clashes', () => {
  for (const perBlock of [6, 8, 10, 12] as const) {
    it(`of one fabric with itself are as long as in the exported picture, with ${perBlock} wedges to the block`, () => {
      for (const seed of [1, 2]) {
        const project = busy(seed, perBlock);
        const pieces = piecesOfSvg(drawingToSvg(drawProject(project))).filter(
          (piece) => piece.place !== null,
        );
        const measured = sameClothContacts(pieces);
        expect(measured.size).toBeGreaterThan(20);
        expectSame(listed(clashList(project)), measured);
      }
    });
  }

  it('of rims with sashing are as long as in the exported picture', () => {
    const project = withSashing(busy(3, 8), 2);
    const pieces = piecesOfSvg(drawingToSvg(drawProject(project)));
    const measured = sameClothContacts(
      pieces.filter((piece) => piece.place !== null || piece.part === 'sashing'),
    );
    const besideCloth = [...measured].filter(
      ([key]) => key.includes('sashing') && !key.startsWith('sashing | sashing'),
    );
    const found = listed(clashList(project).filter((clash) => clash.kind === 'setting'));
    expect(besideCloth.length).toBeGreaterThan(0);
    expectSame(found, new Map(besideCloth));
  });

  it('across sashing face each other as if the sashing were taken out', () => {
    const project = withSashing(busy(4, 8), 2);
    const cell = new Map(
      project.wall.cells.map((one, at) => [project.blocks.find((b) => b.id === one!.block)!.number, at]),
    );
    const together = piecesOfSvg(drawingToSvg(drawProject(project)))
      .filter((piece) => piece.place !== null)
      .map((piece): FilePiece => {
        const at = cell.get(piece.block!)!;
        return {
          ...piece,
          points: piece.points.map(([x, y]) => [x - 2 * (at % 4), y - 2 * Math.floor(at / 4)] as const),
        };
      });
    const found = clashList(project).filter((clash) => clash.kind !== 'setting');
    expectSame(listed(found), sameClothContacts(together));
    const facing = found.find((clash) => clash.kind === 'facing' && clash.likeness === 1)!;
    expect(facing.weight).toBeCloseTo(facing.inches * sashingFactor(2, facing.inches), 9);
  });

  it('across sashing count half as much for every quarter of a rim between', () => {
    expect(sashingFactor(0, 5.8)).toBe(1);
    expect(sashingFactor(1.45, 5.8)).toBeCloseTo(0.5, 12);
    expect(sashingFactor(2.9, 5.8)).toBeCloseTo(0.25, 12);
  });

  it('never name background cloth', () => {
    const project = busy(5, 8);
    const quiet = { ...project, fabrics: project.fabrics.map((fabric) => ({ ...fabric, background: true })) };
    expect(clashList(project).length).toBeGreaterThan(0);
    expect(clashList(quiet)).toEqual([]);
  });

  it('stay the same, marks and all, when a block is turned once round', () => {
    const project = busy(6, 8);
    const turned = (turn: number): Project => ({
      ...project,
      wall: {
        ...project.wall,
        cells: project.wall.cells.map((cell, at) => (at === 5 ? { ...cell!, turn } : cell)),
      },
    });
    const start = project.wall.cells[5]!.turn;
    const before = clashList(project);
    expect(clashList(turned((start + 1) % 4))).not.toEqual(before);
    expect(clashList(turned((start + 4) % 4))).toEqual(before);
  });

  it('weigh the same on a top seen in the mirror', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1e6 }),
        fc.constantFrom(6 as const, 8 as const, 10 as const, 12 as const),
        (seed, perBlock) => {
          const project = busy(seed, perBlock);
          const turns = turnsOf(perBlock);
          const mirrored: Project = {
            ...project,
            blocks: project.blocks.map((block) => ({
              ...block,
              places: block.places.map((_, at) => block.places[(perBlock - at) % perBlock]!),
            })),
            wall: {
              ...project.wall,
              cells: project.wall.cells.map((_, at) => {
                const cell = project.wall.cells[Math.floor(at / 4) * 4 + (3 - (at % 4))]!;
                return { ...cell, turn: (turns - cell.turn) % turns };
              }),
            },
          };
          expect(summed(clashList(mirrored))).toBeCloseTo(summed(clashList(project)), 6);
        },
      ),
      { numRuns: runs(7, 20), seed: 7 },
    );
  });

  it('put their marks on the very seam', () => {
    const project = busy(8, 8);
    for (const clash of clashList(project)) {
      for (const mark of clash.marks) {
        if (mark.kind !== 'seam') continue;
        expect(Math.hypot(mark.to.x - mark.from.x, mark.to.y - mark.from.y)).toBeCloseTo(mark.inches, 9);
      }
      if (clash.kind === 'rim' || clash.kind === 'radial') expect(clash.marks).toHaveLength(1);
    }
  });
});
