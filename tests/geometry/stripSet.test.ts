// A strip set on the table against the worked example of the trade (strips 2, 1, 1½, 1, 1½, 1, 2, 1½ are 8 high) and
// against the shoelace formula.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { wedgeBands } from '../../src/geometry/bands';
import { area } from '../../src/geometry/point';
import {
  cutWidth,
  finishedWidth,
  heightShort,
  setHeight,
  stripPlaces,
  stripSpans,
  wedgeOnSet,
} from '../../src/geometry/stripSet';
import { apothem, cutWedge } from '../../src/geometry/wedge';
import { isTooNarrow } from '../../src/model/lengths';
import { flatHeight, seamLines, setAndWedge } from './strips';

const wedge = { perBlock: 8, cutHeight: 7.5, seam: 0.25, assemblySeam: 0.25, outerSeam: 0.25 } as const;
const widths = [2, 1, 1.5, 1, 1.5, 1, 2, 1.5];

test('the strips of the worked set show from the first at the bottom to the last at the top', () => {
  const places = stripPlaces(
    widths.map((width) => ({ width })),
    0.25,
  );
  expect(places.map((place) => place.bottom - place.top)).toEqual([1.75, 0.5, 1, 0.5, 1, 0.5, 1.5, 1.25]);
  expect(places[0]!.bottom).toBe(8);
  expect(places.at(-1)!.top).toBe(0);
});

test('strips fill the height of their set without gap or overlap, whatever their widths', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 5, max: 40 }), { minLength: 1, maxLength: 14 }), (eighths) => {
      const places = stripPlaces(
        eighths.map((width) => ({ width: width / 8 })),
        0.25,
      );
      places.forEach((place, index) => {
        expect(place.bottom).toBeGreaterThan(place.top);
        if (index > 0) expect(place.bottom).toBeCloseTo(places[index - 1]!.top, 9);
      });
      expect(places.at(-1)!.top).toBeCloseTo(0, 9);
    }),
    { seed: 11 },
  );
});

const strips = fc.array(
  fc.double({ min: 0.3, max: 6, noNaN: true }).map((width) => ({ fabric: 'f', width })),
  { minLength: 1, maxLength: 14 },
);
const seams = fc.double({ min: 0.0625, max: 1, noNaN: true });

test('a set is as high as its finished strips and the two seams left at its edges, as one piece is', () => {
  fc.assert(
    fc.property(strips, seams, (set, seam) => {
      const finished = set.reduce((sum, { width }) => sum + finishedWidth(width, seam), 0);
      expect(finishedWidth(setHeight(set, seam), seam)).toBeCloseTo(finished, 9);
      expect(setHeight(set, seam)).toBeCloseTo(cutWidth(finished, seam), 9);
      expect(setHeight(set, seam)).toBeCloseTo(flatHeight(set, seam), 9);
    }),
    { seed: 20260413 },
  );
});

test('what shows of the strips adds up to the height, each from where the one before ends', () => {
  fc.assert(
    fc.property(strips, seams, (set, seam) => {
      const spans = stripSpans(set, seam);
      expect(spans.map(({ from }) => from)).toEqual([0, ...spans.slice(0, -1).map(({ to }) => to)]);
      expect(spans.at(-1)!.to).toBeCloseTo(setHeight(set, seam), 9);
      const lines = seamLines(set, seam);
      spans.forEach(({ to }, at) => {
        expect(to).toBeCloseTo(lines[at + 1]!, 9);
      });
      spans.forEach(({ from, to }, at) => {
        const outside = Number(at === 0) + Number(at === spans.length - 1);
        expect(to - from).toBeCloseTo(finishedWidth(set[at]!.width, seam) + outside * seam, 9);
        // Inside a set what shows of a strip is nothing just where the strip is too narrow.
        if (outside === 0) expect(to - from > 1e-9).toBe(!isTooNarrow(set[at]!.width, seam));
      });
    }),
    { seed: 20260413 },
  );
});

test('the bands of a wedge are what shows of its strips, from the rim in and as far as the wedge reaches', () => {
  fc.assert(
    fc.property(setAndWedge, ({ strips: set, wedge: plan }) => {
      const height = setHeight(set, plan.seam);
      const places = stripPlaces(set, plan.seam);
      const reach = apothem(plan) + plan.outerSeam;
      for (const tip of ['up', 'down'] as const) {
        for (const { strip, outer, inner } of wedgeBands(set, tip, plan)) {
          const { top, bottom } = places[strip]!;
          const [from, to] = tip === 'up' ? [height - bottom, height - top] : [top, bottom];
          expect(outer).toBeCloseTo(Math.min(apothem(plan), reach - from), 9);
          expect(inner).toBeCloseTo(Math.max(0, reach - Math.min(to, plan.cutHeight)), 9);
        }
      }
    }),
    { seed: 20260413 },
  );
});

test('a set is short by what it lacks, and not by a hair', () => {
  fc.assert(
    fc.property(strips, seams, fc.double({ min: -2, max: 2, noNaN: true }), (set, seam, off) => {
      const height = setHeight(set, seam);
      const short = heightShort(height, { cutHeight: height + off });
      expect(short).toBeCloseTo(Math.max(0, off), 8);
      expect(heightShort(height, { cutHeight: height + 5e-10 })).toBe(0);
    }),
    { seed: 20260413 },
  );
});

test('a wedge on the set is the trapezoid of its base, tip and height, and turned round for tip down', () => {
  const { base, tip } = cutWedge(wedge);
  for (const way of ['up', 'down'] as const) {
    const outline = wedgeOnSet(3, way, 8, wedge);
    expect(area(outline)).toBeCloseTo(((base + tip) / 2) * 7.5, 9);
    expect(outline[0]).toEqual({ x: 3, y: way === 'up' ? 8 : 0 });
    expect(outline[2]!.y).toBe(way === 'up' ? 0.5 : 7.5);
  }
});
