// Figures against published worked examples, each re-typed here with its source. A convention without a source is marked so.
import { describe, expect, it } from 'vitest';
import { type BackingNeed, bestBacking } from '../../../src/cutting/yardage/backing';
import { battingFor } from '../../../src/cutting/yardage/batting';
import { joinStrips, perimeter } from '../../../src/cutting/yardage/binding';
import { layOutCutting } from '../../../src/cutting/yardage/clothLayout';
import { roundedUp, toBuy } from '../../../src/cutting/yardage/clothLength';
import { settingPieces } from '../../../src/cutting/yardage/settingPieces';
import { halvedSquare, quarteredSquare } from '../../../src/cutting/yardage/triangleSquares';
import { cornerSquare } from '../../../src/geometry/cornerSquare';
import { createProject } from '../../../src/model/create';
import type { Project } from '../../../src/model/project';

describe('squares for triangles', () => {
  // North Hampshire Quilters (UK guild), page hblk402b, "Half Square and Quarter Square Triangles", sections 1.1 and 2.1.
  it('of a finished 3" are cut 3 7/8" to halve and 4 1/4" to cut twice', () => {
    expect(halvedSquare(3, 0.25, 'in')).toBe(3.875);
    expect(quarteredSquare(3, 0.25, 'in')).toBe(4.25);
  });

  it('for block corners agree with the rule for halved squares', () => {
    // A(1 − k) = 3 with N = 8: the corner of the block is a half-square triangle of 3".
    const wedge = createProject('p', 'P').wedge;
    const leg = (height: number) =>
      cornerSquare({ ...wedge, cutHeight: height }).exact - 0.25 * (2 + Math.SQRT2);
    const height = 3 / (1 - Math.tan(Math.PI / 8)) + 0.5;
    expect(leg(height)).toBeCloseTo(3, 9);
    expect(cornerSquare({ ...wedge, cutHeight: height }).fits).toBe(3.875);
  });

  // A public cutting chart: square size for side and corner triangles of on-point settings, finished blocks of 5 to 16 in.
  it.each([
    [5, 8.375, 4.5],
    [6, 9.75, 5.125],
    [7, 11.25, 5.875],
    [8, 12.625, 6.625],
    [9, 14, 7.25],
    [10, 15.5, 8],
    [11, 16.875, 8.75],
    [12, 18.25, 9.375],
    [13, 19.75, 10.125],
    [14, 21.125, 10.875],
    [15, 22.5, 11.5],
    [16, 23.875, 12.25],
  ])('round a block of %d" on point are cut as the chart says', (block, side, corner) => {
    expect(quarteredSquare(block * Math.SQRT2, 0.25, 'in')).toBe(side);
    expect(halvedSquare(block / Math.SQRT2, 0.25, 'in')).toBe(corner);
  });

  it('come from the same numbers when a whole quilt is set on point', () => {
    // Moonlight Quilters (US guild), "Tip: On-Point Settings", EXAMPLE: 6" blocks, 9 3/4" and 5 1/8". Counts for r × c blocks
    // on point, 2(r−1) + 2(c−1) side triangles and 4 corners: from memory.
    const project = plainProject({ rows: 3, columns: 2, block: 6 });
    project.setting.layout = { kind: 'onPoint', sides: 'f1', corners: 'f1' };
    project.wall.cells = Array.from({ length: 3 * 2 + 2 * 1 }, () => null);
    const rows = settingPieces(project).map(({ shape, width, height, count }) => [
      shape,
      width,
      height,
      count,
    ]);
    expect(rows).toContainEqual(['quartered', 9.75, 9.75, 2]);
    expect(rows).toContainEqual(['halved', 5.125, 5.125, 2]);
    expect(rows).toHaveLength(2);
  });
});

describe('squares from cloth', () => {
  // Unsigned guild-style hand-out "Number of Squares from a Fat Quarter" (docsbay copy): 18" × 22", no allowance.
  it.each([
    [2, 99],
    [2.5, 56],
    [3, 42],
    [3.5, 30],
    [4, 20],
    [4.5, 16],
    [5, 12],
    [5.5, 12],
    [6, 9],
    [6.5, 6],
  ])('of %d": a fat quarter gives %d and not one more', (side, count) => {
    const cut = (squares: number) =>
      layOutCutting([{ line: 0, across: side, along: side, count: squares }], { width: 22, sheetLength: 18 });
    expect(cut(count)?.newSheets).toBe(1);
    expect(cut(count + 1)?.newSheets).toBe(2);
  });

  // The same hand-out, a yard of cloth: its counts hold an allowance for straightening, so they are a lower bound.
  it.each([
    [2, 357],
    [2.5, 208],
    [3, 154],
    [3.5, 108],
    [4, 80],
    [4.5, 63],
    [5, 56],
    [5.5, 42],
    [6, 30],
    [6.5, 30],
    [7, 25],
    [7.5, 20],
    [8, 20],
    [8.5, 16],
  ])('of %d": a yard 42" wide gives at least %d', (side, count) => {
    const layout = layOutCutting([{ line: 0, across: side, along: side, count }], { width: 42 });
    expect(layout!.length).toBeLessThanOrEqual(36);
  });
});

describe('borders', () => {
  // Community sewing-group block-of-the-month hand-out (village web server, page 4Bs_Oct), section 1B Borders: a top of
  // 32 1/2" × 44", borders finishing 1", 2" and 4", verticals first; the third with corner squares.
  it('of three rounds are cut as the hand-out says', () => {
    // 5 × 7 blocks of 2 1/2" with 3 1/4" sashing between and around come to 32" × 43 1/2" finished.
    const project = plainProject({ rows: 7, columns: 5, block: 2.5 });
    project.setting.sashing = { where: 'around', width: 3.25, fabric: 'f1' };
    project.setting.borders = [
      { fabric: 'f1', width: 1 },
      { fabric: 'f1', width: 2 },
      { fabric: 'f1', width: 4, corners: { kind: 'cornerstones', fabric: 'f1' } },
    ];
    const cut = settingPieces(project)
      .filter((piece) => piece.step === 'borders')
      .map(({ width, height, count }) => [width, height, count]);
    expect(cut).toEqual([
      [1.5, 44, 2],
      [34.5, 1.5, 2],
      [2.5, 46, 2],
      [38.5, 2.5, 2],
      [4.5, 50, 2],
      [38.5, 4.5, 2],
      [4.5, 4.5, 4],
    ]);
  });
});

describe('the backing', () => {
  const need: BackingNeed = { width: 63, height: 78, overhang: 4, clothWidth: 40, seam: 0.5, oneWay: false };

  // Public tutorial page, "Calculating yardage for quilt back": 63 × 78, lengths top to bottom, 40" usable.
  it('of a quilt 63" × 78" is two lengths of 86", 4 7/8 yards', () => {
    const best = bestBacking(need, false)!;
    expect(best.size).toEqual({ width: 71, height: 86 });
    expect(best).toMatchObject({ run: 'down', widths: 2, cloth: 172 });
    expect(roundedUp(best.cloth, 'yard') / 36).toBe(4.875);
    expect(toBuy(best.cloth, { straighten: 1, shrinkage: 0 }, 'yard').inches / 36).toBe(4.875);
  });

  // BellaOnline, Quilting site, article art180154 "Quilt Backings - Fabric Calculation": 72 × 90, two 42 × 94 lengths (2" over
  // at each end), 188" of cloth. Its own seam is 1/4": with 1/2" seams two widths of 42 are an inch less than 84 and still cover 76.
  it('of a quilt 72" × 90" with 2" over is two lengths of 94", 188" of cloth', () => {
    const best = bestBacking(
      { ...need, width: 72, height: 90, overhang: 2, clothWidth: 42, seam: 0.25 },
      false,
    )!;
    expect(best).toMatchObject({ run: 'down', widths: 2, cloth: 188 });
  });

  // Bloomington Quilters Guild and Susquehanna Valley Quilters, charity sizes: quilts 40" wide need no pieced backing.
  it('no wider than the cloth is one length', () => {
    expect(bestBacking({ ...need, width: 34, height: 45, clothWidth: 42 }, false)?.seams).toBe(0);
  });
});

describe('batting', () => {
  // Crib 45 × 60, twin 72 × 90, full 81 × 96, queen 90 × 108, king 120 × 120: three independent public size charts agree.
  it.each([
    [45, 60, 'Crib'],
    [60, 45, 'Crib'],
    [71, 86, 'Twin'],
    [73, 90, 'Full'],
    [82, 96, 'Queen'],
    [91, 108, 'King'],
  ])('for %d" × %d" is at least a %s', (width, height, name) => {
    expect(battingFor(width, height)[0]?.name).toBe(name);
  });

  it('larger than the largest package is not offered', () => {
    expect(battingFor(121, 80)).toEqual([]);
  });
});

describe('binding', () => {
  // Public tutorial page: 50 × 60, 40" strips, 2" lost at each diagonal join: 220 / 38, 6 strips.
  it('of a quilt 50" × 60" is six strips when each join takes 2"', () => {
    expect(perimeter(50, 60)).toBe(220);
    expect(joinStrips(220, 40, 2)?.strips).toBe(6);
  });

  // Public tutorial page: 38 1/2" square, 42" strips: 154 / 42, 4 strips.
  it('of a quilt 38 1/2" square is four strips of 42"', () => {
    expect(perimeter(38.5, 38.5)).toBe(154);
    expect(joinStrips(154, 42, 0)?.strips).toBe(4);
  });

  // Web magazine article on binding (suite101): strips = (perimeter + 12) / 42, rounded up; it leaves the joins to the 12".
  it('is as many strips as the rule of the perimeter and 12" says where joins take nothing', () => {
    for (let round = 100; round <= 500; round += 7) {
      expect(joinStrips(round + 12, 42, 0)?.strips).toBe(Math.ceil((round + 12) / 42));
    }
  });
});

/** A quilt of square blocks this size, finished: A = block / 2 = h − s − so where the assembly seam is s. */
function plainProject({ rows, columns, block }: { rows: number; columns: number; block: number }): Project {
  const project = createProject('p', 'P');
  project.wedge = {
    perBlock: 8,
    cutHeight: block / 2 + 0.5,
    seam: 0.25,
    assemblySeam: 0.25,
    outerSeam: 0.25,
  };
  project.wall = { rows, columns, cells: Array.from({ length: rows * columns }, () => null) };
  return project;
}
