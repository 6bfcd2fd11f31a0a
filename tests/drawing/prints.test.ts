// Prints: what is drawn is what is measured. The measure is checked against pixels counted in a picture that another
// program (resvg) draws of the same pattern.
import { Resvg } from '@resvg/resvg-js';
import { describe, expect, it } from 'vitest';
import { meanLight } from '../../src/cloth/likeness';
import { printMix } from '../../src/cloth/print/printMix';
import { printTile } from '../../src/cloth/print/printTile';
import { linearOfHex } from '../../src/colour/spaces';
import { clothFill, patternFor } from '../../src/drawing/prints';
import { type Fabric, PRINT_MOTIFS, type PrintMotif } from '../../src/model/project';

function printed(motif: PrintMotif, change: { repeat?: number; angle?: number; seed?: number } = {}): Fabric {
  const print = { motif, inks: ['#20406a', '#c05a3a', '#7a9050'], repeat: 1.5, angle: 0, seed: 5, ...change };
  return {
    id: `f ${motif}`,
    name: motif,
    colour: '#f0e6d2',
    cloth: { kind: 'print', print },
    background: false,
  };
}

interface Picture {
  readonly width: number;
  readonly height: number;
  readonly pixels: Buffer;
}

/** The picture of one tile, `across` pixels wide, drawn from the pattern's own figures. */
function drawn(fabric: Fabric, across: number): Picture {
  const tile = printTile(fabric)!;
  const figures = patternFor(fabric)!
    .markup.replace(/^<pattern[^>]*>/, '')
    .replace(/<\/pattern>$/, '');
  const size = `viewBox="0 0 ${tile.width} ${tile.height}" width="${tile.width}" height="${tile.height}"`;
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" ${size}>${figures}</svg>`;
  const picture = new Resvg(svg, { fitTo: { mode: 'width', value: across } }).render();
  return { width: picture.width, height: picture.height, pixels: picture.pixels };
}

function nearest(shades: readonly (readonly number[])[], rgb: readonly number[]): number {
  let best = 0;
  let least = Number.POSITIVE_INFINITY;
  shades.forEach((shade, index) => {
    const off = shade.reduce((sum, channel, axis) => sum + (channel - rgb[axis]!) ** 2, 0);
    if (off < least) [best, least] = [index, off];
  });
  return best;
}

describe.each(PRINT_MOTIFS)('the %s print', (motif) => {
  it('covers as much of the cloth with each colour as its picture shows', () => {
    const fabric = printed(motif);
    const mix = printMix(fabric);
    expect(mix.reduce((sum, part) => sum + part.share, 0)).toBeCloseTo(1, 9);
    // Mean linear light of the picture: unlike colour names it also holds for half-tones.
    const { pixels } = drawn(fabric, 900);
    const sum = [0, 0, 0];
    for (let at = 0; at < pixels.length; at += 4) {
      for (const axis of [0, 1, 2]) sum[axis]! += linear[pixels[at + axis]!]!;
    }
    const picture = sum.map((channel) => channel / (pixels.length / 4));
    meanLight(mix).forEach((channel, axis) => {
      expect(Math.abs(channel - picture[axis]!)).toBeLessThan(0.006);
    });
  });

  it('joins itself at the edges of its tile as smoothly as anywhere inside', () => {
    const { width, height, pixels } = drawn(printed(motif), 600);
    const channel = (x: number, y: number, axis: number) => pixels[(y * width + x) * 4 + axis]!;
    const between = (x: number, next: number) => {
      let sum = 0;
      for (let y = 0; y < height; y += 1) sum += Math.abs(channel(x, y, 0) - channel(next, y, 0));
      return sum / height;
    };
    const betweenRows = (y: number, next: number) => {
      let sum = 0;
      for (let x = 0; x < width; x += 1) sum += Math.abs(channel(x, y, 0) - channel(x, next, 0));
      return sum / width;
    };
    const inside = Array.from({ length: width - 3 }, (_, x) => between(x + 1, x + 2));
    const insideRows = Array.from({ length: height - 3 }, (_, y) => betweenRows(y + 1, y + 2));
    const most = (values: number[]) =>
      values.toSorted((one, other) => one - other)[Math.floor(values.length * 0.98)]!;
    expect(between(width - 1, 0)).toBeLessThanOrEqual(most(inside) + 4);
    expect(betweenRows(height - 1, 0)).toBeLessThanOrEqual(most(insideRows) + 4);
  });

  it('is made of few nodes, the same for the same seed and another for another', () => {
    const markup = patternFor(printed(motif))!.markup;
    expect(markup.match(/<path/g)!.length).toBeLessThanOrEqual(16);
    expect(patternFor(printed(motif))!.markup).toBe(markup);
    expect(patternFor(printed(motif, { seed: 6 }))!.markup).not.toBe(markup);
  });

  it('keeps its shares at every size', () => {
    const shares = (repeat: number) =>
      printMix(printed(motif, { repeat }))
        .map((part) => `${part.hex} ${part.share.toFixed(3)}`)
        .toSorted();
    expect(shares(0.125)).toEqual(shares(12));
  });
});

const linear = Array.from(
  { length: 256 },
  (_, step) => linearOfHex(`#0000${step.toString(16).padStart(2, '0')}`)[2],
);

describe('printMix', () => {
  it('counts the very pixels of each ink where a print has no half-tones', () => {
    for (const motif of ['dots', 'stars', 'speckle', 'leaves', 'waves', 'ditsy'] as const) {
      const fabric = printed(motif);
      const mix = printMix(fabric);
      const { pixels } = drawn(fabric, 900);
      const shades = mix.map((part) =>
        [1, 3, 5].map((at) => Number.parseInt(part.hex.slice(at, at + 2), 16)),
      );
      const counts = mix.map(() => 0);
      for (let at = 0; at < pixels.length; at += 4) {
        counts[nearest(shades, [pixels[at]!, pixels[at + 1]!, pixels[at + 2]!])]! += 1;
      }
      mix.forEach((part, index) => {
        expect(
          Math.abs(part.share - counts[index]! / (pixels.length / 4)),
          `${motif} ${part.hex}`,
        ).toBeLessThan(0.012);
      });
    }
  });

  it('is a quarter ground, half half-tone and a quarter ink for gingham: half and half', () => {
    const mix = printMix(printed('gingham'));
    expect(mix).toHaveLength(2);
    for (const part of mix) expect(part.share).toBeCloseTo(0.5, 2);
  });

  it('gives plain cloth as its one colour', () => {
    const plain: Fabric = {
      id: 'x',
      name: '',
      colour: '#ABCDEF',
      cloth: { kind: 'plain' },
      background: false,
    };
    expect(printMix(plain)).toEqual([{ hex: '#abcdef', share: 1 }]);
    expect(patternFor(plain)).toBeNull();
    expect(clothFill(plain, 45)).toEqual({ fill: '#ABCDEF', turned: null });
  });
});

describe('a print on a turned strip', () => {
  it('turns with it where that shows, borrowing its figures from the upright one', () => {
    const stripe = printed('stripe', { angle: 10 });
    const { fill, turned } = clothFill(stripe, 45);
    expect(turned!.markup).toContain(`href="#${patternFor(stripe)!.id}"`);
    expect(turned!.markup).toContain('rotate(55)');
    expect(fill).toBe(`url(#${turned!.id})`);
    expect(clothFill(stripe, 225)).toEqual(clothFill(stripe, 45));
    expect(clothFill(stripe, 180).turned).toBeNull();
  });

  it('stays as it is where figures lie every way', () => {
    expect(clothFill(printed('ditsy'), 45).turned).toBeNull();
  });

  it('has an id that fits a url, different for different fabrics', () => {
    const ids = ['a b', 'a_b', 'a"b', 'ä', 'a_20_b'].map((id) => patternFor({ ...printed('dots'), id })!.id);
    for (const id of ids) expect(id).toMatch(/^[A-Za-z0-9_-]+$/);
    expect(new Set(ids).size).toBe(ids.length);
  });
});
