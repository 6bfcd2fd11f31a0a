// Wedges on a strip set by brute force: the distances at which two wedges just clear each other are found with
// polygon-clipping alone, then every order of tips is tried, each wedge as far left as those distances allow.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  availableWedges,
  heightFor,
  lengthFor,
  plannedWedges,
  wedgeCuts,
  wedgesOnLength,
} from '../../../src/cutting/wedges/yield';
import { cutWedge, slope } from '../../../src/geometry/wedge';
import type { StripSet, Tip, WedgePlan } from '../../../src/model/project';
import { clippedArea, overlap } from '../../geometry/clipping';
import { usualWedge, wedgeOnSet } from '../../geometry/strips';
import { runs } from '../../runs';

const seed = 20262;

function setOf(height: number, length: number, firstTip: Tip = 'up'): StripSet {
  return {
    id: 's1', label: 'A', strips: [{ fabric: 'f1', width: height }], length, pressing: 'last', firstTip,
    progress: 'planned', cut: null, locked: false,
  }; // biome-ignore format: a fixture
}

/** The least distance from one wedge to a later one so that they do not overlap, by halving with polygon-clipping. */
function clearance(first: Tip, later: Tip, height: number, wedge: WedgePlan): number {
  const one = wedgeOnSet(first, 0, height, wedge);
  let low = 0;
  let high = cutWedge(wedge).base;
  // No distance in between may be free again: the wedges are convex, so overlap is an interval about 0.
  if (clippedArea(overlap(one, wedgeOnSet(later, 0, height, wedge))) < 1e-7) return 0;
  for (let step = 0; step < 34; step += 1) {
    const middle = (low + high) / 2;
    if (clippedArea(overlap(one, wedgeOnSet(later, middle, height, wedge))) > 1e-9) low = middle;
    else high = middle;
  }
  return high;
}

/** Most wedges on a length, every order of tips tried. Exhaustive: 2^n orders, each packed leftmost. */
function mostWedges(height: number, length: number, wedge: WedgePlan): number {
  const base = cutWedge(wedge).base;
  const apart = {
    same: clearance('up', 'up', height, wedge),
    turned: clearance('up', 'down', height, wedge),
  };
  let most = 0;
  const place = (count: number, last: { up: number; down: number }) => {
    most = Math.max(most, count);
    for (const tip of ['up', 'down'] as const) {
      const other = tip === 'up' ? 'down' : 'up';
      const start = Math.max(0, last[tip] + apart.same, last[other] + apart.turned);
      if (start + base <= length + 1e-4) place(count + 1, { ...last, [tip]: start });
    }
  };
  place(0, { up: -1000, down: -1000 });
  return most;
}

describe('wedges cut from a strip set', () => {
  it('number 10, 11 and 11 for a 7 1/2 in wedge: sets 7 1/2 high of 40 in, 8 high of 40, 8 high of 41 (trade notes 2)', () => {
    expect(wedgeCuts(setOf(7.5, 40), usualWedge)).toHaveLength(10);
    expect(wedgeCuts(setOf(8, 40), usualWedge)).toHaveLength(11);
    expect(wedgeCuts(setOf(8, 41), usualWedge)).toHaveLength(11);
  });

  it('share their cuts: the pitch is b − Hk, 3.4407 for a set 7 1/2 high (trade notes 2)', () => {
    const cuts = wedgeCuts(setOf(7.5, 40), usualWedge);
    expect(cuts[1]!.start).toBeCloseTo(cutWedge(usualWedge).base - 7.5 * slope(8), 12);
    expect(cuts[1]!.start).toBeCloseTo(3.4407, 4);
    expect(cuts[2]!.start).toBeCloseTo(2 * 3.4407, 3);
  });

  it('never overlap on the edge where bases lie side by side: 8 in high, twice the pitch is less than a base', () => {
    const base = cutWedge(usualWedge).base;
    const pitch = base - 8 * slope(8);
    expect(pitch).toBeCloseTo(3.2336, 4);
    expect(2 * pitch).toBeLessThan(base);
    const cuts = wedgeCuts(setOf(8, 40), usualWedge);
    expect(cuts[2]!.start).toBeCloseTo(base, 12);
  });

  const random = fc.record({
    perBlock: fc.constantFrom(6, 8, 10, 12) as fc.Arbitrary<WedgePlan['perBlock']>,
    cutHeight: fc.constantFrom(4, 5.5, 7.5, 8.25),
    seam: fc.constantFrom(0.1875, 0.25),
    above: fc.constantFrom(0, 0.25, 0.5, 1, 2, 4, 8.5, 9, 18),
    length: fc.double({ min: 1, max: 44, noNaN: true }),
  });

  it('never overlap, lie wholly on the set, and alternate', () => {
    fc.assert(
      fc.property(random, fc.constantFrom<Tip>('up', 'down'), ({ length, above, ...rest }, firstTip) => {
        const wedge: WedgePlan = { ...usualWedge, ...rest, assemblySeam: rest.seam };
        const height = wedge.cutHeight + above;
        const cuts = wedgeCuts(setOf(height, length, firstTip), wedge);
        const outlines = cuts.map((cut) => wedgeOnSet(cut.tip, cut.start, height, wedge));
        outlines.forEach((outline, at) => {
          expect(Math.min(...outline.map((point) => point.x))).toBeGreaterThanOrEqual(0);
          expect(Math.max(...outline.map((point) => point.x))).toBeLessThanOrEqual(length + 1e-8);
          for (const later of outlines.slice(at + 1, at + 4)) {
            expect(clippedArea(overlap(outline, later))).toBeLessThan(1e-6);
          }
        });
        for (const [at, cut] of cuts.entries()) {
          expect(cut.tip).toBe((at % 2 === 0) === (firstTip === 'up') ? 'up' : 'down');
        }
        const { up, down } = plannedWedges(setOf(height, length, firstTip), wedge);
        expect(up + down).toBe(cuts.length);
        expect(Math.abs(up - down)).toBeLessThanOrEqual(1);
      }),
      { seed, numRuns: 120 },
    );
  });

  it('are as many as any order of tips could give: brute force fits no more', () => {
    fc.assert(
      fc.property(random, ({ length, above, ...rest }) => {
        const wedge: WedgePlan = { ...usualWedge, ...rest, assemblySeam: rest.seam };
        const height = wedge.cutHeight + above;
        const base = cutWedge(wedge).base;
        const short = Math.min(length, base * 3.7); // brute force doubles with every wedge
        const found = wedgeCuts(setOf(height, short), wedge).length;
        // Within a hair of a boundary the halving cannot decide.
        const hair = [found, found + 1].some((n) => Math.abs(lengthFor(n, height, wedge) - short) < 1e-3);
        if (!hair) expect(found).toBe(mostWedges(height, short, wedge));
      }),
      { seed, numRuns: runs(20, 60) },
    );
  });

  it('need a set as high as heightFor says: so high they fit, a hair lower they do not', () => {
    fc.assert(
      fc.property(
        random,
        fc.integer({ min: 1, max: 14 }),
        ({ length, perBlock, cutHeight, seam: joined }, count) => {
          const wedge: WedgePlan = { ...usualWedge, perBlock, cutHeight, seam: joined, assemblySeam: joined };
          const height = heightFor(count, length, wedge);
          if (!Number.isFinite(height)) {
            expect(lengthFor(count, 3 * wedge.cutHeight, wedge)).toBeGreaterThan(length);
            return;
          }
          expect(height).toBeGreaterThanOrEqual(wedge.cutHeight);
          expect(wedgesOnLength(length, height, wedge)).toBeGreaterThanOrEqual(count);
          if (height > wedge.cutHeight)
            expect(lengthFor(count, height - 1e-6, wedge)).toBeGreaterThan(length - 1e-9);
        },
      ),
      { seed, numRuns: 400 },
    );
    // 40 long: eleven need p ≤ (40 − b)/10, so H ≥ (b − 3.3453)/k = 7.7304 (trade notes 2, plane geometry).
    expect(heightFor(11, 40, usualWedge)).toBeCloseTo(7.7304, 3);
  });

  it('lie in two rows that do not meet on a set twice as high as the wedge, though not yet as high as two whole tips', () => {
    const base = cutWedge(usualWedge).base;
    expect(mostWedges(15.2, base + 0.001, usualWedge)).toBe(2);
    expect(wedgeCuts(setOf(15.2, base + 0.001), usualWedge)).toHaveLength(2);
  });

  it('are none when the set is not as high as the wedge, or not as long as one base', () => {
    expect(wedgeCuts(setOf(7.49, 40), usualWedge)).toEqual([]);
    expect(wedgeCuts(setOf(8, 6.5), usualWedge)).toEqual([]);
    expect(wedgeCuts(setOf(8, 0), usualWedge)).toEqual([]);
    expect(lengthFor(0, 8, usualWedge)).toBe(0);
  });

  it('are as written down once they are cut, whatever the geometry gives', () => {
    const miscut = { ...setOf(8, 40), cut: { up: 5, down: 4 } };
    expect(availableWedges(miscut, usualWedge)).toEqual({ up: 5, down: 4 });
    expect(availableWedges(setOf(8, 40), usualWedge)).toEqual({ up: 6, down: 5 });
    expect(availableWedges(setOf(8, 40, 'down'), usualWedge)).toEqual({ up: 5, down: 6 });
  });
});
