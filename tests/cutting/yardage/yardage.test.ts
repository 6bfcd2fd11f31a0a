// The cutting list of whole quilts: what is listed is what the drawing shows, and the listed cloth holds it.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { backingLayouts } from '../../../src/cutting/yardage/backing';
import { joinStrips } from '../../../src/cutting/yardage/binding';
import { layOutCutting } from '../../../src/cutting/yardage/clothLayout';
import { INCHES_IN, roundedUp, toBuy } from '../../../src/cutting/yardage/clothLength';
import type { FabricYardage } from '../../../src/cutting/yardage/fabricYardage';
import { pieceWords, stripsAlike } from '../../../src/cutting/yardage/lineWords';
import { neededPieces } from '../../../src/cutting/yardage/neededPieces';
import { totalCloth, totalCost, yardage } from '../../../src/cutting/yardage/yardage';
import { area, boxOutline } from '../../../src/geometry/point';
import { layOut } from '../../../src/geometry/setting';
import { usualBuying } from '../../../src/model/buying';
import { type Phrase, speak } from '../../../src/model/phrase';
import type { Project } from '../../../src/model/project';
import { demo } from '../../demo';
import { tilingError } from '../../geometry/clipping';
import { runs } from '../../runs';

/** A demo quilt without its prices and choices of buying. */
function unpriced(name: string): Project {
  return { ...demo(name), buying: usualBuying() };
}

/** A sashed and bordered quilt with nothing sewn and nothing on hand. */
function uncut(): Project {
  const project = unpriced('keepers-winter');
  project.stripsOnHand = [];
  project.clothOnHand = [];
  for (const set of project.stripSets) set.progress = 'planned';
  for (const block of project.blocks) block.progress = 'planned';
  project.setting.binding = { fabric: project.fabrics[0]!.id, cutWidth: 2.5 };
  return project;
}

function bought(one: FabricYardage): number {
  return one.buy.kind === 'length' ? one.buy.inches : 0;
}

function find(list: readonly FabricYardage[], name: string): FabricYardage {
  return list.find((one) => one.fabric.id === name)!;
}

describe('cloth of several fabrics together', () => {
  it('is the lengths and the fat quarters, each as it is sold, and nothing of none', () => {
    const project = unpriced('harbour-reading-corner');
    Object.assign(project.buying, { price: 12, fatQuarterPrice: 2 });
    const { fabrics } = yardage(project, 'whole');
    const kinds = new Set(fabrics.map((one) => one.buy.kind));
    expect(kinds).toEqual(new Set(['length', 'fatQuarters']));
    const sum = totalCloth(fabrics);
    expect(sum.inches).toBeCloseTo(
      fabrics.reduce((inches, one) => inches + bought(one), 0),
      9,
    );
    expect(sum.fatQuarters).toBeGreaterThan(0);
    // Where no fat quarters are sold there are none, and more is cut off the bolt.
    project.buying.fatQuarters = false;
    const bolts = totalCloth(yardage(project, 'whole').fabrics);
    expect(bolts.fatQuarters).toBe(0);
    expect(bolts.inches).toBeGreaterThan(sum.inches);
    expect(totalCloth([])).toEqual({ inches: 0, fatQuarters: 0 });
  });
});

describe('the cutting list', () => {
  const settings: [what: string, change: (project: Project) => void][] = [
    ['as it is', () => undefined],
    [
      'of cloth 44" wide sold by the metre',
      (project) => {
        project.preferences.usableWidth = 44;
        project.buying.soldBy = 'metre';
      },
    ],
    [
      'of one-way cloth',
      (project) => {
        for (const fabric of project.fabrics) fabric.oneWay = true;
      },
    ],
    [
      'with long pieces cut whole',
      (project) => {
        project.buying.longPieces = 'whole';
      },
    ],
    [
      'with shrinkage',
      (project) => {
        project.buying.shrinkage = 3;
      },
    ],
    [
      'with cornerstones and mitred borders',
      (project) => {
        project.setting.sashing.cornerstones = project.fabrics[2]!.id;
        project.setting.borders[1]!.corners = { kind: 'mitred' };
      },
    ],
    [
      'on point',
      (project) => {
        const [sides, corners] = [project.fabrics[1]!.id, project.fabrics[2]!.id];
        project.setting.layout = { kind: 'onPoint', sides, corners };
        project.wall = { rows: 2, columns: 2, cells: project.wall.cells.slice(0, 5) };
      },
    ],
  ];

  it.each(settings)('%s fits on the cloth it says to buy', (_, change) => {
    const project = uncut();
    project.buying.fatQuarters = false;
    change(project);
    for (const one of yardage(project, 'whole').fabrics) {
      expect(one.lines.map((line) => line.problem)).toEqual(one.lines.map(() => null));
      const end = Math.max(0, ...one.layout.placed.map((cut) => cut.y + cut.along));
      const edge = Math.max(0, ...one.layout.placed.map((cut) => cut.x + cut.across));
      expect(edge).toBeLessThanOrEqual(project.preferences.usableWidth + 1e-9);
      const washed = bought(one) * (1 - project.buying.shrinkage / 100);
      expect(end + project.buying.straighten).toBeLessThanOrEqual(washed + 1e-9);
      // Every rectangle of every line is on the cloth; runs are checked by their length.
      for (const [index, line] of one.lines.entries()) {
        const cuts = line.cuts.reduce((sum, cut) => sum + cut.count, 0);
        expect(one.layout.placed.filter((cut) => cut.line === index)).toHaveLength(cuts);
      }
    }
  });

  it('has as much of each setting piece as the layout shows, with its seams', () => {
    const project = uncut();
    project.setting.sashing.cornerstones = project.fabrics[2]!.id;
    const { pieces } = layOut(project);
    const rows = neededPieces(project, 'whole').filter(
      (row) => row.step === 'sashing' || row.step === 'borders',
    );
    const finished = pieces.reduce((sum, piece) => sum + area(piece.outline), 0);
    const cut = rows.reduce((sum, row) => sum + row.count * (row.width - 0.5) * (row.height - 0.5), 0);
    expect(rows.reduce((sum, row) => sum + row.count, 0)).toBe(pieces.length);
    expect(cut).toBeCloseTo(finished, 6);
  });

  it('lists borders from the inside out, whatever their fabrics, widths and corners', () => {
    const border = fc.record({
      fabric: fc.nat({ max: 9 }),
      width: fc.integer({ min: 3, max: 20 }).map((quarters) => quarters / 4),
      corners: fc.constantFrom('butted', 'mitred', 'cornerstones'),
    });
    fc.assert(
      fc.property(fc.array(border, { minLength: 2, maxLength: 12 }), (borders) => {
        const project = uncut();
        const [plain, stones] = [project.fabrics[0]!.id, project.fabrics[3]!.id];
        project.setting.borders = borders.map(({ fabric, width, corners }) => ({
          fabric: project.fabrics[fabric]?.id ?? plain,
          width,
          ...(corners === 'mitred' ? { corners: { kind: 'mitred' } } : {}),
          ...(corners === 'cornerstones' ? { corners: { kind: 'cornerstones', fabric: stones } } : {}),
        }));
        const listed = (rows: readonly { step: string; what: Phrase }[]) =>
          rows.filter((row) => row.step === 'borders').map((row) => Number(row.what.with!.border));
        const rows = listed(neededPieces(project, 'whole'));
        expect(new Set(rows).size).toBe(borders.length);
        expect(rows).toEqual(rows.toSorted((one, other) => one - other));
        // Of one fabric too; borders whose strips are joined to one run stand together.
        for (const { lines } of yardage(project, 'whole').fabrics) {
          const first = lines.map((line) => listed(line.pieces)).filter((own) => own.length > 0);
          for (const own of first) expect(own).toEqual(own.toSorted((one, other) => one - other));
          const begins = first.map(([innermost]) => innermost!);
          expect(begins).toEqual(begins.toSorted((one, other) => one - other));
        }
      }),
      { seed: 59, numRuns: runs(20, 100) },
    );
  });

  it('has one square for every two corner triangles of the blocks on the wall', () => {
    const project = uncut();
    project.wall.cells[0] = null;
    const corners = neededPieces(project, 'whole').filter((row) => row.step === 'corners');
    expect(corners.reduce((sum, row) => sum + row.count, 0)).toBe(11 * 2);
    expect(corners[0]).toMatchObject({ width: 5.5, height: 5.5, shape: 'halved' });
    project.buying.corners = 'fits';
    expect(neededPieces(project, 'whole').find((row) => row.step === 'corners')).toMatchObject({ width: 5 });
  });

  it('of what is left leaves out sewn sets, strips on hand, and corners that are on', () => {
    const project = uncut();
    const set = project.stripSets[0]!;
    const strip = set.strips[0]!;
    const wanted = (scope: 'whole' | 'left') =>
      neededPieces(project, scope)
        .filter((row) => row.step === 'sets')
        .reduce((sum, row) => sum + row.count - (scope === 'left' ? row.onHand : 0), 0);
    const all = wanted('whole');
    expect(wanted('left')).toBe(all);
    project.stripsOnHand = [
      { id: 'h', fabric: strip.fabric, width: strip.width, length: set.length, count: 1 },
    ];
    expect(wanted('left')).toBe(all - 1);
    // Too short for any set: it does not count.
    project.stripsOnHand[0]!.length = 20;
    expect(wanted('left')).toBe(all);
    project.stripSets[1]!.progress = 'cut';
    expect(wanted('left')).toBe(all - project.stripSets[1]!.strips.length);
    expect(wanted('whole')).toBe(all);
    for (const block of project.blocks) block.progress = 'squared';
    expect(neededPieces(project, 'left').some((row) => row.step === 'corners')).toBe(false);
  });

  it('of what is left leaves out of the sashing what is sewn into whole rows, and not what is cut to their length', () => {
    const project = uncut();
    const { rows, columns, cells } = project.wall;
    const fabric = project.fabrics[0]!.id;
    project.setting.sashing = { where: 'around', width: 1.5, fabric };
    const sashing = () =>
      neededPieces(project, 'left')
        .filter((row) => row.step === 'sashing')
        .map((row) => [speak(row.what).slice(0, 8), row.count]);
    expect(sashing()).toEqual([
      ['Vertical', rows * (columns + 1)],
      ['Horizont', rows + 1],
    ]);
    const join = (from: number, to: number) => {
      for (const cell of cells.slice(from, to))
        project.blocks.find(({ id }) => id === cell?.block)!.progress = 'joined';
    };
    // A row is whole once all its blocks are in it.
    join(0, columns - 1);
    expect(sashing()[0]).toEqual(['Vertical', rows * (columns + 1)]);
    join(0, columns);
    expect(sashing()[0]).toEqual(['Vertical', (rows - 1) * (columns + 1)]);
    join(0, cells.length);
    expect(sashing()).toEqual([['Horizont', rows + 1]]);
    // An empty place waits for its block.
    cells[0] = null;
    expect(sashing()[0]).toEqual(['Vertical', columns + 1]);
  });

  it('of what is left says once a block is in its row that what is sewn on after it stays', () => {
    const project = uncut();
    const said = (scope: 'whole' | 'left') =>
      yardage(project, scope).remarks.map((remark) => speak(remark)).filter((remark) => remark.includes('In its row')); // biome-ignore format: short
    const [block] = project.blocks;
    for (const progress of ['planned', 'octagon', 'squared'] as const) {
      block!.progress = progress;
      expect(said('left')).toEqual([]);
    }
    block!.progress = 'joined';
    expect(said('left')).toEqual([
      'What is sewn on after “In its row” stays in this list, even once it is cut.',
    ]);
    expect(said('whole')).toEqual([]);
    // True of the last list too: every block is in its row, and nothing else can be told.
    for (const one of project.blocks) one.progress = 'joined';
    const steps = new Set(neededPieces(project, 'left').map((row) => row.step));
    expect([...steps]).toEqual(expect.arrayContaining(['borders', 'binding']));
    expect(said('left').length).toBe(1);
  });

  it('of what is left keeps the corners of a top on point, which are sewn on last', () => {
    const project = demo('river-ferry');
    for (const block of project.blocks) block.progress = 'joined';
    const setting = (scope: 'whole' | 'left') =>
      neededPieces(project, scope)
        .filter((row) => row.step === 'setting')
        .map((row) => row.shape);
    expect(setting('whole').toSorted()).toEqual(['halved', 'quartered']);
    expect(setting('left')).toEqual(['halved']);
  });

  it('says how much more cloth there has to be than is on hand', () => {
    const project = uncut();
    const [fabric] = yardage(project, 'whole').fabrics;
    const id = fabric!.fabric.id;
    expect(fabric!.onHand).toBeNull();
    const cloth = (depth: number) => {
      project.clothOnHand = [{ id: 'c', fabric: id, kind: 'yardage', stripLength: 42, depth, count: 1 }];
      return yardage(project, 'left').fabrics.find((one) => one.fabric.id === id)!;
    };
    expect(cloth(200).onHand).toMatchObject({ enough: true });
    expect(cloth(200).buy).toEqual({ kind: 'nothing' });
    const short = cloth(6);
    expect(short.onHand?.enough).toBe(false);
    expect(speak(short.onHand!.words)).toMatch(/is not enough: \d.* yd more/);
    expect(bought(short)).toBeGreaterThan(0);
  });

  it('cuts upright one-way pieces with their height along the cloth', () => {
    const project = uncut();
    const night = project.fabrics.find((one) => one.id === project.setting.sashing.fabric)!;
    night.oneWay = true;
    const lines = find(yardage(project, 'whole').fabrics, night.id).lines.filter(
      (line) => line.step === 'sashing',
    );
    const upright = lines.find((line) => line.pieces[0]!.height > line.pieces[0]!.width)!;
    expect(upright.cuts).toEqual([{ across: 2, along: 14.5, count: 16 }]);
  });

  it('names a piece that is broader than the cloth and leaves it out', () => {
    const project = uncut();
    project.preferences.usableWidth = 12;
    project.setting.plain = { fabric: project.fabrics[0]!.id, cells: 'second' };
    project.wall.cells = project.wall.cells.map(() => null);
    const problems = yardage(project, 'whole').fabrics.flatMap((one) =>
      one.lines.map((line) => line.problem),
    );
    expect(problems.filter((one) => one !== null).map((one) => speak(one))).toContain(
      '14 1/2" is more than the fabric is wide (12").',
    );
  });

  it('takes fat quarters only where they cost less', () => {
    const project = uncut();
    project.setting.binding = null;
    const corner = project.setting.cornerFabric;
    const buy = () => find(yardage(project, 'whole').fabrics, corner).buy;
    // 24 squares of 5 1/2", nine from each of three fat quarters: as much cloth as 3/4 yd.
    expect(buy().kind).toBe('length');
    project.buying.price = 12;
    // 3 × 3 against 3/4 yd × 12 = 9.
    project.buying.fatQuarterPrice = 3;
    expect(buy().kind).toBe('length');
    project.buying.fatQuarterPrice = 2.99;
    expect(buy()).toEqual({ kind: 'fatQuarters', count: 3 });
    expect(find(yardage(project, 'whole').fabrics, corner).cost).toBe(8.97);
    project.buying.fatQuarters = false;
    expect(buy().kind).toBe('length');
  });

  it('is the same cloth in centimetres, but for sizes rounded to the ruler', () => {
    const project = uncut();
    project.buying.soldBy = 'yard';
    project.buying.fatQuarters = false;
    const inches = yardage(project, 'whole').fabrics.map((one) => one.layout.length);
    project.preferences.unit = 'cm';
    const metric = yardage(project, 'whole').fabrics.map((one) => one.layout.length);
    metric.forEach((length, index) => {
      expect(Math.abs(length - inches[index]!)).toBeLessThan(1.5);
    });
  });

  it('of a wedge no block can be made from lists the strips and says why there is no more', () => {
    const project = uncut();
    project.wedge = { ...project.wedge, cutHeight: 1, outerSeam: 0.5 };
    const list = yardage(project, 'whole');
    expect(list.backing).toBeNull();
    expect(list.fabrics.flatMap((one) => one.lines).every((line) => line.step === 'sets')).toBe(true);
    expect(speak(list.remarks[0]!)).toContain('leave no block');
  });
});

describe('the list in words', () => {
  it('counts every strip of the layout once, and every row speaks without a gap', () => {
    const project = uncut();
    for (const one of yardage(project, 'whole').fabrics) {
      const strips = stripsAlike(one.layout);
      expect(strips.reduce((sum, alike) => sum + alike.count, 0)).toBe(one.layout.strips.length);
      const sentences = [
        ...strips.map((alike) => alike.words),
        ...one.why,
        ...one.lines.flatMap((line) => [
          ...line.why,
          ...line.pieces.flatMap((piece) => [piece.what, pieceWords(piece)]),
        ]),
      ];
      for (const sentence of sentences) expect(speak(sentence)).not.toMatch(/[{}]|undefined|NaN/);
    }
  });

  it('says what is cut from the end of a strip', () => {
    const layout = layOutCutting(
      [
        { line: 0, across: 10, along: 4, count: 3 },
        { line: 1, across: 5, along: 2, count: 2 },
      ],
      { width: 40 },
    )!;
    expect(stripsAlike(layout).map((one) => speak(one.words))).toEqual([
      '1 strip 4" wide, cut into 3 of 10"; from its end 2 of 5" × 2"',
    ]);
  });

  it('gives a price of all cloth only when every fabric has one', () => {
    const project = uncut();
    expect(totalCost(yardage(project, 'whole'))).toBeNull();
    project.buying.price = 10;
    const list = yardage(project, 'whole');
    const sum = list.fabrics.reduce((total, one) => total + one.cost!, list.backing!.apart!.cost!);
    expect(totalCost(list)).toBeCloseTo(sum, 9);
  });
});

describe('a length to buy', () => {
  it('rounds up by eighths of a yard and by ten centimetres, and leaves what is round already', () => {
    expect(roundedUp(36, 'yard')).toBe(36);
    expect(roundedUp(36.01, 'yard')).toBe(40.5);
    expect(roundedUp(INCHES_IN.metre, 'metre')).toBeCloseTo(INCHES_IN.metre, 9);
    expect(roundedUp(INCHES_IN.metre + 0.1, 'metre')).toBeCloseTo(1.1 * INCHES_IN.metre, 9);
    expect(toBuy(0, { straighten: 1, shrinkage: 5 }, 'yard').inches).toBe(0);
  });

  it('still has enough once washing has taken its part', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 500, noNaN: true }),
        fc.double({ min: 0, max: 15, noNaN: true }),
        (cut, shrinkage) => {
          const { inches } = toBuy(cut, { straighten: 1, shrinkage }, 'yard');
          expect(inches * (1 - shrinkage / 100)).toBeGreaterThanOrEqual(cut + 1 - 1e-6);
        },
      ),
      { seed: 55 },
    );
  });
});

describe('strips joined to a run', () => {
  it('reach, and one strip fewer would not', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 900, noNaN: true }),
        fc.double({ min: 20, max: 60, noNaN: true }),
        fc.double({ min: 0, max: 5, noNaN: true }),
        (run, length, loss) => {
          const { strips, gives, last } = joinStrips(run, length, loss)!;
          expect(gives).toBeGreaterThanOrEqual(run - 1e-6);
          expect(last).toBeLessThanOrEqual(length + 1e-6);
          if (strips > 1) expect(gives - length + loss).toBeLessThan(run);
        },
      ),
      { seed: 56 },
    );
  });
});

describe('backing layouts', () => {
  const need = fc.record({
    width: fc.integer({ min: 12, max: 130 }),
    height: fc.integer({ min: 12, max: 130 }),
    overhang: fc.integer({ min: 0, max: 6 }),
    clothWidth: fc.integer({ min: 36, max: 110 }),
    seam: fc.constantFrom(0.25, 0.5, 0.625),
    oneWay: fc.boolean(),
    unit: fc.constantFrom('in' as const, 'cm' as const),
  });

  it('show panels that tile the backing, cut from cloth that suffices', () => {
    fc.assert(
      fc.property(need, (wanted) => {
        for (const layout of backingLayouts(wanted)) {
          const whole = boxOutline({ x: 0, y: 0, ...layout.size });
          expect(tilingError(layout.panels.map(boxOutline), whole)).toBeLessThan(1e-5);
          // With every seam opened again, the cut cloth covers the size: area with seams ≥ area of the size.
          const cut = layout.cuts.reduce((sum, one) => sum + one.across * one.along * one.count, 0);
          expect(cut).toBeGreaterThanOrEqual(layout.size.width * layout.size.height - 1e-6);
          expect(layout.cuts.reduce((sum, one) => sum + one.count, 0)).toBe(layout.panels.length);
          expect(layout.cuts.every((one) => one.across <= wanted.clothWidth + 1e-9)).toBe(true);
          if (wanted.oneWay) expect(layout.run).toBe('down');
        }
      }),
      { seed: 57, numRuns: 80 },
    );
  });

  it('come least cloth first, and none of whole lengths takes less than the first', () => {
    fc.assert(
      fc.property(need, (wanted) => {
        const layouts = backingLayouts({ ...wanted, oneWay: false, unit: 'in' });
        const cloth = layouts.map((layout) => layout.cloth);
        expect(cloth).toEqual(cloth.toSorted((one, other) => one - other));
        // By brute force: the least number of lengths whose widths, less the seams, cover the quilt.
        const lost = 2 * wanted.seam;
        const [width, height] = [wanted.width + 2 * wanted.overhang, wanted.height + 2 * wanted.overhang];
        const lengths = (broad: number) => {
          let count = 1;
          while (count * wanted.clothWidth - (count - 1) * lost < broad - 1e-9) count += 1;
          return count;
        };
        const brute = Math.min(lengths(width) * height, lengths(height) * width);
        expect(layouts.find((layout) => layout.sections === 1)!.cloth).toBeCloseTo(brute, 9);
      }),
      { seed: 58, numRuns: 200 },
    );
  });
});
