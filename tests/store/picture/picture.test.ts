import { Resvg } from '@resvg/resvg-js';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { pictureCaption } from '../../../src/drawing/pictureText';
import { resizeWall } from '../../../src/editing/commands/wall';
import { speak } from '../../../src/model/phrase';
import { NO_PICTURES } from '../../../src/model/picture/picture';
import {
  growingStripes,
  MOST_PIXELS,
  pictureSvg,
  pixelSize,
  sizedInPixels,
  widestPicture,
} from '../../../src/store/picture/picture';
import { after, workshopProject } from '../../editing/workshopProject';
import { runs } from '../../runs';

const project = workshopProject();
const plain = pictureSvg(project, NO_PICTURES, { caption: null, marks: false });

test('a top of 28 by 42 inches is half as high again as it is wide in pixels', () => {
  expect(pixelSize(plain, 2400)).toEqual({ ok: true, value: { width: 2400, height: 3600 } });
});

test('a caption makes the picture two inches longer', () => {
  const captioned = pictureSvg(project, NO_PICTURES, {
    caption: speak(pictureCaption(project)),
    marks: false,
  });
  expect(pixelSize(captioned, 2800)).toEqual({ ok: true, value: { width: 2800, height: 4400 } });
  expect(captioned).toContain('Test quilt · 28&quot; × 42&quot; · 2 blocks');
});

test('the widest picture keeps both sides within what browsers draw, and one pixel more is refused with that width', () => {
  const widest = widestPicture(plain);
  expect(widest).toBe(10_922);
  expect(pixelSize(plain, widest).ok).toBe(true);
  const refused = pixelSize(plain, widest + 1);
  expect(refused.ok).toBe(false);
  if (!refused.ok) expect(speak(refused.problems[0]!.message)).toContain('10,922 wide');
  const wide = pictureSvg(
    after(project, () => resizeWall(1, 6)),
    NO_PICTURES,
    { caption: null, marks: false },
  );
  expect(widestPicture(wide)).toBe(MOST_PIXELS);
});

test('a picture of a few pixels is refused', () => {
  expect(pixelSize(plain, 99).ok).toBe(false);
});

test('the SVG put in pixels renders at exactly that size', () => {
  const size = { width: 280, height: 420 };
  const drawn = new Resvg(sizedInPixels(plain, size)).render();
  expect([drawn.width, drawn.height]).toEqual([280, 420]);
});

describe('the stripes in which a picture is drawn', () => {
  /** How many stripes 5,800 lines take, and how long each, where a stripe takes `fixed` and a part for each line, more or less. */
  const drawn = (fixed: number, line: number, more: (stripe: number) => number = () => 1) => {
    const next = growingStripes(100);
    const stripes: number[] = [];
    for (let [high, left] = [100, 5800]; left > 0; ) {
      const lines = Math.min(high, left);
      const took = (fixed + lines * line) * more(stripes.length);
      left -= lines;
      stripes.push(took);
      high = next(took);
    }
    return stripes;
  };

  it('are few where each of them draws the whole picture', () => {
    expect(drawn(800, 0.01).length).toBeLessThan(9);
    expect(drawn(200, 0.01).length).toBeLessThan(9);
  });

  it('are few there too where much else computes beside them', () => {
    const busy = fc.array(fc.double({ min: 1, max: 4, noNaN: true }), { minLength: 29, maxLength: 29 });
    fc.assert(
      fc.property(fc.double({ min: 40, max: 800, noNaN: true }), busy, (fixed, factors) => {
        const stripes = drawn(fixed, 0.01, (stripe) => factors[stripe % factors.length]!);
        expect(stripes.length).toBeLessThan(24);
      }),
      { seed: 14, numRuns: 500 },
    );
  });

  it('stay short where each draws only its own lines, however fast the browser and busy the machine is', () => {
    const busy = fc.array(fc.double({ min: 0.8, max: 1.25, noNaN: true }), { minLength: 8, maxLength: 8 });
    const line = fc.double({ min: 0.01, max: 0.8, noNaN: true });
    fc.assert(
      fc.property(fc.double({ min: 0, max: 20, noNaN: true }), line, busy, (fixed, each, factors) => {
        const stripes = drawn(fixed, each, (stripe) => factors[stripe % factors.length]!);
        for (const took of stripes.slice(1)) expect(took).toBeLessThan(100);
        // No more of them than a third of the longest would need.
        const all = stripes.reduce((sum, took) => sum + took, 0);
        expect(stripes.length).toBeLessThan(8 + all / 8);
      }),
      { seed: 8, numRuns: runs(170, 500) },
    );
  });
});
