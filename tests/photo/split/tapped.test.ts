// Shelves of folded fabrics, split by a tap on each: what is framed lies wholly within the fabric that was tapped.
import { expect, it } from 'vitest';
import { frameCorners } from '../../../src/photo/pixels/frame';
import { blankPixels } from '../../../src/photo/pixels/pixels';
import { frameOfTapped } from '../../../src/photo/split/tapped';
import { runs } from '../../runs';
import { chance } from '../render/clothLight';
import { clothShelf } from '../render/clothShelf';

/** How far a corner may stick out: less than the blur of an edge. */
const SLACK = 1.5;

const SHELVES = runs(1, 60);

it(`${SHELVES} shelves: of the fabrics tapped, the frame lies wholly within the fabric in 97 of 100`, async () => {
  const counts = { framed: 0, within: 0, tapped: 0, covered: 0 };
  const lost: string[] = [];
  for (let seed = 1; seed <= SHELVES; seed += 1) {
    const { pixels, boxes } = await clothShelf(seed);
    const random = chance(seed + 500);
    boxes.forEach((box, at) => {
      counts.tapped += 1;
      const x = box.x + box.width * (0.25 + 0.5 * random());
      const y = box.y + box.height * (0.35 + 0.25 * random());
      const read = frameOfTapped(pixels, x, y, seed);
      if (!read.ok) return;
      counts.framed += 1;
      counts.covered += (read.value.width * read.value.height) / (box.width * box.height);
      const within = frameCorners(read.value).every(
        (corner) =>
          corner.x >= box.x - SLACK &&
          corner.x <= box.x + box.width + SLACK &&
          corner.y >= box.y - SLACK &&
          corner.y <= box.y + box.height + SLACK,
      );
      if (within) counts.within += 1;
      else lost.push(`${seed}:${at}`);
    });
  }
  expect(counts.tapped).toBeGreaterThan(4 * SHELVES);
  // Some fabrics show too little of a large print; they get a sentence.
  expect(counts.framed / counts.tapped).toBeGreaterThan(0.8);
  expect(counts.covered / counts.framed).toBeGreaterThan(0.25);
  expect(counts.within / counts.framed, lost.join(' ')).toBeGreaterThanOrEqual(0.97);
});

it('a tap outside the picture gets a sentence', () => {
  const pixels = blankPixels(60, 60);
  for (const [x, y] of [[-1, 5], [5, 60], [Number.NaN, 5]] as const) {
    const read = frameOfTapped(pixels, x, y, 1);
    expect(read.ok ? 'read' : read.problems[0]!.code).toBe('tap-outside');
  }
}); // biome-ignore format: a table
