// Fabrics read from pixels: drawn prints of every motif, rendered, against the figures they were drawn from.
import { describe, expect, it } from 'vitest';
import { meanDistance, mixDistance } from '../../../src/cloth/likeness';
import { valueStatistics } from '../../../src/cloth/mixture';
import { printMix } from '../../../src/cloth/print/printMix';
import { value } from '../../../src/colour/spaces';
import { speak } from '../../../src/model/phrase';
import { PRINT_MOTIFS } from '../../../src/model/project';
import { atOnce } from '../../../src/model/work/parts';
import { type FabricReading, type FabricWish, readFabric } from '../../../src/photo/fabric/readFabric';
import { DAYLIGHT } from '../../../src/photo/light/light';
import { wholeFrame } from '../../../src/photo/pixels/frame';
import { pixelsOf } from '../../../src/photo/pixels/linear';
import type { Pixels } from '../../../src/photo/pixels/pixels';
import { runs } from '../../runs';
import { chance, throughJpeg } from '../render/clothLight';
import { clothPlane, printed } from '../render/clothScene';

const SEEDS = [1, 2].slice(0, runs(1, 2));

function readAll(pixels: Pixels, wish: Partial<FabricWish> = {}): FabricReading {
  const usual = { frame: wholeFrame(pixels), light: DAYLIGHT, uneven: null, perInch: null, seed: 5 };
  const read = atOnce(readFabric(pixels, { ...usual, ...wish }));
  if (!read.ok) throw new Error(read.problems[0]!.code);
  return read.value;
}

function print(motif: (typeof PRINT_MOTIFS)[number], seed: number, repeat: number) {
  return printed(motif, seed, chance(seed * 53 + motif.length), repeat);
}

/** A print shown whole: 3 repeats each way, in more pixels in the long run. */
function shown(motif: (typeof PRINT_MOTIFS)[number], seed: number, side = runs(240, 360), repeat = 2) {
  const fabric = print(motif, seed, repeat);
  const perInch = side / (3 * repeat);
  return { fabric, perInch, pixels: pixelsOf(clothPlane(fabric, side, side, perInch)) };
}

const drawn = new Map<string, ReturnType<typeof shown> & { read: FabricReading }>();

/** A print as `shown`, read once for all that is looked at in it. */
function readOnce(motif: (typeof PRINT_MOTIFS)[number], seed: number) {
  const key = `${motif} ${seed}`;
  let one = drawn.get(key);
  if (!one) {
    const print = shown(motif, seed);
    one = { ...print, read: readAll(print.pixels) };
    drawn.set(key, one);
  }
  return one;
}

describe.each(PRINT_MOTIFS)('a drawn print of %s', (motif) => {
  it.each(SEEDS)('gives the mix of its figures back (seed %i)', (seed) => {
    const { fabric, read } = readOnce(motif, seed);
    const { colours, mean, value: light, spread } = read;
    expect(colours.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
    expect(colours.length).toBeGreaterThan(1);
    expect(colours.length).toBeLessThanOrEqual(8);
    // Threads mixed too fine to see are one colour in a picture and two in the mix: that is up to half their difference.
    expect(mixDistance(colours, printMix(fabric))).toBeLessThan(10.5);
    expect(meanDistance([{ hex: mean, share: 1 }], printMix(fabric))).toBeLessThan(2.2);
    // Thin crossing lines of a check are blends all along, and one may be missed.
    expect(meanDistance(colours, printMix(fabric))).toBeLessThan(motif === 'check' ? 9 : 3);
    expect(light).toBeCloseTo(value(mean), 0);
    const drawn = valueStatistics(printMix(fabric).map(({ hex, share }) => ({ hex, area: share })))!;
    expect(Math.abs(spread - drawn.deviation)).toBeLessThan(motif === 'crosshatch' ? 15 : 6);
  });
});

it.each(PRINT_MOTIFS.filter((_, at) => at % runs(10, 1) === 0))(
  'a %s is read the same at half the size',
  (motif) => {
    const large = shown(motif, 3, 400);
    const half = shown(motif, 3, 200);
    const [one, other] = [readAll(large.pixels), readAll(half.pixels)];
    expect(mixDistance(one.colours, other.colours)).toBeLessThan(motif === 'crosshatch' ? 9 : 8);
    expect(Math.abs(one.value - other.value)).toBeLessThan(1);
  },
);

it.each(PRINT_MOTIFS.slice(0, runs(1, PRINT_MOTIFS.length)))(
  'a %s is read the same again with the same seed',
  (motif) => {
    const { pixels, read } = readOnce(motif, 1);
    expect(readAll(pixels)).toEqual(read);
  },
);

// How often figures come again in one repeat of the tool's own motifs; stripes come again once.
const PERIODIC = ['stripe', 'gingham', 'dots', 'check'] as const;
describe.each(PERIODIC)('the period of %s', (motif) => {
  // One repeat for each motif every day, all three in the long run.
  it.each([0, 1, 2].slice(0, runs(1, 3)).map((step) => 1 + ((PERIODIC.indexOf(motif) + step) % 3)))(
    'is a whole part of the repeat within 3 in 100, through JPEG 60 too (seed %i)',
    async (seed) => {
      const repeat = 1 + 0.5 * (seed % 4);
      const { pixels, perInch } = shown(motif, seed, undefined, repeat);
      for (const picture of [await throughJpeg(pixels, 60), pixels].slice(0, runs(1, 2))) {
        const { scale } = readAll(picture, { perInch });
        expect(scale).not.toBeNull();
        // Offset rows of dots come again on a slant: half a step across and one down.
        const whole =
          motif === 'dots' ? [repeat / scale!, (repeat * Math.sqrt(1.25)) / scale!] : [repeat / scale!];
        const off = Math.min(...whole.map((times) => Math.abs(times / Math.max(1, Math.round(times)) - 1)));
        expect(off).toBeLessThan(0.03);
      }
    },
  );
});

it('plain cloth has one colour, no repeat and its own name', async () => {
  const plain = {
    id: 'f',
    name: '',
    colour: '#2f6f73',
    cloth: { kind: 'plain' },
    background: false,
  } as const;
  const picture = await throughJpeg(pixelsOf(clothPlane(plain, 200, 150, 60)), 60);
  const read = readAll(picture, { perInch: 60 });
  expect(read.colours.length).toBe(1);
  expect(meanDistance(read.colours, printMix(plain))).toBeLessThan(1);
  expect([read.scale, read.figures]).toEqual([null, 'plain']);
  expect(speak(read.name)).toBe('dark teal');
});

it.each([
  ['stripe', 'stripe'],
  ['gingham', 'check'],
  ['check', 'check'],
  ['leaves', 'print'],
  ['ditsy', 'print'],
  ['dots', 'print'],
] as const)('a %s is called a %s', (motif, figures) => {
  for (const seed of SEEDS) expect(readOnce(motif, seed).read.figures).toBe(figures);
});

it('a frame beyond the picture, or too small, gets a sentence', () => {
  const { pixels } = shown('dots', 1, 120);
  const wish = { light: DAYLIGHT, uneven: null, perInch: null, seed: 1 };
  const codeOf = (width: number, x: number) => {
    const read = atOnce(readFabric(pixels, { ...wish, frame: { x, y: 60, width, height: width, angle: 0 } }));
    return read.ok ? 'read' : read.problems[0]!.code;
  };
  expect([codeOf(50, 60), codeOf(10, 60), codeOf(60, 10), codeOf(Number.NaN, 60)]).toEqual([
    'read',
    'frame-small',
    'frame-outside',
    'frame-small',
  ]);
});
