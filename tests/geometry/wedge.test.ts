// The wedge and its block against worked figures. Those marked "trade notes" are the worked examples the plan was written
// from (plane geometry); "common practice, no source" marks what makers say.
import { describe, expect, it } from 'vitest';
import { wedgeBands } from '../../src/geometry/bands';
import { cornerLeg } from '../../src/geometry/block';
import { area } from '../../src/geometry/point';
import { setHeight } from '../../src/geometry/stripSet';
import {
  apothem,
  cutWedge,
  finishedBlock,
  rimLength,
  seamFromMeasure,
  slope,
  tipRadius,
  tipTrim,
  unfinishedBlock,
  wedgeProblem,
} from '../../src/geometry/wedge';
import { speak } from '../../src/model/phrase';
import type { Strip, WedgePlan } from '../../src/model/project';
import { blockOutline } from './blockOutline';
import { usualWedge } from './strips';

const exact = 1e-9;
const near = (found: number, wanted: number, within = exact) =>
  expect(Math.abs(found - wanted), `${found} should be ${wanted}`).toBeLessThanOrEqual(within);

/** Closed forms of the angles with surds, so that no tangent of the code is compared with itself. */
const TAN_22_5 = Math.SQRT2 - 1;
const SIN_22_5 = Math.sqrt(2 - Math.SQRT2) / 2;
const workedWidths = [2, 1, 1.5, 1, 1.5, 1, 2, 1.5];
const workedSet: Strip[] = workedWidths.map((width, at) => ({ fabric: `f${at + 1}`, width }));

describe('the 7 1/2 in wedge of eight to the block, sewn at 1/4 in', () => {
  it('is trimmed 0.4033 below its true apex, 6.5473 wide at the base and 0.3341 at the tip (trade notes 2)', () => {
    const trim = 0.25 / SIN_22_5 - 0.25;
    near(tipTrim(usualWedge), trim);
    near(cutWedge(usualWedge).base, 2 * (7.5 + trim) * TAN_22_5);
    near(cutWedge(usualWedge).tip, 2 * trim * TAN_22_5);
    near(tipTrim(usualWedge), 0.4033, 5e-5);
    near(cutWedge(usualWedge).base, 6.5473, 5e-5);
    near(cutWedge(usualWedge).tip, 0.3341, 5e-5);
    near(slope(8), TAN_22_5);
  });

  it('makes a block 14 in finished and 14 1/2 in unfinished (trade notes 3; common practice, no source)', () => {
    near(apothem(usualWedge), 7);
    near(finishedBlock(usualWedge).width, 14);
    near(finishedBlock(usualWedge).height, 14);
    near(unfinishedBlock(usualWedge).width, 14.5);
    near(rimLength(usualWedge), 14 * TAN_22_5);
    near(rimLength(usualWedge), 5.799, 5e-5);
  });

  it('makes a smaller block when the wedges are joined at 5/16 in: 13.673 finished, 14.173 unfinished (trade notes 3)', () => {
    const wide: WedgePlan = { ...usualWedge, assemblySeam: 0.3125 };
    near(finishedBlock(wide).height, 14 - (2 * 0.0625) / SIN_22_5);
    near(finishedBlock(wide).height, 13.673, 5e-4);
    near(unfinishedBlock(wide).height, 14.173, 5e-4);
  });

  it('explains a sewn block of 14 1/4 in by an assembly seam of about 0.2978, between 1/4 and 5/16 (trade notes 3)', () => {
    const seam = seamFromMeasure(usualWedge, 14.25);
    near(seam, 0.25 + 0.125 * SIN_22_5);
    near(seam, 0.2978, 5e-5);
    expect(seam).toBeGreaterThan(0.25);
    expect(seam).toBeLessThan(0.3125);
    near(unfinishedBlock({ ...usualWedge, assemblySeam: seam }).height, 14.25);
    near(seamFromMeasure(usualWedge, 14.5), 0.25);
  });

  it('shows the strips at the radii of the worked example, tip up and tip down (trade notes 3)', () => {
    near(setHeight(workedSet, 0.25), 8);
    const up = [[7, 5.5], [5.5, 5], [5, 4], [4, 3.5], [3.5, 2.5], [2.5, 2], [2, 0.5], [0.5, 0]]; // biome-ignore format: a table
    const down = [[7, 6], [6, 4.5], [4.5, 4], [4, 3], [3, 2.5], [2.5, 1.5], [1.5, 1], [1, 0]]; // biome-ignore format: a table
    for (const [tip, rows] of [
      ['up', up],
      ['down', down],
    ] as const) {
      const bands = wedgeBands(workedSet, tip, usualWedge);
      expect(bands).toHaveLength(8);
      bands.forEach((band, at) => {
        near(band.outer, rows[at]![0]!);
        near(band.inner, rows[at]![1]!);
        expect(band.strip).toBe(tip === 'up' ? at : 7 - at);
        expect(band.fabric).toBe(workedSet[band.strip]!.fabric);
      });
    }
  });

  it('makes an octagon of 162.372 sq in with corner legs of 4.1005 (trade notes 3)', () => {
    near(area(blockOutline(usualWedge)), 8 * 49 * TAN_22_5);
    near(area(blockOutline(usualWedge)), 162.372, 1e-3);
    near(cornerLeg(usualWedge), 7 * (2 - Math.SQRT2));
    near(cornerLeg(usualWedge), 4.1005, 5e-5);
  });
});

describe('a plan that cannot be sewn', () => {
  it('is refused with a sentence when the seams leave no block', () => {
    const tiny: WedgePlan = { ...usualWedge, cutHeight: 1, assemblySeam: 0.5 };
    const why = wedgeProblem(tiny);
    expect(why && speak(why)).toContain('1"');
  });

  it('is refused when the assembly seam is so narrow that the trimmed tips leave a hole in the middle', () => {
    const least = 0.25 * (1 - SIN_22_5);
    expect(wedgeProblem({ ...usualWedge, assemblySeam: least + 1e-6 })).toBeNull();
    const hole: WedgePlan = { ...usualWedge, assemblySeam: least - 1e-6 };
    expect(tipRadius(hole)).toBeGreaterThan(0);
    expect(wedgeProblem(hole)).not.toBeNull();
  });

  it('is accepted for the usual wedge at every number of wedges to the block', () => {
    for (const perBlock of [6, 8, 10, 12] as const)
      expect(wedgeProblem({ ...usualWedge, perBlock })).toBeNull();
  });
});

describe('a set of strips', () => {
  it('is as high as its strips less two allowances for each seam, and has no height without strips', () => {
    expect(setHeight([], 0.25)).toBe(0);
    near(setHeight([{ width: 2 }], 0.25), 2);
    near(setHeight([{ width: 2 }, { width: 1.5 }], 0.25), 3); // biome-ignore format: short
  });

  it('leaves out a rim strip that vanishes in the outer seam', () => {
    const strips = [{ fabric: 'a', width: 0.5 }, ...workedSet];
    const bands = wedgeBands(strips, 'up', { ...usualWedge, outerSeam: 0.25 });
    expect(bands[0]!.fabric).toBe('f1');
    near(bands[0]!.outer, 7);
  });

  it('leaves the middle bare when it is shorter than the wedge', () => {
    const short = workedSet.slice(0, 4);
    const bands = wedgeBands(short, 'up', usualWedge);
    near(bands.at(-1)!.inner, 7.25 - setHeight(short, 0.25));
  });
});
