// Laws of the outlines, measured with polygon-clipping on random strip sets: bands tile the N-gon, pieces tile the block's
// rectangle, and every band is the piece of the sewn set that the template cuts out.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { wedgeBands } from '../../src/geometry/bands';
import { bandOutline, cornerOutlines } from '../../src/geometry/block';
import { area, boxOutline, type Outline } from '../../src/geometry/point';
import { apothem, finishedBlock, slope } from '../../src/geometry/wedge';
import type { Strip, WedgePlan } from '../../src/model/project';
import { runs } from '../runs';
import { blockOutline } from './blockOutline';
import { clippedArea, overlap, signedArea, tilingError, turnedBy, xor } from './clipping';
import { seamLines, setAndWedge, usualWedge } from './strips';

const seed = 20281;
const tips = (place: number) => (place % 2 === 0 ? ('up' as const) : ('down' as const));

function allBands(strips: readonly Strip[], wedge: WedgePlan): Outline[] {
  return Array.from({ length: wedge.perBlock }, (_, place) =>
    wedgeBands(strips, tips(place), wedge).map((band) =>
      bandOutline(place, band.outer, band.inner, wedge.perBlock),
    ),
  ).flat();
}

describe('the bands of a block', () => {
  it('tile its N-gon without gap or overlap', () => {
    fc.assert(
      fc.property(setAndWedge, ({ strips, wedge }) => {
        const outlines = allBands(strips, wedge);
        const whole = blockOutline(wedge);
        expect(tilingError(outlines, whole)).toBeLessThan(1e-6);
        // Their areas by the shoelace formula, exactly.
        expect(outlines.reduce((sum, outline) => sum + area(outline), 0)).toBeCloseTo(area(whole), 9);
      }),
      { seed, numRuns: runs(13, 40) },
    );
  });

  it('are what the template cuts from the sewn strips, and have the area k(r1² − r0²)', () => {
    fc.assert(
      fc.property(setAndWedge, fc.integer({ min: 0, max: 11 }), ({ strips, wedge }, turn) => {
        const toward = turn % wedge.perBlock;
        const reach = apothem(wedge) + wedge.outerSeam;
        const lines = seamLines(strips, wedge.seam);
        const height = lines.at(-1)!;
        const angle = (2 * Math.PI * toward) / wedge.perBlock;
        const sector = wedgeSector(wedge).map((point) => turnedBy(point, angle));
        for (const tip of ['up', 'down'] as const) {
          const found = new Map(wedgeBands(strips, tip, wedge).map((band) => [band.strip, band]));
          strips.forEach((_, at) => {
            // Distance from the base of the wedge, as it lies on the set.
            const from = tip === 'up' ? lines[at]! : height - lines[at + 1]!;
            const to = tip === 'up' ? lines[at + 1]! : height - lines[at]!;
            const strip = boxOutline({ x: -40, y: from - reach, width: 80, height: to - from });
            const wanted = overlap(
              strip.map((point) => turnedBy(point, angle)),
              sector,
            );
            const band = found.get(at);
            const outline = band ? bandOutline(toward, band.outer, band.inner, wedge.perBlock) : [];
            expect(clippedArea(xor(outline, wanted))).toBeLessThan(1e-6);
            if (band) {
              const formula = slope(wedge.perBlock) * (band.outer ** 2 - band.inner ** 2);
              expect(Math.abs(formula - clippedArea(wanted))).toBeLessThan(1e-6);
            }
          });
        }
      }),
      { seed, numRuns: runs(13, 40) },
    );
  });

  it('run clockwise on screen', () => {
    for (const outline of allBands(
      [
        { fabric: 'a', width: 4 },
        { fabric: 'b', width: 5 },
      ],
      usualWedge,
    )) {
      expect(signedArea(outline)).toBeGreaterThan(0);
    }
  });
});

/** The finished wedge pointing up from the middle: apex at the origin, built from the angle alone. */
function wedgeSector(wedge: WedgePlan): Outline {
  const half = Math.PI / wedge.perBlock;
  const rim = apothem(wedge);
  return [
    { x: 0, y: 0 },
    { x: -rim * Math.tan(half), y: -rim },
    { x: rim * Math.tan(half), y: -rim },
  ];
}

describe('the pieces of a block', () => {
  it.each([6, 8, 10, 12] as const)(
    'with %d wedges tile its rectangle, setting pieces included',
    (perBlock) => {
      fc.assert(
        fc.property(setAndWedge, ({ strips, wedge: drawn }) => {
          const wedge = { ...drawn, perBlock };
          if (apothem(wedge) < 0.5) return;
          const { width, height } = finishedBlock(wedge);
          const pieces = [...allBands(strips, wedge), ...cornerOutlines(wedge)];
          const rectangle = boxOutline({ x: -width / 2, y: -height / 2, width, height });
          expect(tilingError(pieces, rectangle)).toBeLessThan(1e-6);
        }),
        { seed, numRuns: 10 },
      );
    },
  );

  it('the four setting pieces are alike, run clockwise, and stand in their corners from the top right on', () => {
    for (const perBlock of [6, 8, 10, 12] as const) {
      const wedge = { ...usualWedge, perBlock };
      const corners = cornerOutlines(wedge);
      expect(corners).toHaveLength(4);
      const signs = corners.map(([corner]) => [Math.sign(corner!.x), Math.sign(corner!.y)]);
      expect(signs).toEqual([[1, -1], [1, 1], [-1, 1], [-1, -1]]); // biome-ignore format: a table
      for (const corner of corners) {
        expect(signedArea(corner)).toBeGreaterThan(0);
        expect(area(corner)).toBeCloseTo(area(corners[0]!), 9);
      }
    }
  });
});
