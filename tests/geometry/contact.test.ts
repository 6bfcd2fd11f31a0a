// What lies side by side, against outlines laid down and measured: the stretch two bands share on the ray between them, and
// the place on each side of a hanging block.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Band, wedgeBands } from '../../src/geometry/bands';
import { bandOutline, direction } from '../../src/geometry/block';
import { placeOnSide, SIDES, seamStretches, sideOfPlace } from '../../src/geometry/contact';
import type { Outline } from '../../src/geometry/point';
import { apothem, finishedBlock } from '../../src/geometry/wedge';
import { orientation, turnsOf } from '../../src/model/find';
import { runs } from '../runs';
import { sharedByClipping } from './clipping';
import { setAndWedge, usualWedge } from './strips';

const seed = 20261;

/** The stretch of an outline's boundary that lies on the ray from the middle at this angle (clockwise from the top). */
function stretchOnRay(outline: Outline, angle: number): [number, number] | null {
  const unit = { x: Math.sin(angle), y: -Math.cos(angle) };
  const onRay = outline
    .filter((point) => Math.abs(point.x * unit.y - point.y * unit.x) < 1e-9)
    .map((point) => point.x * unit.x + point.y * unit.y)
    .filter((along) => along > -1e-9);
  return onRay.length < 2 ? null : [Math.min(...onRay), Math.max(...onRay)];
}

describe('stretches of the seam between two wedges', () => {
  it('are as long as the stretch two outlines share on the ray between them', () => {
    fc.assert(
      fc.property(
        setAndWedge,
        fc.array(fc.boolean(), { minLength: 12, maxLength: 12 }),
        ({ strips, wedge }, ups) => {
          const { perBlock } = wedge;
          const bands = Array.from({ length: perBlock }, (_, place) =>
            wedgeBands(strips, ups[place] ? 'up' : 'down', wedge),
          );
          bands.forEach((here, place) => {
            const next = (place + 1) % perBlock;
            const found = new Map(
              seamStretches(here, bands[next]!, perBlock).map((one) => [
                `${one.band} | ${one.nextBand}`,
                one,
              ]),
            );
            let measured = 0;
            const ray = (2 * Math.PI * (place + 0.5)) / perBlock;
            const outline = (band: Band, toward: number) =>
              stretchOnRay(bandOutline(toward, band.outer, band.inner, perBlock), ray)!;
            here.forEach((band, at) => {
              bands[next]!.forEach((nextBand, nextAt) => {
                const [from, to] = outline(band, place);
                const [nextFrom, nextTo] = outline(nextBand, next);
                const shared = Math.min(to, nextTo) - Math.max(from, nextFrom);
                const stretch = found.get(`${at} | ${nextAt}`);
                if (shared <= 1e-8) {
                  expect(stretch?.length ?? 0).toBeLessThan(1e-7);
                  return;
                }
                measured += 1;
                expect(Math.abs(stretch!.length - shared)).toBeLessThan(1e-9);
              });
            });
            expect(found.size).toBeGreaterThanOrEqual(measured);
          });
        },
      ),
      { seed, numRuns: runs(20, 60) },
    );
  });

  it('are as long as a polygon-clipping library finds them', () => {
    let compared = 0;
    fc.assert(
      fc.property(setAndWedge, fc.nat(23), ({ strips, wedge }, at) => {
        const { perBlock } = wedge;
        const bands = Array.from({ length: perBlock }, (_, place) =>
          wedgeBands(strips, place % 2 === 0 ? 'up' : 'down', wedge),
        );
        const place = at % perBlock;
        const next = (place + 1) % perBlock;
        const ray = (2 * Math.PI * (place + 0.5)) / perBlock;
        // Across the seam, from the next wedge into this one.
        const across = { x: -Math.cos(ray), y: -Math.sin(ray) };
        for (const stretch of seamStretches(bands[place]!, bands[next]!, perBlock)) {
          // Near the middle bands are thinner than the push.
          if (stretch.inner < 0.5 || stretch.outer - stretch.inner < 0.05) continue;
          const band = bands[place]![stretch.band]!;
          const nextBand = bands[next]![stretch.nextBand]!;
          const here = bandOutline(place, band.outer, band.inner, perBlock);
          const there = bandOutline(next, nextBand.outer, nextBand.inner, perBlock);
          expect(Math.abs(sharedByClipping(here, there, across) - stretch.length)).toBeLessThan(1e-4);
          compared += 1;
        }
      }),
      { seed, numRuns: 60 },
    );
    expect(compared).toBeGreaterThan(100);
  });

  it('add up to the whole seam from rim to middle on each of the N seams', () => {
    fc.assert(
      fc.property(setAndWedge, ({ strips, wedge }) => {
        const bands = Array.from({ length: wedge.perBlock }, (_, place) =>
          wedgeBands(strips, place % 2 === 0 ? 'up' : 'down', wedge),
        );
        const whole = apothem(wedge) / Math.cos(Math.PI / wedge.perBlock);
        bands.forEach((here, place) => {
          const stretches = seamStretches(here, bands[(place + 1) % wedge.perBlock]!, wedge.perBlock);
          const length = stretches.reduce((sum, one) => sum + one.length, 0);
          expect(Math.abs(length - whole)).toBeLessThan(1e-7);
        });
      }),
      { seed, numRuns: 60 },
    );
  });

  it('are none beside a wedge without strips', () => {
    const bands = wedgeBands([{ fabric: 'f1', width: 9 }], 'up', usualWedge);
    expect(bands).toHaveLength(1);
    expect(seamStretches(bands, [], 8)).toEqual([]);
    expect(seamStretches([], bands, 8)).toEqual([]);
  });
});

describe('the sides of a hanging block', () => {
  it.each([6, 8, 10, 12] as const)(
    'with %d wedges have the rim of the place that touches them',
    (perBlock) => {
      const wedge = { ...usualWedge, perBlock };
      const { width, height } = finishedBlock(wedge);
      for (let stands = 0; stands < perBlock; stands += 1) {
        const onSides = SIDES.map((side, turn) => {
          const upright = turn % 2 === 1;
          const at = [-height / 2, width / 2, height / 2, -width / 2][turn]!;
          const touching = Array.from({ length: perBlock }, (_, place) => place).filter((place) => {
            const outline = bandOutline(place + stands, apothem(wedge), 0, perBlock);
            return (
              outline.filter((point) => Math.abs((upright ? point.x : point.y) - at) < 1e-9).length === 2
            );
          });
          expect(touching.length).toBeLessThanOrEqual(1);
          expect(placeOnSide(side, stands, perBlock)).toBe(touching[0] ?? null);
          return touching[0] ?? -1;
        });
        for (let place = 0; place < perBlock; place += 1) {
          expect(sideOfPlace(place, stands, perBlock)).toBe(onSides.indexOf(place));
        }
      }
    },
  );

  it('show another place at the top after every turn, and all of them in a whole round', () => {
    for (const perBlock of [6, 8, 10, 12] as const) {
      const wedge = { ...usualWedge, perBlock };
      const seen = new Set<number | null>();
      const turns = turnsOf(perBlock);
      for (let cornerShift = 0; cornerShift < perBlock / turns; cornerShift += 1) {
        for (let turn = 0; turn < turns; turn += 1) {
          seen.add(placeOnSide('top', orientation({ cornerShift }, turn, wedge), perBlock));
        }
      }
      expect(seen.size).toBe(perBlock);
    }
  });

  it('the first direction is straight up and a quarter of the steps is to the right', () => {
    expect(direction(0, 8)).toEqual({ x: 0, y: -1 });
    expect(direction(2, 8).x).toBeCloseTo(1, 12);
  });
});
