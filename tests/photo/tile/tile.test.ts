// Seamless tiles: over its edges and along its cuts a tile differs from pixel to pixel no more than the cloth does inside.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { PRINT_MOTIFS } from '../../../src/model/project';
import { repeatOf } from '../../../src/photo/fabric/repeat';
import { oklabPlane, pixelsOf } from '../../../src/photo/pixels/linear';
import { leastClosedCut, leastCut } from '../../../src/photo/tile/boundaryCut';
import { LONGEST_TILE, type Tile, tileOf } from '../../../src/photo/tile/tile';
import { runs } from '../../runs';
import { chance, throughJpeg } from '../render/clothLight';
import { clothPlane, printed } from '../render/clothScene';
import { linearPlane } from '../render/linearPlane';

/** Differences in OKLab from each pixel to its left and upper neighbour, over the edges too: inside, and at edges and cuts. */
function differences({ plane, cuts }: Tile): { inside: number[]; seams: number[] } {
  const { width, height } = plane;
  const { data } = oklabPlane(plane);
  const differ = (one: number, other: number) =>
    Math.hypot(...[0, 1, 2].map((part) => data[one * 3 + part]! - data[other * 3 + part]!));
  const found = { inside: [] as number[], seams: [] as number[] };
  for (let row = 0; row < height; row += 1)
    for (let column = 0; column < width; column += 1) {
      const at = row * width + column;
      const left = differ(at, row * width + ((column + width - 1) % width));
      const above = differ(at, ((row + height - 1) % height) * width + column);
      (column === 0 || cuts[at]! & 1 ? found.seams : found.inside).push(left);
      (row === 0 || cuts[at]! & 2 ? found.seams : found.inside).push(above);
    }
  return found;
}

// Every day a third of the prints, all in the long run.
describe.each(PRINT_MOTIFS.filter((_, at) => at % runs(3, 1) === 0))('a tile of %s', (motif) => {
  it.each([1, 2, 3, 4].slice(0, runs(1, 4)))(
    'wraps as the cloth runs on, whether its repeat shows or not (seed %i)',
    async (seed) => {
      const random = chance(seed * 91 + motif.length);
      const repeat = seed % 2 === 0 ? 1.3 : 5;
      const cloth = clothPlane(printed(motif, seed, random, repeat), 300, 280, 70);
      const patch = linearPlane(await throughJpeg(pixelsOf(cloth), 80));
      const tile = tileOf(patch, repeatOf(oklabPlane(patch)));
      const { inside, seams } = differences(tile);
      const most = inside.toSorted((one, other) => one - other)[Math.floor(0.95 * inside.length)]!;
      expect(seams.reduce((sum, one) => sum + one, 0) / seams.length).toBeLessThanOrEqual(most);
      expect(Math.max(tile.plane.width, tile.plane.height)).toBeLessThanOrEqual(LONGEST_TILE);
      expect(tile.width).toBeLessThanOrEqual(300);
      expect(tile.height).toBeLessThanOrEqual(280);
    },
  );
});

it('a print that repeats gives a tile of whole repeats: laid side by side it is the print again', () => {
  for (const motif of (['gingham', 'leaves', 'check', 'scales'] as const).slice(0, runs(2, 4))) {
    const cloth = clothPlane(printed(motif, 8, chance(8), 1.4), 300, 300, 80);
    const tile = tileOf(cloth, repeatOf(oklabPlane(cloth)));
    const parts = (length: number) => (length / (1.4 * 80)) * 12;
    // Figures come again at a third or a quarter of some repeats; never at less than a twelfth.
    for (const length of [tile.width, tile.height])
      expect(Math.abs(parts(length) - Math.round(parts(length)))).toBeLessThan(0.15);
  }
});

it('scales keep their way up: a tile is nearer to its patch than to the patch on its head', () => {
  for (const seed of [1, 2, 3].slice(0, runs(1, 3))) {
    const fabric = printed('scales', seed, chance(seed), 1.5);
    const cloth = clothPlane(fabric, 300, 300, 80);
    const tile = tileOf(cloth, repeatOf(oklabPlane(cloth)));
    const upright = leastOver(tile.plane.data, cloth, tile, false);
    expect(upright).toBeLessThan(0.6 * leastOver(tile.plane.data, cloth, tile, true));
  }
});

/** Mean square difference of a corner of the tile from the patch, at the best place; the patch turned over if wanted. */
function leastOver(
  tile: Float32Array,
  cloth: ReturnType<typeof clothPlane>,
  { plane }: Tile,
  over: boolean,
): number {
  const side = 60;
  let least = Number.POSITIVE_INFINITY;
  for (let top = 0; top < 140; top += 1)
    for (let left = 0; left < 140; left += 1) {
      let sum = 0;
      for (let row = 0; row < side && sum < least; row += 3)
        for (let column = 0; column < side; column += 3) {
          const from = ((60 + row) * plane.width + 60 + column) * 3;
          const x = over ? cloth.width - 1 - left - column : left + column;
          const y = over ? cloth.height - 1 - top - row : top + row;
          sum += (tile[from]! - cloth.data[(y * cloth.width + x) * 3]!) ** 2;
        }
      least = Math.min(least, sum);
    }
  return least;
}

describe('the boundary cut', () => {
  const band = fc
    .record({
      across: fc.integer({ min: 1, max: 4 }),
      along: fc.integer({ min: 1, max: 5 }),
      seed: fc.nat(9999),
    })
    .map(({ across, along, seed }) => {
      const random = chance(seed);
      return { across, along, errors: Float64Array.from({ length: across * along }, random) };
    });

  /** The least of all paths, tried one by one. */
  function tried(
    { across, along, errors }: { across: number; along: number; errors: Float64Array },
    closed: boolean,
  ) {
    let least = Number.POSITIVE_INFINITY;
    const go = (row: number, place: number, start: number, sum: number) => {
      if (place < 0 || place >= across) return;
      const so = sum + errors[row * across + place]!;
      if (row === along - 1) {
        if (!closed || Math.abs(place - start) <= 1) least = Math.min(least, so);
        return;
      }
      for (const step of [-1, 0, 1]) go(row + 1, place + step, start, so);
    };
    for (let start = 0; start < across; start += 1) go(0, start, start, 0);
    return least;
  }

  it('is the best of all paths, open and closed', () => {
    fc.assert(
      fc.property(band, (one) => {
        expect(leastCut(one).error).toBeCloseTo(tried(one, false), 9);
        expect(leastClosedCut(one).error).toBeCloseTo(tried(one, true), 9);
        const { path } = leastClosedCut(one);
        path.forEach((place, row) => {
          expect(Math.abs(place - path[(row + 1) % path.length]!)).toBeLessThanOrEqual(1);
        });
      }),
    );
  });
});
