// The drawing of blocks and tops, measured against plane geometry and an independent polygon library.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Piece } from '../../src/drawing/drawing';
import { absoluteGrain, absoluteOutline, drawBlock, drawProject } from '../../src/drawing/drawProject';
import { area, boxOutline } from '../../src/geometry/point';
import { apothem, finishedBlock } from '../../src/geometry/wedge';
import type { Project } from '../../src/model/project';
import { blockOutline } from '../geometry/blockOutline';
import { tilingError } from '../geometry/clipping';
import { runs } from '../runs';
import { randomProject } from './samples';

const perBlock = fc.constantFrom(6 as const, 8 as const, 10 as const, 12 as const);
const seed = fc.integer({ min: 1, max: 1e6 });

function sumOfAreas(pieces: readonly Piece[]): number {
  return pieces.reduce((sum, piece) => sum + area(piece.outline), 0);
}

const outlinesOf = (pieces: readonly Piece[]) => pieces.map((piece) => piece.outline);

describe('the pieces of a block', () => {
  it('tile its square or rectangle without gap or overlap, whatever the strip sets', () => {
    fc.assert(
      fc.property(seed, perBlock, (number, wedges) => {
        const project = randomProject(number, wedges);
        const pieces = drawBlock(project, project.blocks[0]!);
        const { width, height } = finishedBlock(project.wedge);
        const whole = boxOutline({ x: -width / 2, y: -height / 2, width, height });
        expect(tilingError(outlinesOf(pieces), whole)).toBeLessThan(1e-5);
      }),
      { seed: 20_251, numRuns: runs(10, 30) },
    );
  });

  it('have bands that tile the octagon of area 8A²k, and four corners for the rest', () => {
    fc.assert(
      fc.property(seed, (number) => {
        const project = randomProject(number, 8);
        const pieces = drawBlock(project, project.blocks[0]!);
        const bands = pieces.filter((piece) => piece.part === 'band');
        const across = 2 * apothem(project.wedge);
        // Regular octagon: 0.828427 × (across flats)², as in any handbook table of regular polygons.
        expect(sumOfAreas(bands) / across ** 2).toBeCloseTo(0.828427, 6);
        expect(tilingError(outlinesOf(bands), blockOutline(project.wedge))).toBeLessThan(1e-5);
        expect(pieces.filter((piece) => piece.part === 'corner')).toHaveLength(4);
      }),
      { seed: 20_252, numRuns: runs(7, 20) },
    );
  });

  it('number places from 1 and bands from the rim, each place with its own', () => {
    const project = randomProject(3, 8);
    const pieces = drawBlock(project, project.blocks[0]!).filter((piece) => piece.part === 'band');
    for (let place = 1; place <= 8; place += 1) {
      const bands = pieces.filter((piece) => piece.place === place);
      expect(bands.map((piece) => piece.band)).toEqual(bands.map((_, index) => index + 1));
      const farthest = bands.map((piece) => Math.max(...piece.outline.map(({ x, y }) => Math.hypot(x, y))));
      expect(farthest).toEqual(farthest.toSorted((one, other) => other - one));
    }
  });

  it('show an empty place and the middle a short set leaves as bare, still tiling the square', () => {
    const project = randomProject(5, 8);
    const short = { ...project.stripSets[0]!, id: 'short', label: 'Z', strips: [{ fabric: 'a', width: 3 }] };
    const block = {
      ...project.blocks[0]!,
      places: project.blocks[0]!.places.map((place, at) =>
        at === 0 ? null : at === 1 ? { set: 'short', tip: 'up' as const } : place,
      ),
    };
    const changed: Project = { ...project, stripSets: [...project.stripSets, short], blocks: [block] };
    const pieces = drawBlock(changed, block);
    const bare = pieces.filter((piece) => piece.part === 'bare');
    expect(bare.map((piece) => [piece.place, piece.fabric])).toEqual([
      [1, null],
      [2, null],
    ]);
    // A whole wedge is kA²; a 3 inch strip alone (uncut seams inside) leaves the wedge of radius A + so − 3.
    const rim = apothem(project.wedge);
    const k = Math.tan(Math.PI / 8);
    expect(area(bare[0]!.outline)).toBeCloseTo(k * rim ** 2, 9);
    expect(area(bare[1]!.outline)).toBeCloseTo(k * (rim + 0.25 - 3) ** 2, 9);
    expect(sumOfAreas(pieces)).toBeCloseTo(4 * rim ** 2, 8);
  });
});

describe('a whole top', () => {
  it('is tiled by blocks, sashing and borders for every N and every turn', () => {
    for (const wedges of [6, 8, 10, 12] as const) {
      const plain = randomProject(wedges, wedges, 2, 3);
      const project: Project = {
        ...plain,
        setting: {
          ...plain.setting,
          sashing: { where: 'around', width: 1.5, fabric: 'a' },
          borders: [
            { fabric: 'b', width: 0.75 },
            { fabric: 'c', width: 4 },
          ],
        },
      };
      const drawing = drawProject(project);
      const whole = drawing.width * drawing.height;
      const turned = drawing.blocks.flatMap((hung) =>
        hung.pieces.map((piece) => ({ ...piece, outline: absoluteOutline(hung, piece) })),
      );
      const all = [...drawing.setting, ...turned];
      expect(sumOfAreas(all)).toBeCloseTo(whole, 7);
      for (const { x, y } of all.flatMap((piece) => piece.outline)) {
        expect(x).toBeGreaterThanOrEqual(-1e-9);
        expect(y).toBeGreaterThanOrEqual(-1e-9);
        expect(x).toBeLessThanOrEqual(drawing.width + 1e-9);
        expect(y).toBeLessThanOrEqual(drawing.height + 1e-9);
      }
    }
  });

  it('of 2 × 3 fourteen-inch blocks with 1½ sashing around measures 32½ × 48', () => {
    // Common practice, no source.
    const plain = randomProject(1, 8, 3, 2);
    const sashing = { where: 'around' as const, width: 1.5, fabric: 'a' };
    const drawing = drawProject({ ...plain, setting: { ...plain.setting, sashing } });
    expect(drawing.width).toBeCloseTo(32.5, 9);
    expect(drawing.height).toBeCloseTo(48, 9);
  });

  it('keeps the very same drawn blocks when another block changes', () => {
    const project = randomProject(9, 8, 4, 5);
    const before = drawProject(project);
    const blocks = project.blocks.map((block, at) =>
      at === 7 ? { ...block, cornerShift: 1 - block.cornerShift } : block,
    );
    const after = drawProject({ ...project, blocks });
    after.blocks.forEach((hung, at) => {
      if (at === 7) expect(hung.pieces).not.toBe(before.blocks[at]!.pieces);
      else expect(hung).toBe(before.blocks[at]);
    });
  });

  it('draws a block anew when its strip set, its corners or the wedge change', () => {
    const project = randomProject(9, 8);
    const pieces = (changed: Project) => drawProject(changed).blocks[0]!.pieces;
    const before = pieces(project);
    const [set, ...others] = project.stripSets;
    const longer = { ...set!, strips: [{ fabric: 'e', width: 2 }, ...set!.strips] };
    const used = project.blocks[0]!.places.some((place) => place?.set === set!.id);
    expect(used).toBe(true);
    expect(pieces({ ...project, stripSets: [longer, ...others] })).not.toEqual(before);
    const cornered = pieces({ ...project, setting: { ...project.setting, cornerFabric: 'e' } });
    expect(cornered.filter((piece) => piece.part === 'corner').every((piece) => piece.fabric === 'e')).toBe(
      true,
    );
    const smaller = pieces({ ...project, wedge: { ...project.wedge, assemblySeam: 0.3125 } });
    expect(sumOfAreas(smaller)).toBeCloseTo(
      finishedBlock({ ...project.wedge, assemblySeam: 0.3125 }).height ** 2,
      8,
    );
  });

  it('leaves empty cells open and blocks on the side table out', () => {
    const project = randomProject(2, 8, 1, 2);
    const drawing = drawProject({
      ...project,
      wall: { ...project.wall, cells: [null, project.wall.cells[1]!] },
    });
    expect(drawing.blocks.map((hung) => hung.number)).toEqual([2]);
    expect(drawing.emptyCells).toEqual([{ cell: 0, box: { x: 0, y: 0, width: 14, height: 14 } }]);
  });

  it('lays the grain of every band along its own rim, also when the block is turned', () => {
    const drawing = drawProject(randomProject(11, 8, 2, 2));
    for (const hung of drawing.blocks) {
      for (const piece of hung.pieces.filter((one) => one.part === 'band')) {
        const [from, to] = absoluteOutline(hung, piece);
        const rim = (Math.atan2(to!.y - from!.y, to!.x - from!.x) * 180) / Math.PI;
        const off = (absoluteGrain(hung, piece) - rim + 720) % 180;
        expect(Math.min(off, 180 - off)).toBeLessThan(1e-6);
      }
    }
  });
});
