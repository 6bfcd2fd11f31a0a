// The templates as they come out of the printer: the PDF is read back by PDF.js and measured from its path operators.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cornerSquare, settingSquares } from '../../../src/cutting/yardage/triangleSquares';
import { cornerLeg, cornerOutlines } from '../../../src/geometry/block';
import { cutWedge, finishedBlock, wedgeProblem } from '../../../src/geometry/wedge';
import { createProject } from '../../../src/model/create';
import { type Project, WEDGE_COUNTS } from '../../../src/model/project';
import { formatLength } from '../../../src/model/units';
import { runs } from '../../runs';
import { randomProject } from '../samples';
import { makePdf } from './makePdf';
import { bare, type ReadPage, type ReadPath, readPdf } from './readPdf';

const POINTS = 72;
/** What a maker can see on a ruler, inches. */
const CLOSE = 0.01;

function planned(wedge: Partial<Project['wedge']>, unit: 'in' | 'cm' = 'in'): Project {
  const project = createProject('p', 'Test of templates');
  return {
    ...project,
    wedge: { ...project.wedge, ...wedge },
    preferences: { ...project.preferences, unit },
  };
}

async function templates(project: Project, paper: 'a4' | 'letter') {
  const pdf = await readPdf(makePdf(project, paper, ['templates']).bytes);
  const titled = (title: string) => pdf.pages.filter((page) => page.text.startsWith(title));
  return { pdf, check: pdf.pages[0]!, wedges: titled('Wedge'), corners: titled('Corner') };
}

function size(path: ReadPath): { width: number; height: number } {
  const xs = path.points.map(([x]) => x);
  const ys = path.points.map(([, y]) => y);
  return { width: Math.max(...xs) - Math.min(...xs), height: Math.max(...ys) - Math.min(...ys) };
}

/** The stroked path with the most room inside it that comes back to its start. */
function cutLine(page: ReadPage): ReadPath {
  const closed = page.paths.filter(({ painted, points }) => {
    const [first, last] = [points[0]!, points.at(-1)!];
    return painted === 'stroke' && points.length > 3 && distance(first, last) < 0.01;
  });
  const room = (path: ReadPath) => size(path).width * size(path).height;
  return closed.reduce((best, path) => (room(path) > room(best) ? path : best));
}

function distance(one: readonly [number, number], other: readonly [number, number]): number {
  return Math.hypot(one[0] - other[0], one[1] - other[1]);
}

/** Lengths of the sides in inches. */
function sides({ points }: ReadPath): number[] {
  return points.slice(1).map((point, index) => distance(points[index]!, point) / POINTS);
}

describe('the templates of the pattern', () => {
  it.each([
    ['a4', 210 / 25.4, 297 / 25.4],
    ['letter', 8.5, 11],
  ] as const)('lie on pages of exactly %s', async (paper, width, height) => {
    // A4: ISO 216, 210 × 297 mm. Letter: ANSI/ASME Y14.1 size A, 8.5 × 11 in.
    const { pdf } = await templates(planned({}), paper);
    for (const page of pdf.pages) {
      expect(page.width).toBeCloseTo(width * POINTS, 3);
      expect(page.height).toBeCloseTo(height * POINTS, 3);
    }
  });

  it('ask the viewer not to scale them', async () => {
    const { pdf } = await templates(planned({}), 'a4');
    expect(pdf.printScaling).toBe('None');
  });

  it.each(['a4', 'letter'] as const)('have a square of 1 inch and one of 5 cm on %s', async (paper) => {
    const { check } = await templates(planned({}), paper);
    const squares = check.paths.filter(({ painted, points }) => painted === 'stroke' && points.length === 4);
    expect(squares).toHaveLength(2);
    const [inch, five] = squares.map(size);
    // 72 points to the inch (ISO 32000), 2.54 cm to the inch.
    expect(inch!.width).toBeCloseTo(72, 2);
    expect(inch!.height).toBeCloseTo(72, 2);
    expect(five!.width).toBeCloseTo((72 * 5) / 2.54, 2);
    expect(five!.height).toBeCloseTo((72 * 5) / 2.54, 2);
  });

  it('give the 7 1/2 inch wedge of eight its base of 6.5473 and its tip of 0.3341', async () => {
    // Plane geometry: b = 2(h + t) tan 22.5°, tip 2t tan 22.5°, t = 1/4 (1/sin 22.5° − 1), worked by hand.
    const { wedges } = await templates(planned({}), 'letter');
    const [base, right, tip, left] = sides(cutLine(wedges[0]!));
    expect(base).toBeCloseTo(6.5473, 3);
    expect(tip).toBeCloseTo(0.3341, 3);
    expect(size(cutLine(wedges[0]!)).height / POINTS).toBeCloseTo(7.5, 3);
    // Legs by Pythagoras from the other three.
    expect(right).toBeCloseTo(Math.hypot(7.5, (6.5473 - 0.3341) / 2), 3);
    expect(left).toBeCloseTo(right!, 3);
  });

  it('give every wedge that fits a sheet its computed base, height and tip', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.record({
          perBlock: fc.constantFrom(...WEDGE_COUNTS),
          cutHeight: fc.integer({ min: 48, max: 140 }).map((sixteenths) => sixteenths / 16),
          seam: fc.constantFrom(0.25, 0.3125, 0.375),
          unit: fc.constantFrom('in' as const, 'cm' as const),
        }),
        async ({ perBlock, cutHeight, seam, unit }) => {
          const project = planned({ perBlock, cutHeight, seam, assemblySeam: seam }, unit);
          fc.pre(wedgeProblem(project.wedge) === null && cutWedge(project.wedge).base < 7);
          const { wedges } = await templates(project, 'a4');
          expect(wedges).toHaveLength(1);
          const line = cutLine(wedges[0]!);
          const [base, , tip] = sides(line);
          const cut = cutWedge(project.wedge);
          expect(Math.abs(base! - cut.base)).toBeLessThan(CLOSE);
          expect(Math.abs(tip! - cut.tip)).toBeLessThan(CLOSE);
          expect(Math.abs(size(line).height / POINTS - cutHeight)).toBeLessThan(CLOSE);
        },
      ),
      { seed: 41, numRuns: runs(5, 25) },
    );
  });

  it('give the corner triangle its finished leg and a seam all round', async () => {
    const project = planned({});
    const { corners } = await templates(project, 'letter');
    const line = cutLine(corners[0]!);
    // A right isosceles triangle a seam s larger all round has legs longer by s(2 + √2): plane geometry.
    const leg = cornerLeg(project.wedge) + 0.25 * (2 + Math.SQRT2);
    expect(Math.abs(size(line).width / POINTS - leg)).toBeLessThan(CLOSE);
    expect(Math.abs(size(line).height / POINTS - leg)).toBeLessThan(CLOSE);
    // 4.1005 + 0.8536, the "leg + 7/8" of common practice (no source) to the next eighth.
    expect(leg).toBeCloseTo(4.954, 3);
  });

  it.each([6, 10, 12] as const)(
    'have the corner piece of a block of %i with its seam line inside',
    async (perBlock) => {
      const project = planned({ perBlock });
      const { corners } = await templates(project, 'letter');
      expect(corners).toHaveLength(1);
      const finished = cornerOutlines(project.wedge)[0]!;
      const wanted = finished.map((point, index) => {
        const next = finished[(index + 1) % finished.length]!;
        return Math.hypot(next.x - point.x, next.y - point.y);
      });
      const lines = corners[0]!.paths
        .filter(({ painted, points }) => painted === 'stroke' && points.length === finished.length + 1)
        .map(sides);
      expect(lines).toHaveLength(2);
      const off = lines.map((line) =>
        Math.max(...line.map((side, index) => Math.abs(side - wanted[index]!))),
      );
      expect(Math.min(...off)).toBeLessThan(CLOSE);
    },
  );

  it.each([
    ['a4', 6, 12],
    ['letter', 6, 14],
    ['a4', 8, 18],
    ['letter', 12, 30],
  ] as const)(
    'run over several sheets of %s for a block of %i and %i inches, joined by their crosses',
    async (paper, perBlock, cutHeight) => {
      const project = planned({ perBlock, cutHeight });
      const { wedges } = await templates(project, paper);
      expect(wedges.length).toBeGreaterThan(1);
      const joined = laidTogether(wedges);
      const { base, tip } = cutWedge(project.wedge);
      const xs = joined.map(([x]) => x);
      const ys = joined.map(([, y]) => y);
      const [left, right, bottom, top] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
      expect(Math.abs((right - left) / POINTS - base)).toBeLessThan(CLOSE);
      expect(Math.abs((top - bottom) / POINTS - cutHeight)).toBeLessThan(CLOSE);
      const above = joined.filter(([, y]) => top - y < 0.01).map(([x]) => x);
      expect(Math.abs((Math.max(...above) - Math.min(...above)) / POINTS - tip)).toBeLessThan(CLOSE);
    },
  );

  it.each([
    [8, 'letter'],
    [8, 'a4'],
    [12, 'letter'],
  ] as const)(
    'on point have the setting triangles of a block of %i at true size on %s',
    async (perBlock, paper) => {
      const project = onPoint(perBlock);
      const { pdf } = await templates(project, paper);
      const block = finishedBlock(project.wedge).width;
      // Right isosceles triangles with a seam s all round: the long side grows by s(2 + 2√2), a short one by s(2 + √2).
      const long = block * Math.SQRT2 + 0.25 * (2 + 2 * Math.SQRT2);
      const short = block * Math.SQRT1_2 + 0.25 * (2 + Math.SQRT2);
      for (const [title, width, height] of [
        ['Sidetriangle', long, long / 2],
        ['Settingcorner', short, short],
      ] as const) {
        const pages = pdf.pages.filter((page) => page.text.startsWith(title));
        expect(pages.length).toBeGreaterThan(1);
        const joined = laidTogether(pages);
        const [xs, ys] = [joined.map(([x]) => x), joined.map(([, y]) => y)];
        expect(Math.abs((Math.max(...xs) - Math.min(...xs)) / POINTS - width)).toBeLessThan(CLOSE);
        expect(Math.abs((Math.max(...ys) - Math.min(...ys)) / POINTS - height)).toBeLessThan(CLOSE);
      }
    },
  );

  it('have letters of their own on the crosses of each, so that no sheet is joined to one of another template', async () => {
    const perBlock = fc.constantFrom(...WEDGE_COUNTS);
    const cutHeight = fc.constantFrom(10, 14, 18, 24);
    const settings = fc.record({ perBlock, cutHeight, onPoint: fc.boolean(), paper: fc.constantFrom('a4' as const, 'letter' as const) });
    let joined = 0;
    await fc.assert(
      fc.asyncProperty(settings, async (one) => {
        const slanted = one.onPoint && (one.perBlock === 8 || one.perBlock === 12);
        const plain = planned({ perBlock: one.perBlock, cutHeight: one.cutHeight });
        const point = onPoint(one.perBlock === 12 ? 12 : 8);
        const project = slanted ? { ...point, wedge: { ...point.wedge, cutHeight: one.cutHeight } } : plain;
        fc.pre(wedgeProblem(project.wedge) === null);
        const { pdf } = await templates(project, one.paper);
        const owners = new Map<string, string>();
        for (const page of pdf.pages) {
          const title = /^(.*?):sheet\d/.exec(page.text)?.[1];
          if (title === undefined) continue;
          joined += 1;
          for (const name of crosses(page).keys()) {
            expect(owners.get(name) ?? title, name).toBe(title);
            owners.set(name, title);
          }
        }
      }),
      { numRuns: runs(5, 25) },
    );
    expect(joined).toBeGreaterThan(runs(4, 30));
  }, 600_000); // biome-ignore format: one law

  it('on point say how many triangles to cut from which fabric, as many as the top has', async () => {
    const project = onPoint(8);
    const { pdf } = await templates(project, 'letter');
    const text = pdf.pages.map((page) => page.text).join('');
    // Two rows of three blocks on point: two side triangles at top and foot, one at each side, four corners.
    expect(text).toContain(bare('Cut 6 of Cloth a.'));
    expect(text).toContain(bare('Cut 4 of Cloth b.'));
    const straight: Project = { ...project, setting: { ...project.setting, layout: { kind: 'straight' } } };
    const other = await templates(
      { ...straight, wall: { ...project.wall, cells: project.wall.cells.slice(0, 6) } },
      'letter',
    );
    expect(other.pdf.pages.some((page) => /^(Side|Setting)/.test(page.text))).toBe(false);
  });

  it.each(['in', 'cm'] as const)(
    'and the cutting list give the squares the steps give, in %s',
    async (unit) => {
      const quilt = onPoint(8);
      const project = { ...quilt, preferences: { ...quilt.preferences, unit } };
      const pdf = await readPdf(makePdf(project, 'a4', ['materials', 'templates']).bytes);
      const text = pdf.pages.map((page) => page.text).join('');
      const { side, corner } = settingSquares(project.wedge, unit);
      const shown = (inches: number) => formatLength(inches, unit);
      expect(text).toContain(bare(`Squares of ${shown(side)} cut twice from corner to corner`));
      expect(text).toContain(bare(`Squares of ${shown(corner)} halved`));
      const square = cornerSquare(project.wedge, unit)[project.buying.corners];
      for (const size of [side, corner, square]) expect(text).toContain(bare(`squares ${shown(size)}`));
    },
  );
});

/** Two rows of three blocks on point, side triangles of cloth a and setting corners of cloth b. */
function onPoint(perBlock: 8 | 12): Project {
  const sample = randomProject(4, perBlock, 2, 3);
  const layout = { kind: 'onPoint', sides: 'a', corners: 'b' } as const;
  return {
    ...sample,
    setting: { ...sample.setting, layout, sashing: { ...sample.setting.sashing, where: 'none' } },
    wall: { ...sample.wall, cells: [...sample.wall.cells, null, null] },
  };
}

/** Where the lettered crosses of a sheet stand: the letter's place, which lies beside its cross on every sheet alike. */
function crosses(page: ReadPage): Map<string, readonly [number, number]> {
  const found = new Map<string, readonly [number, number]>();
  for (const word of page.words) if (/^[A-Z]{1,2}$/.test(word.text)) found.set(word.text, [word.x, word.y]);
  return found;
}

/** Lays sheet on sheet, cross on cross, and returns every corner of a firm line (the cut line) on the first sheet's page. */
function laidTogether(pages: readonly ReadPage[]): (readonly [number, number])[] {
  const placed = new Map<ReadPage, readonly [number, number]>([[pages[0]!, [0, 0]]]);
  while (placed.size < pages.length) {
    const before = placed.size;
    for (const page of pages) {
      if (placed.has(page)) continue;
      for (const [other, [dx, dy]] of placed) {
        const there = crosses(other);
        const shared = Array.from(crosses(page)).filter(([name]) => there.has(name));
        if (shared.length < 2) continue;
        const moves = shared.map(
          ([name, [x, y]]) => [there.get(name)![0] + dx - x, there.get(name)![1] + dy - y] as const,
        );
        // Two crosses agree: the sheets join without a turn.
        expect(distance(moves[0]!, moves[1]!)).toBeLessThan(0.01);
        placed.set(page, moves[0]!);
        break;
      }
    }
    expect(placed.size).toBeGreaterThan(before);
  }
  return Array.from(placed).flatMap(([page, [dx, dy]]) =>
    page.paths
      .filter(({ painted, points }) => painted === 'stroke' && points.length > 1)
      .filter(({ points }) => points.every(([, y]) => y > 50 && y < page.height - 85))
      .flatMap(({ points }) => points.map(([x, y]) => [x + dx, y + dy] as const)),
  );
}
