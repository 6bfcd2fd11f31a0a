// Figures against published worked examples, each re-typed here with the fullest name of its source that is known. What has no
// source is marked 'common practice, no source', what was worked by hand is spelled out.
import { describe, expect, it } from 'vitest';
import { battingFor } from '../../../src/cutting/top/batting';
import { type BackingNeed, bestBacking } from '../../../src/cutting/yardage/backing';
import { joinStrips, perimeter } from '../../../src/cutting/yardage/binding';
import { layOutCutting } from '../../../src/cutting/yardage/clothLayout';
import { roundedUp, toBuy } from '../../../src/cutting/yardage/clothLength';
import { type FabricYardage, fabricYardage } from '../../../src/cutting/yardage/fabricYardage';
import { settingPieces } from '../../../src/cutting/yardage/settingPieces';
import {
  cornerSquare,
  halvedSquare,
  quarteredSquare,
  settingSquares,
} from '../../../src/cutting/yardage/triangleSquares';
import { createProject } from '../../../src/model/create';
import { phrase } from '../../../src/model/phrase';
import type { Project } from '../../../src/model/project';
import { plainFabrics } from '../fabrics';

describe('squares for triangles', () => {
  // North Hampshire Quilters (UK guild), web page hblk402b, "Half Square and Quarter Square Triangles", sections 1.1 and 2.1.
  it('of a finished 3" are cut 3 7/8" to halve and 4 1/4" to cut twice', () => {
    expect(halvedSquare(3, 0.25, 'in')).toBe(3.875);
    expect(quarteredSquare(3, 0.25, 'in')).toBe(4.25);
  });

  it('for block corners agree with the rule for halved squares', () => {
    // A(1 − k) = 3 with N = 8: the corner of the block is a half-square triangle of 3".
    const wedge = createProject('p', 'P').wedge;
    const height = 3 / (1 - Math.tan(Math.PI / 8)) + 0.5;
    const { leg, fits } = cornerSquare({ ...wedge, cutHeight: height }, 'in');
    expect(leg).toBeCloseTo(3, 9);
    expect(fits).toBe(3.875);
  });

  // Square sizes for side and corner triangles, finished blocks of 5 to 16 in: common practice, no source (a chart whose
  // publisher is not known). The rules behind them: Moonlight Quilters (US guild), "Tip: On-Point Settings", section "Quick
  // Cutting Method for Setting & Corner Triangles", which rounds the same way.
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
    // Moonlight Quilters (US guild), "Tip: On-Point Settings", section "Quick Cutting Method for Setting & Corner Triangles",
    // EXAMPLE: 6" blocks, 9 3/4" and 5 1/8", plain squares 6 1/2". Counts for r × c blocks
    // on point, 2(r−1) + 2(c−1) side triangles and 4 corners: from memory.
    const project = plainProject({ rows: 3, columns: 2, block: 6 });
    project.setting.layout = { kind: 'onPoint', sides: 'f1', corners: 'f1' };
    project.setting.plain = { fabric: 'f1', cells: 'second' };
    project.wall.cells = Array.from({ length: 3 * 2 + 2 * 1 }, () => null);
    expect(settingSquares(project.wedge, 'in')).toEqual({ side: 9.75, corner: 5.125 });
    const rows = settingPieces(project).map(({ shape, width, height, count }) => [
      shape,
      width,
      height,
      count,
    ]);
    expect(rows).toContainEqual(['quartered', 9.75, 9.75, 2]);
    expect(rows).toContainEqual(['halved', 5.125, 5.125, 2]);
    expect(rows).toContainEqual(['rectangle', 6.5, 6.5, 2]);
    expect(rows).toHaveLength(3);
  });
});

describe('squares from cloth', () => {
  // "Number of Squares from a Fat Quarter", hand-out without an author, docsbay.net/number-of-squares-from-a-fat-quarter, first
  // list: 18" × 22", no allowance.
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

  // The same hand-out, "Yardage Chart", column "1 yd.", of cloth 44" wide: its counts hold an allowance for straightening, so they are a lower bound.
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
  // Block-of-the-month hand-out of a sewing group, page 4Bs_Oct, section 1B "Borders" (publisher not named): a top of
  // 32 1/2" × 44", borders finishing 1", 2" and 4", verticals first; the third with corner squares. The rule, finished width
  // and half an inch, cut as long as the top is by then, is common practice.
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
  const need: BackingNeed = {
    width: 63,
    height: 78,
    overhang: 4,
    clothWidth: 40,
    seam: 0.5,
    oneWay: false,
    unit: 'in',
  };

  // 63 × 78, lengths top to bottom, 40" usable, 8" added: common practice, no source (a question answered on a page titled
  // "Calculating yardage for quilt back", publisher not known). The 8": Quilts of Valor Foundation, FAQ "Backing & Binding",
  // 13 July 2020.
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
  // Crib 45 × 60, twin 72 × 90, full 81 × 96, queen 90 × 108, king 120 × 120: common practice, no source (packages; three
  // charts agree, no standard is known).
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
  // "How to calculate the number of strips to bind a quilt", web page of June 2013 (castillejacotton.blogspot.com/2013/06):
  // 50 × 60, cloth 40" wide, 2" taken off each strip: 220 / 38, 6 strips.
  it('of a quilt 50" × 60" is six strips when each join takes 2"', () => {
    expect(perimeter(50, 60)).toBe(220);
    expect(joinStrips(220, 40, 2)?.strips).toBe(6);
  });

  // 38 1/2" square, 42" strips: 154 / 42, 4 strips. Common practice, no source.
  it('of a quilt 38 1/2" square is four strips of 42"', () => {
    expect(perimeter(38.5, 38.5)).toBe(154);
    expect(joinStrips(154, 42, 0)?.strips).toBe(4);
  });

  // suite101 (web magazine), an article on binding whose title is not known: strips = (perimeter + 12) / 42, rounded up; it
  // leaves the joins to the 12".
  it('is as many strips as the rule of the perimeter and 12" says where joins take nothing', () => {
    for (let round = 100; round <= 500; round += 7) {
      expect(joinStrips(round + 12, 42, 0)?.strips).toBe(Math.ceil((round + 12) / 42));
    }
  });
});

describe('cloth of several fabrics, from pieces to yards', () => {
  // quilterscache.com/StartQuiltingPages/startquiltingtwo.html, "Start quilting" lessons: 56 blocks, cloth 42" wide. Pieces and how
  // many come from one width are printed there: 7 3/4" five times, 14" three times. From there on hand-worked here:
  // 112 / 5 = 22.4, 23 strips of 3 7/8" are 89 1/8", 2 1/2 yd; 56 / 3 = 18.7, 19 strips of 3 1/2" are 66 1/2"; with the 23
  // strips 155 5/8", 4 3/8 yd.
  const pieces: readonly (readonly [fabric: string, height: number, width: number, count: number])[] = [
    ['f1', 3.875, 7.75, 112],
    ['f2', 3.875, 7.75, 112],
    ['f3', 3.5, 14, 56],
    ['f3', 3.875, 7.75, 112],
  ];
  it.each([
    ['f1', 89.125, 2.5],
    ['f2', 89.125, 2.5],
    ['f3', 155.625, 4.375],
  ])('%s takes %d" of cloth, %d yards', (id, inches, yards) => {
    const cloth = yardsOf(pieces, id);
    expect(cloth.layout.length).toBeCloseTo(inches, 9);
    expect(cloth.buy).toMatchObject({ kind: 'length' });
    expect(cloth.buy.kind === 'length' && cloth.buy.inches / 36).toBeCloseTo(yards, 9);
  });

  // Hand-worked: 300 rectangles 3" × 2" of cloth 40" wide are 13 in a row (39"), 24 rows (23 give 299), 48", 1 1/3 yd; to the
  // eighth 1 3/8 yd.
  it('of 300 rectangles 3" × 2" is 24 strips, 48", 1 3/8 yards', () => {
    const cloth = yardsOf([['f1', 2, 3, 300]], 'f1', 40);
    expect(cloth.layout.strips).toHaveLength(24);
    expect(cloth.layout.length).toBeCloseTo(48, 9);
    expect(cloth.buy.kind === 'length' && cloth.buy.inches / 36).toBeCloseTo(1.375, 9);
  });
});

describe('a setting with its binding, from the quilt to yards', () => {
  const yardOf = (project: Project, id: string) => {
    const own = settingPieces(project).filter((piece) => piece.fabric === id);
    return fabricYardage(project, project.fabrics.find((one) => one.id === id)!, own, 'whole');
  };

  // Hand-worked, after the trade's rules; the top of 32 1/2" × 48" is in the trade notes (section 5). Three rows of two blocks of
  // 14", sashing 1 1/2" between and around, cut 2". Upright, beside the blocks: 3 × 3 = 9 of 14 1/2", two from a strip of 40":
  // 5 strips. Level, between and outside the rows: 4 of 32 1/2 + 1/2 = 33", one from a strip: 4 strips. 9 × 2" = 18", and 1" to
  // straighten: 19", 5/8 yd (22 1/2"). Binding: 2 × (32 1/2 + 48) = 161", and 12": 173". A strip of 40" less 2 1/2" for a
  // diagonal join adds 37 1/2": (173 − 2 1/2) / 37 1/2 = 4.5, 5 strips of 2 1/2": 12 1/2", straightened 13 1/2", 3/8 yd.
  it('of six blocks of 14" with 1 1/2" sashing is 5/8 yard, and its binding 3/8 yard', () => {
    const project = plainProject({ rows: 3, columns: 2, block: 14 });
    project.fabrics = plainFabrics(2);
    project.setting.sashing = { where: 'around', width: 1.5, fabric: 'f1' };
    project.setting.binding = { fabric: 'f2', cutWidth: 2.5 };
    project.buying.fatQuarters = false;
    const cut = settingPieces(project).map(({ step, width, height, count }) => [step, width, height, count]);
    expect(cut).toContainEqual(['sashing', 2, 14.5, 9]);
    expect(cut).toContainEqual(['sashing', 33, 2, 4]);
    expect(cut).toContainEqual(['binding', 2.5, 173, 1]);
    expect(cut).toHaveLength(3);
    const [sashing, binding] = [yardOf(project, 'f1'), yardOf(project, 'f2')];
    expect(sashing.layout.length).toBeCloseTo(18, 9);
    expect(sashing.buy).toEqual({ kind: 'length', inches: 22.5 });
    expect(binding.layout.strips).toHaveLength(5);
    expect(binding.layout.length).toBeCloseTo(12.5, 9);
    expect(binding.buy).toEqual({ kind: 'length', inches: 13.5 });
  });

  // The quilt of "How to calculate the number of strips to bind a quilt" (see binding above), 50" × 60", as five by six blocks
  // of 10": its binding, cut 2" so that a diagonal join takes the 2" of the page, is 6 strips.
  it('of 50" × 60" binds with six strips of 40"', () => {
    const project = plainProject({ rows: 6, columns: 5, block: 10 });
    project.fabrics = plainFabrics(2);
    project.setting.binding = { fabric: 'f2', cutWidth: 2 };
    project.buying = { ...project.buying, fatQuarters: false, bindingExtra: 0 };
    expect(settingPieces(project)).toMatchObject([{ step: 'binding', width: 2, height: 220 }]);
    expect(yardOf(project, 'f2').layout.strips).toHaveLength(6);
  });
});

/** Cloth for these pieces of one fabric, [fabric, along, across, count], without straightening or shrinkage. */
function yardsOf(
  pieces: readonly (readonly [string, number, number, number])[],
  id: string,
  usableWidth = 42,
): FabricYardage {
  const project = createProject('p', 'P');
  project.preferences.usableWidth = usableWidth;
  project.buying = { ...project.buying, straighten: 0, shrinkage: 0, fatQuarters: false };
  const rows = pieces
    .filter(([fabric]) => fabric === id)
    .map(([fabric, height, width, count]) => ({
      step: 'setting' as const, fabric, what: phrase('Pieces'), shape: 'rectangle' as const,
      width, height, count, onHand: 0, upright: false, why: [],
    })); // biome-ignore format: short
  return fabricYardage(project, plainFabrics(3).find((one) => one.id === id)!, rows, 'whole');
}

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
