// A strip set on the table against the worked example of the trade (strips 2, 1, 1½, 1, 1½, 1, 2, 1½ are 8 high) and
// against the shoelace formula.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { area } from '../../src/geometry/point';
import { stripPlaces, wedgeOnSet } from '../../src/geometry/stripSet';
import { cutWedge } from '../../src/geometry/wedge';

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

test('a wedge on the set is the trapezoid of its base, tip and height, and turned round for tip down', () => {
  const { base, tip } = cutWedge(wedge);
  for (const way of ['up', 'down'] as const) {
    const outline = wedgeOnSet(3, way, 8, wedge);
    expect(area(outline)).toBeCloseTo(((base + tip) / 2) * 7.5, 9);
    expect(outline[0]).toEqual({ x: 3, y: way === 'up' ? 8 : 0 });
    expect(outline[2]!.y).toBe(way === 'up' ? 0.5 : 7.5);
  }
});
