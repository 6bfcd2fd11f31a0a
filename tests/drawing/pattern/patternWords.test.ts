// What the written pattern tells a maker to do, read back from the file: joins, seams, order of rows, backing, finishing.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sewingSteps } from '../../../src/cutting/sewing/sewingSteps';
import { slantedPlace, slantedRows } from '../../../src/cutting/sewing/slantedRows';
import type { Line } from '../../../src/cutting/sewing/step';
import { battingFor } from '../../../src/cutting/top/batting';
import { pieceWords, stripsAlike, usesOfStrips } from '../../../src/cutting/yardage/lineWords';
import { neededPieces } from '../../../src/cutting/yardage/neededPieces';
import { yardage } from '../../../src/cutting/yardage/yardage';
import { drawProject } from '../../../src/drawing/drawProject';
import { textWidth } from '../../../src/drawing/pattern/lettering';
import { ink, STYLES, WASH } from '../../../src/drawing/pattern/look';
import { PATTERN_PARTS, type PatternPart } from '../../../src/drawing/pattern/options';
import type { PaperName } from '../../../src/drawing/pattern/page';
import { inGroups } from '../../../src/drawing/pattern/pages/piecedRuns';
import { settingWords } from '../../../src/drawing/pattern/pages/sewingWords';
import { layOut } from '../../../src/geometry/setting';
import type { Project } from '../../../src/model/project';
import { demo } from '../../demo';
import { runs } from '../../runs';
import { randomProject } from '../samples';
import { sayIn, type, wordsOn, written } from './makePdf';
import { partMarks } from './partMarks';
import { bare } from './readPdf';

const LONG = 120_000;

function pagesOf(project: Project, parts: readonly PatternPart[], paper: PaperName = 'letter') {
  return written(project, paper, parts).pages.map(wordsOn);
}

function textOf(project: Project, parts: readonly PatternPart[]): string {
  return pagesOf(project, parts).join('\n');
}

function changed(name: string, change: (project: Project) => void): Project {
  const project = structuredClone(demo(name));
  change(project);
  return project;
}

/** Rows of three and of two on point, thirteen cells, one of them empty. */
function onPoint(change: (project: Project) => void = () => undefined): Project {
  return changed('keepers-winter', (project) => {
    const [, sides, corners] = project.fabrics;
    project.setting.layout = { kind: 'onPoint', sides: sides!.id, corners: corners!.id };
    project.wall = { rows: 3, columns: 3, cells: [...project.wall.cells, null] };
    project.setting.binding = { fabric: sides!.id, cutWidth: 2.5 };
    change(project);
  });
}

describe('strips that are joined', () => {
  it(
    'are said to be joined in the cutting list and where they are sewn',
    () => {
      // Seven strips of 40" less six joins of 2" are 268": enough for five times 48 1/2", 242 1/2".
      const join = bare(
        'Horizontal sashing B, between the rows and at the top and bottom: join 7 strips 2" wide end to end at 45°, 242 1/2" in all, then cut to length.',
      );
      const project = demo('keepers-winter');
      expect(textOf(project, ['materials'])).toContain(join);
      expect(textOf(project, ['setting'])).toContain(join);
    },
    LONG,
  );

  it('are told from pieces that fit across the cloth', () => {
    const lines = yardage(demo('keepers-winter'), 'whole').fabrics.flatMap((one) => one.lines);
    for (const line of lines) {
      const long = line.pieces.some((piece) => Math.max(piece.width, piece.height) > 40 + 1e-9);
      expect(line.join !== null, line.pieces[0]!.what.say).toBe(long);
    }
  });
});

describe('strips by fabric', () => {
  it('say what each is for, and which is the rest of a run', () => {
    const project = demo('keepers-winter');
    const say = sayIn(project);
    const text = textOf(project, ['materials']);
    for (const one of yardage(project, 'whole').fabrics) {
      for (const strips of stripsAlike(one.layout)) {
        const uses = usesOfStrips(strips, one.lines);
        expect(uses.length).toBeGreaterThan(0);
        for (const use of uses) expect(text).toContain(bare(say(use)));
      }
    }
    expect(text).toContain(
      bare('Horizontal sashing B, between the rows and at the top and bottom (to be joined)'),
    );
    expect(text).toContain(
      bare('Horizontal sashing B, between the rows and at the top and bottom (the rest of the run)'),
    );
    expect(text).toContain(bare('long Strips for strip sets'));
  });
});

describe('a seam off the sixteenth', () => {
  it('is said as it was measured, wherever wedges are sewn', () => {
    const project = changed('harbour-reading-corner', ({ wedge }) => {
      wedge.assemblySeam = 0.2978;
    });
    const text = textOf(project, ['cover', 'blocks', 'templates']);
    expect(text).toContain(bare('Sew the wedges with a 0.298" seam'));
    expect(text).toContain(bare('0.298" between wedges, 1/4" round the blocks'));
    expect(text).toContain(bare('the dashed line is the seam, 0.298" on the long sides'));
    expect(text).not.toContain(bare('5/16" seam'));
  });

  it('is said in millimetres with centimetres', () => {
    const project = changed('harbour-reading-corner', ({ wedge, preferences }) => {
      wedge.assemblySeam = 0.2978;
      preferences.unit = 'cm';
    });
    const text = textOf(project, ['cover', 'blocks']);
    // 0.2978 × 25.4 = 7.56; a quarter inch is 6.35.
    expect(text).toContain(bare('Sew the wedges with a 7.6 mm seam'));
    expect(text).toContain(bare('6.4 mm round the blocks'));
  });
});

describe('finishing', () => {
  it.each(['none', 'around'] as const)('trims the layers before it binds, with sashing %s', (where) => {
    const project = changed('keepers-winter', ({ setting, fabrics }) => {
      setting.sashing.where = where;
      setting.binding = { fabric: fabrics[0]!.id, cutWidth: 2.5 };
    });
    const text = textOf(project, ['setting']);
    const trim = text.indexOf(bare('Trim batting and backing even with the edge of the top'));
    expect(trim).toBeGreaterThan(text.indexOf(bare('Baste from the middle')));
    expect(text.indexOf(bare('Cut strips of'))).toBeGreaterThan(trim);
  });

  it('joins a backing of several widths, the pieced one first', () => {
    const project = changed('keepers-winter', ({ buying }) => {
      buying.backing.pieced = true;
    });
    const { layout } = yardage(project, 'whole').backing!;
    expect(layout).toMatchObject({ run: 'across', widths: 3, sections: 4 });
    const text = textOf(project, ['setting']);
    const order = [
      'Cut the selvages off every length',
      // The top is 58" × 73 1/2" as sewn, the back 66" × 81 1/2": two widths show 39" each, 3 1/2" are left. Four pieces of
      // 17 1/4" less three seams of 1" are 66".
      'sew its 4 pieces, 3 1/2" × 17 1/4", end to end with a 1/2" seam to one length of 66"',
      'one after the other and the pieced one last, from the middle outwards, and sew each with a 1/2" seam',
      'Press these seams open, so that they lie flat under the quilting. They run across the quilt.',
      'Trim the back to 66" × 81 1/2"',
    ].map((words) => text.indexOf(bare(words)));
    expect(order.map((at) => at >= 0)).toEqual(order.map(() => true));
    expect(order).toEqual(order.toSorted((one, other) => one - other));
  });

  it('has nothing to join in a backing of one width', () => {
    const project = changed('keepers-winter', ({ buying }) => {
      buying.backing.width = 108;
    });
    const text = textOf(project, ['setting']);
    expect(text).toContain(bare('One width is wide enough, so nothing is joined.'));
    expect(text).not.toContain(bare('Pin both lengths'));
  });

  it.each(['letter', 'a4'] as const)(
    'keeps the steps of the binding on one page of %s',
    (paper) => {
      for (const project of [onPoint(), onPoint(({ setting }) => setting.borders.splice(0))]) {
        const pages = pagesOf(project, ['setting'], paper);
        const first = pages.findIndex((page) => page.includes(bare('Join them at 45 degrees to one length')));
        expect(pages[first]).toContain(bare('Fold it over the edge'));
        expect(pages[first]).toContain(bare('Binding1Cut strips of'));
      }
    },
    LONG,
  );

  it('names only batting sizes that public charts agree on', () => {
    const names = battingFor(10, 10).map((one) => one.name);
    expect(names).toEqual(['Crib', 'Twin', 'Full', 'Queen', 'King']);
  });
});

describe('rows on point', () => {
  it('run aslant, every square in one row, with a triangle or a corner at both ends', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 6 }), fc.integer({ min: 1, max: 6 }), (rows, columns) => {
        const project = onPoint(({ wall }) => {
          const cells = rows * columns + (rows - 1) * (columns - 1);
          Object.assign(wall, { rows, columns, cells: Array.from({ length: cells }, () => null) });
        });
        const found = slantedRows(project);
        expect(found).toHaveLength(rows + columns - 1);
        const cells = found.flat().flatMap((entry) => (typeof entry === 'object' ? [entry.cell] : []));
        expect(cells.toSorted((one, other) => one - other)).toEqual([...project.wall.cells.keys()]);
        for (const row of found) {
          expect(typeof row[0]).toBe('string');
          expect(typeof row.at(-1)).toBe('string');
          expect(row.slice(1, -1).every((entry) => typeof entry === 'object')).toBe(true);
        }
        // The drawing has as many side triangles; the corners of the first and last places are in no row.
        const drawn = layOut(project).pieces.filter((piece) => piece.part === 'side').length;
        expect(found.flat().filter((entry) => entry === 'side')).toHaveLength(drawn);
        // Along a row the middles go down and to the right by as much.
        const { centres } = layOut(project);
        for (const row of found) {
          const middles = row.flatMap((entry) => (typeof entry === 'object' ? [centres[entry.cell]!] : []));
          for (const [index, { x, y }] of middles.slice(1).entries()) {
            expect(x - middles[index]!.x).toBeGreaterThan(0);
            expect(x - middles[index]!.x).toBeCloseTo(y - middles[index]!.y, 9);
          }
        }
      }),
      { seed: 5, numRuns: runs(14, 40) },
    );
  });

  it('are written row by row, and the cards and the drawing of the rows go by them', () => {
    const project = onPoint();
    const pages = pagesOf(project, ['blocks', 'setting']);
    const map = pages.filter((page) => page.startsWith('Mapofthewall')).join('');
    expect(map).toContain(bare('1 side triangle · 3 upside down · side triangle'));
    expect(map).toContain(bare('2 side triangle · 2 turned right · 11 · 6 turned right · side triangle'));
    expect(map).toContain(bare('empty'));
    const cell = project.wall.cells.findIndex((one) => one?.block === 'b11');
    expect(slantedPlace(cell, project)).toEqual({ row: 2, place: 2 });
    expect(pages.join('')).toContain(bare('Block 11 diagonal row 2, square 2 of the wall'));
    const setting = pages.find((page) => page.startsWith('Settingthetop'))!;
    for (const row of [1, 2, 3, 4, 5]) expect(setting).toContain(`row${row}`);
  });

  it('show plain squares in their turn', () => {
    const project = onPoint(({ setting, wall, fabrics }) => {
      setting.plain = { fabric: fabrics[4]!.id, cells: 'second' };
      wall.cells = wall.cells.map((cell, index) => (index < 9 ? cell : null));
    });
    const text = textOf(project, ['blocks']);
    expect(text).toContain(bare('2 turned right · plain square · 6 turned right'));
  });
});

/** Blocks of the demo quilt in another setting, with letters, cornerstones of two sizes or slanted strips. */
const SETTINGS: Readonly<Record<string, (project: Project) => void>> = {
  'straight, whole strips': ({ setting }) => {
    setting.borders.splice(0);
  },
  'straight, gaps of several widths and cornerstones': ({ setting, fabrics }) => {
    Object.assign(setting.sashing, {
      cornerstones: fabrics[4]!.id,
      columnGaps: [{ after: 2, width: 3 }],
      rowGaps: [{ after: 1, width: 1 }],
    });
  },
  'on point, whole strips': ({ setting }) => {
    Object.assign(setting.sashing, { where: 'around', width: 1.5 });
    setting.borders.splice(0);
  },
  'on point, cornerstones': ({ setting, fabrics }) => {
    Object.assign(setting.sashing, { where: 'around', width: 1.5, cornerstones: fabrics[4]!.id });
  },
  'on point, no sashing': ({ setting }) => {
    setting.sashing.where = 'none';
    setting.borders.splice(0);
  },
};

describe.each(Object.entries(SETTINGS))('the steps of setting the top, %s', (name, change) => {
  const inUnit = (unit: 'in' | 'cm') => {
    const project = name.startsWith('on point') ? onPoint(change) : changed('keepers-winter', change);
    project.preferences.unit = unit;
    return project;
  };
  const wordsOf = (project: Project) => {
    const fabrics = new Map(project.fabrics.map((fabric) => [fabric.id, fabric]));
    const drawing = drawProject(project);
    const all = { project, drawing, yardage: yardage(project, 'whole'), fabrics, say: sayIn(project), type, terms: [] };
    return settingWords(sewingSteps(project), all);
  }; // biome-ignore format: a writing

  /** B · 2 × (C · block) back to single words. */
  const spelt = (words: string) =>
    [...words.matchAll(/(?:(\d+) × )?(?:\(([^)]*)\)|(empty place|[A-Za-z]+))/g)].flatMap(
      ([, times, group, one]) =>
        Array.from({ length: Number(times ?? 1) }, () => (group ?? one!).split(' · ')).flat(),
    );
  const numbers = (words: string) => {
    const range = /^(\d+) to (\d+)$/.exec(words);
    if (!range) return words.match(/\d+/g)!.map(Number);
    const [first, last] = [Number(range[1]), Number(range[2])];
    return Array.from({ length: last - first + 1 }, (_, index) => first + index);
  };
  const partsOf = ({ parts }: Line, { wall }: Project) =>
    parts.map((part) =>
      part.kind !== 'block' ? part.cut.letter : wall.cells[part.cell] ? 'block' : 'empty place',
    );

  it('name every part of every row and of the sashing in its order', () => {
    const project = inUnit('in');
    const words = wordsOf(project).join('\n');
    for (const step of sewingSteps(project)) {
      if (step.does !== 'rows' && step.does !== 'sashing') continue;
      const label = step.does === 'rows' ? /^Rows? ([^:]*): (.*)$/gm : /^Sashing ([^:]*): (.*)$/gm;
      const read = [...words.matchAll(label)].flatMap(([, where, parts]) => {
        const own =
          step.does === 'rows'
            ? numbers(where!)
            : [...(where!.startsWith('before') ? [0] : []), ...numbers(where!.replace('before row 1', ''))];
        return own.map((number) => ({ number, parts: spelt(parts!) }));
      });
      const wanted = step.lines.map((line) => ({ number: line.number, parts: partsOf(line, project) }));
      const blocksOnly = wanted.every(({ parts }) => parts.every((part) => part === 'block'));
      read.sort((one, other) => one.number - other.number);
      expect(read).toEqual(blocksOnly ? [] : wanted);
    }
  });

  it.each(['in', 'cm'] as const)('stand in the file with sizes of the cutting list, in %s', (unit) => {
    const project = inUnit(unit);
    const text = textOf(project, ['setting']);
    for (const words of wordsOf(project)) expect(text).toContain(bare(words));
    const say = sayIn(project);
    const rows = neededPieces(project, 'whole').filter((row) => row.letter !== undefined);
    expect(new Set(rows.map((row) => row.letter)).size).toBe(rows.length);
    for (const row of rows) {
      const fabric = project.fabrics.find((one) => one.id === row.fabric)!.name;
      expect(text).toContain(bare(`${say(row.what)}: ${say(pieceWords(row))} of ${fabric}.`));
    }
  });

  it('have their letters on the drawing, in every line they are sewn into', () => {
    const project = inUnit('in');
    const { pages } = written(project, 'letter', ['setting']);
    const found = pages.flatMap(({ marks }) => marks.map((mark) => (mark.kind === 'text' ? mark.text : '')));
    const steps = sewingSteps(project);
    const lines = steps.flatMap((step) => (step.does === 'join' ? step.joined.map(({ line }) => line) : []));
    const rows = neededPieces(project, 'whole').filter((row) => row.letter !== undefined);
    for (const { letter } of rows) {
      const corners = steps.flatMap((step) => (step.does === 'corners' ? step.corners : []));
      const own = lines.filter((line) => partsOf(line, project).includes(letter!)).length;
      const cornersOwn = corners.filter(({ cut }) => cut.letter === letter).length;
      expect(own + cornersOwn).toBeGreaterThan(0);
      expect(found.filter((word) => word === letter).length).toBeGreaterThanOrEqual(own + cornersOwn);
    }
  });
});

describe('where the top on point is trimmed', () => {
  const trimmed = (change: (project: Project) => void) => textOf(onPoint(change), ['setting']);
  const sashed = (project: Project) =>
    Object.assign(project.setting.sashing, { where: 'around', width: 1.5 });

  it('is a seam outside the points of the blocks, and with sashing as much further as it reaches', () => {
    const none = trimmed(({ setting }) => {
      setting.sashing.where = 'none';
    });
    expect(none).toContain(bare('Trim all four edges 1/4" outside the points of the blocks'));
    // 1 1/2" / √2 = 1.0607, and 1/4": 1.3107, 1 5/16" on the ruler.
    const strips = trimmed(sashed);
    expect(strips).toContain(bare('Trim all four edges 1 5/16" outside the points of the blocks'));
    expect(strips).toContain(bare('through the middle of the sashing where it ends on the edge'));
    const stones = trimmed((project) => {
      sashed(project).cornerstones = project.fabrics[4]!.id;
    });
    expect(stones).toContain(bare('through the middle of the cornerstones on the edge'));
  });
});

describe('corner pieces', () => {
  it.each([6, 8, 10, 12] as const)(
    'of a block of %i are set in only where they have an inward corner',
    (perBlock) => {
      const project = randomProject(3, perBlock, 2, 2);
      const text = textOf(project, PATTERN_PARTS);
      const setIn = perBlock >= 10;
      expect(text.includes(bare('Setting in a corner piece'))).toBe(setIn);
      expect(text.includes(bare('Sew from the outside to the dot, not a stitch further'))).toBe(setIn);
      expect(text.includes(bare('Mark the dot on the wrong side: there its two seams meet'))).toBe(setIn);
      expect(text.includes(bare('half of them on one diagonal and half on the other'))).toBe(perBlock === 6);
      expect(text.toLowerCase()).not.toContain('octagon');
    },
    LONG,
  );
});

describe('a pieced border', () => {
  const pieced = (keys: { fabric: string; width: number }[]) => {
    const project = randomProject(4, 8, 2, 2);
    const borders = [{ fabric: 'a', width: 3, keys }];
    return { ...project, setting: { ...project.setting, borders } };
  };

  it('is written side by side, every piece in its order', () => {
    const project = pieced([
      { fabric: 'a', width: 2.5 },
      { fabric: 'b', width: 2.5 },
      { fabric: 'c', width: 1.5 },
    ]);
    const text = textOf(project, ['setting']);
    const { pieces } = layOut(project);
    const names = new Map(project.fabrics.map((fabric) => [fabric.id, fabric.name]));
    for (const [side, words] of [
      ['top', 'Top, from left to right'],
      ['right', 'Right side, from the top down'],
      ['bottom', 'Bottom, from right to left'],
      ['left', 'Left side, from the bottom up'],
    ] as const) {
      const written = text.split(bare(`${words}:`))[1]!.split('.')[0]!;
      const run = pieces
        .filter((piece) => piece.side === side)
        .map((piece) => bare(names.get(piece.fabric)!));
      const read = [...written.matchAll(/(\d+)×\(([^)]*)\)|([^·]+)/g)].flatMap(([, times, group, one]) =>
        group ? Array.from({ length: Number(times) }, () => group.split('·')).flat() : [one!],
      );
      expect(read.map((one) => one.replace(/^\d+×/, '').slice(0, run[0]!.length))).toEqual(run);
    }
  });

  it('names the side in every row of the cutting list', () => {
    const project = pieced([
      { fabric: 'a', width: 2.5 },
      { fabric: 'b', width: 2.5 },
    ]);
    const say = sayIn(project);
    const rows = neededPieces(project, 'whole').filter((row) => row.step === 'borders');
    const { pieces } = layOut(project);
    for (const [side, words] of [
      ['top', 'top'],
      ['right', 'right side'],
      ['bottom', 'bottom'],
      ['left', 'left side'],
    ]) {
      const own = rows.filter((row) => say(row.what) === `Pieces of border 1, ${words}`);
      const count = own.reduce((sum, row) => sum + row.count, 0);
      expect(count).toBe(pieces.filter((piece) => piece.side === side).length);
    }
  });

  it('counts groups that come again, and loses no piece', () => {
    expect(inGroups(['a', 'b', 'a', 'b', 'a', 'b', 'c', 'c'])).toBe('3 × (a · b) · 2 × c');
    expect(inGroups(['a', 'b', 'c'])).toBe('a · b · c');
    fc.assert(
      fc.property(fc.array(fc.constantFrom('a', 'b', 'c'), { maxLength: 60 }), (words) => {
        const read = [...inGroups(words).matchAll(/(?:(\d+) × )?(?:\(([^)]*)\)|([abc]))/g)].flatMap(
          ([, times, group, one]) =>
            Array.from({ length: Number(times ?? 1) }, () => (group ?? one!).split(' · ')).flat(),
        );
        expect(read).toEqual(words);
      }),
      { seed: 9 },
    );
  });
});

describe('several borders', () => {
  it('are listed from the inside out, each with its own cornerstones', () => {
    const project = changed('keepers-winter', ({ setting }) => {
      const fabrics = [setting.borders[0]!.fabric, setting.cornerFabric, setting.borders[0]!.fabric];
      setting.borders = fabrics.map((fabric, at) => ({
        fabric,
        width: 1 + at,
        corners: { kind: 'cornerstones' as const, fabric: fabrics[(at + 1) % 3]! },
      }));
    });
    const text = textOf(project, ['setting']);
    const orderOf = (sentence: RegExp) => [...text.matchAll(sentence)].map(([, border]) => Number(border));
    const listed = orderOf(/(?:Cornerstonesofb|B)order(\d)(?:,sides|,topandbottom)?:\d+(?:pieces|squares)/g);
    expect(listed).toEqual([1, 1, 1, 2, 2, 2, 3, 3, 3]);
    expect(orderOf(/Border(\d),sides;/g)).toEqual([1, 2, 3]);
  });
});

describe('a mitred border', () => {
  const mitred = (spare?: number) =>
    changed('keepers-winter', ({ setting }) => {
      const corners = spare === undefined ? { kind: 'mitred' as const } : { kind: 'mitred' as const, spare };
      setting.borders = [{ fabric: setting.borders[0]!.fabric, width: 4, corners }];
    });
  const sides = (project: Project) =>
    neededPieces(project, 'whole').find((row) => row.what.say === 'Border {border}, sides')!;

  it('is cut longer by what is to spare at each end: two inches unless another is given', () => {
    const [usual, bareEnds, long] = [mitred(), mitred(0), mitred(3.5)].map(sides);
    const { height } = layOut(mitred());
    // A seam s round a point of 45 degrees reaches s(1 + √2) past it (plane geometry), 0.604 of a quarter: 1 1/4 at both
    // ends once it is on the ruler.
    expect(bareEnds!.height).toBeCloseTo(height + 1.25, 6);
    expect(usual!.height).toBeCloseTo(height + 1.25 + 4, 6);
    expect(long!.height).toBeCloseTo(height + 1.25 + 7, 6);
    expect(usual!.width).toBe(bareEnds!.width);
    const say = sayIn(mitred());
    expect(usual!.why.map((one) => say(one)).join(' ')).toContain(
      'at each end 5/8" for the seam round the point and 2" to spare',
    );
  });

  it('says in the pattern what hangs over', () => {
    expect(textOf(mitred(3.5), ['setting'])).toContain(
      bare('each end has 3 1/2" to spare beyond the seam round its point.'),
    );
    expect(textOf(mitred(0), ['setting'])).toContain(
      bare('Sew on all four sides by their middles, stopping'),
    );
  });
});

describe('the wedge template', () => {
  it('says how its lines and its tip are used', () => {
    const text = textOf(demo('harbour-reading-corner'), ['templates']);
    expect(text).toContain(bare('keep the thin lines level with its seams'));
    // 2t tan 22.5°, t = 1/4 (1/sin 22.5° − 1): 0.3341.
    expect(text).toContain(bare('trimmed tip 5/16" wide'));
  });
});

describe('washed cloth', () => {
  it('is reckoned by its width after washing, and loses length', () => {
    const project = changed('keepers-winter', ({ buying }) => {
      buying.shrinkage = 4;
    });
    const text = textOf(project, ['materials']);
    expect(text).toContain(
      bare('usable width of 40" after washing; 4% of its length is allowed for shrinkage'),
    );
    const dry = yardage(demo('keepers-winter'), 'whole').fabrics;
    for (const [index, one] of yardage(project, 'whole').fabrics.entries()) {
      if (one.buy.kind === 'length' && dry[index]!.buy.kind === 'length') {
        expect(one.layout).toEqual(dry[index]!.layout);
        expect(one.why.map((why) => why.say).join(' ')).toContain('The width is measured after washing.');
      }
    }
  });
});

describe('a maker with the pattern alone', () => {
  const small = (rows: number, columns: number, change: (project: Project) => void = () => undefined) =>
    changed('keepers-winter', (project) => {
      const { wall, setting } = project;
      project.wall = { rows, columns, cells: wall.cells.filter((cell) => cell).slice(0, rows * columns) };
      setting.sashing.where = 'none';
      setting.plain = null;
      setting.borders.splice(0);
      change(project);
    });

  it(
    'reads of rows beside each other only where there are several, and of joining blocks only where a row has several',
    () => {
      for (const [rows, columns] of [[1, 1], [1, 2], [1, 3], [2, 1], [3, 1], [2, 2]] as const) {
      const text = textOf(small(rows, columns), ['setting']);
      const told = { size: [rows, columns], rows: /oddrows|eachrow/.test(text), blocks: /Sewtheblocks/.test(text), joined: /Sewtherows/.test(text) };
      expect(told).toEqual({ size: [rows, columns], rows: rows > 1 && columns > 1, blocks: columns > 1, joined: rows > 1 });
    } // biome-ignore format: cases
    },
    LONG,
  );

  it('reads of letters and of sizes to cut only where there are such pieces', () => {
    const bordered = small(1, 2, ({ setting, fabrics }) => {
      setting.borders = [{ fabric: fabrics[1]!.id, width: 3 }];
    });
    const cases = { none: small(1, 2), bordered, sashed: demo('keepers-winter') };
    const told = Object.entries(cases).map(([name, project]) => {
      const text = textOf(project, ['setting']);
      return [name, text.includes(bare('Letters are those')), text.includes(bare('Sizes to cut are rounded up'))];
    });
    expect(told).toEqual([['none', false, false], ['bordered', false, true], ['sashed', true, true]]);
  }, LONG); // biome-ignore format: cases

  it('is told to press the seams of every border', () => {
    const corners = [null, { kind: 'mitred' as const }, { kind: 'mitred' as const, spare: 0 }, { kind: 'cornerstones' as const }];
    for (const one of corners) {
      for (const ends of [undefined, 5]) {
        const project = small(1, 2, ({ setting, fabrics }) => {
          const [, fabric] = fabrics.map(({ id }) => id);
          const made = one?.kind === 'cornerstones' ? { ...one, fabric: fabric! } : one;
          setting.borders = [{ fabric: fabric!, width: 3, ...(ends ? { ends } : {}), ...(made ? { corners: made } : {}) }];
        });
        const text = textOf(project, ['setting']);
        expect(text.slice(text.indexOf('Border1,of')), JSON.stringify([one, ends])).toMatch(/[Pp]ress(outwards|everyseamtowardstheborder)/);
      }
    }
  }, LONG); // biome-ignore format: cases

  it.each([6, 8, 10, 12] as const)('joins every wedge of a block of %i to a half, and calls corners by the name of their template', (perBlock) => {
    const project = randomProject(7, perBlock);
    const text = textOf(project, ['blocks']);
    const [, pairs, single] = /Join(a|two|three)pairs?(andasinglewedge)?toeachhalf.Checkthatthelongedgeisstraight/.exec(text) ?? [];
    expect(2 * ['', 'a', 'two', 'three'].indexOf(pairs ?? '') + (single ? 1 : 0)).toBe(perBlock / 2);
    const named = /Corner(triangle|piece)Cut/.exec(textOf(project, ['templates']))?.[1];
    expect(named).toBeDefined();
    expect(text).toMatch(new RegExp(`(Sewthecorner${named}s|Setacorner${named})`));
    expect(text).not.toMatch(/place\d+ofthewall/);
  }, LONG); // biome-ignore format: a case

  it.each(['in', 'cm'] as const)('reads the height of the backing clear of its edge, and of one length where there is one, in %s', (unit) => {
    for (const [rows, columns] of [[1, 2], [2, 1], [3, 3]] as const) {
      const project = { ...small(rows, columns), unit };
      const say = sayIn(project);
      const marks = partMarks(written(project, 'letter', ['setting']).pages, 'Finishing');
      const panels = marks.flatMap((mark) => (mark.kind === 'shape' && JSON.stringify(mark.fill) === JSON.stringify(ink(WASH)) ? mark.outlines.flat() : []));
      const left = Math.min(...panels.map(({ x }) => x));
      const { size, widths } = yardage(project, 'whole').backing!.layout;
      const height = say('{length}', { length: { inches: size.height } });
      const [top, bottom] = [Math.min(...panels.map(({ y }) => y)), Math.max(...panels.map(({ y }) => y))];
      const beside = marks.filter((mark) => mark.kind === 'text').filter(({ at, text }) => text !== 'top' && at.y > top && at.y < bottom);
      const starts = Math.min(...beside.map(({ at }) => at.x));
      // The white under the figure reaches 0.04" further than its letters.
      expect(starts + textWidth(height, STYLES.labelStrong, type) + 0.04).toBeLessThan(left);
      const told = yardage(project, 'whole').backing!.layout.why.map((why) => say(why)).join(' ');
      expect(told).toMatch(widths === 1 ? /The length runs/ : /The lengths run/);
    }
  }); // biome-ignore format: a case
});
