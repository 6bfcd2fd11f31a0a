import { Resvg } from '@resvg/resvg-js';
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
  /** How many stripes 5,800 lines take, and the longest, where a stripe takes `fixed` and a part for each line. */
  const drawn = (fixed: number, line: number) => {
    const next = growingStripes(100);
    let [high, left, stripes, longest] = [100, 5800, 0, 0];
    while (left > 0) {
      const lines = Math.min(high, left);
      const took = fixed + lines * line;
      left -= lines;
      stripes += 1;
      longest = Math.max(longest, took);
      high = next(took);
    }
    return { stripes, longest };
  };

  it('are few where each of them draws the whole picture', () => {
    expect(drawn(800, 0.01).stripes).toBeLessThan(9);
  });

  it('stay short where each draws only its own lines', () => {
    expect(drawn(1, 0.3).longest).toBeLessThan(4.5 * 31);
  });
});
