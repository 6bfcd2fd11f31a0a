// Contacts along seams, against outlines laid down and measured: the stretch two bands share on the ray between them, and
// what lies along the sides of a hanging block.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Band, wedgeBands } from '../../src/geometry/bands';
import { bandOutline, cornerOutlines, direction } from '../../src/geometry/block';
import { blockBands, placeOnSide, radialContacts, SIDES, sideSpans } from '../../src/geometry/contact';
import type { Outline } from '../../src/geometry/point';
import { apothem, finishedBlock } from '../../src/geometry/wedge';
import { createBlock, createProject } from '../../src/model/create';
import { orientation, turnsOf } from '../../src/model/find';
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

describe('radial contacts', () => {
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
          const found = new Map(
            radialContacts(bands, perBlock).map((contact) => [
              `${contact.place}: ${contact.band.strip} | ${contact.nextBand.strip}`,
              contact,
            ]),
          );
          let measured = 0;
          bands.forEach((here, place) => {
            const next = (place + 1) % perBlock;
            const ray = (2 * Math.PI * (place + 0.5)) / perBlock;
            const outline = (band: Band, toward: number) =>
              stretchOnRay(bandOutline(toward, band.outer, band.inner, perBlock), ray)!;
            for (const band of here) {
              for (const nextBand of bands[next]!) {
                const [from, to] = outline(band, place);
                const [nextFrom, nextTo] = outline(nextBand, next);
                const shared = Math.min(to, nextTo) - Math.max(from, nextFrom);
                const contact = found.get(`${place}: ${band.strip} | ${nextBand.strip}`);
                if (shared <= 1e-8) {
                  expect(contact?.length ?? 0).toBeLessThan(1e-7);
                  continue;
                }
                measured += 1;
                expect(Math.abs(contact!.length - shared)).toBeLessThan(1e-9);
                expect(contact!.onRim).toBe(band === here[0] && nextBand === bands[next]![0]);
              }
            }
          });
          expect(found.size).toBeGreaterThanOrEqual(measured);
        },
      ),
      { seed, numRuns: 60 },
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
        for (const contact of radialContacts(bands, perBlock).filter((one) => one.place === place)) {
          // Near the middle bands are thinner than the push.
          if (contact.inner < 0.5 || contact.outer - contact.inner < 0.05) continue;
          const here = bandOutline(place, contact.band.outer, contact.band.inner, perBlock);
          const there = bandOutline(next, contact.nextBand.outer, contact.nextBand.inner, perBlock);
          expect(Math.abs(sharedByClipping(here, there, across) - contact.length)).toBeLessThan(1e-4);
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
        const seams = Array.from({ length: wedge.perBlock }, () => 0);
        for (const contact of radialContacts(bands, wedge.perBlock)) seams[contact.place]! += contact.length;
        const whole = apothem(wedge) / Math.cos(Math.PI / wedge.perBlock);
        for (const length of seams) expect(Math.abs(length - whole)).toBeLessThan(1e-7);
      }),
      { seed, numRuns: 60 },
    );
  });

  it('have none at an empty place or a place whose set is unknown', () => {
    const project = createProject('p', 'test');
    const block = { ...createBlock(project), places: [{ set: 'gone', tip: 'up' as const }, null] };
    expect(blockBands(project, block)).toEqual([[], []]);
    expect(radialContacts([[], []], 8)).toEqual([]);
  });
});

describe('the sides of a hanging block', () => {
  it.each([6, 8, 10, 12] as const)('with %d wedges lie along the pieces that touch them', (perBlock) => {
    const wedge = { ...usualWedge, perBlock };
    const { width, height } = finishedBlock(wedge);
    const corners = cornerOutlines(wedge);
    for (let stands = 0; stands < perBlock; stands += 1) {
      SIDES.forEach((side, turn) => {
        const upright = turn % 2 === 1;
        const at = [-height / 2, width / 2, height / 2, -width / 2][turn]!;
        const touching = (outline: Outline) =>
          outline
            .filter((point) => Math.abs((upright ? point.x : point.y) - at) < 1e-9)
            .map((point) => (upright ? point.y : point.x))
            .sort((one, other) => one - other);
        const spans = sideSpans(side, stands, wedge);
        expect(spans[0]!.from).toBeCloseTo((upright ? -height : -width) / 2, 9);
        expect(spans.at(-1)!.to).toBeCloseTo((upright ? height : width) / 2, 9);
        spans.forEach((span, index) => {
          if (index > 0) expect(span.from).toBe(spans[index - 1]!.to);
          const outline =
            span.place === null
              ? corners[span.corner!]!
              : bandOutline(span.place + stands, apothem(wedge), 0, perBlock);
          const found = touching(outline);
          expect(found).toHaveLength(2);
          expect(Math.abs(found[0]! - span.from)).toBeLessThan(1e-9);
          expect(Math.abs(found[1]! - span.to)).toBeLessThan(1e-9);
        });
        expect(placeOnSide(side, stands, perBlock)).toBe(
          spans.find((span) => span.place !== null)?.place ?? null,
        );
      });
    }
  });

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
