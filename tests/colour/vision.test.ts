import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { SEVERITY_MATRICES } from '../../src/colour/machadoMatrices';
import type { Matrix } from '../../src/colour/matrix';
import { parseHex } from '../../src/colour/parse';
import { value } from '../../src/colour/spaces';
import { visionMatrix } from '../../src/colour/vision';
import { anyHex, SEED } from './arbitraryColours';
import { seenAs } from './throughFilter';

const KINDS = ['protan', 'deutan', 'tritan'] as const;

/** Machado, Oliveira and Fernandes 2009 (IEEE TVCG 15(6), doi:10.1109/TVCG.2009.113), table for severity 1. */
const PUBLISHED: Readonly<Record<(typeof KINDS)[number], Matrix>> = {
  protan: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deutan: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  tritan: [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
};

/** Severity 1 by R package colorspace 2.1-0 (protan, deutan, tritan with linear = TRUE), an independent implementation. */
// biome-ignore format: a table
const SEEN: readonly { hex: string; protan: string; deutan: string; tritan: string }[] = [
  { hex: '#ff0000', protan: '#6d5f00', deutan: '#a39000', tritan: '#ff000f' },
  { hex: '#00ff00', protan: '#ffe500', deutan: '#efd63a', tritan: '#00f7d9' },
  { hex: '#0000ff', protan: '#0059ff', deutan: '#003dfb', tritan: '#006b96' },
  { hex: '#ffff00', protan: '#fff400', deutan: '#fffa31', tritan: '#ffeed9' },
  { hex: '#00ffff', protan: '#edf2ff', deutan: '#d0ddff', tritan: '#00fffe' },
  { hex: '#ff00ff', protan: '#007fff', deutan: '#689bfa', tritan: '#ff4a97' },
  { hex: '#808080', protan: '#808080', deutan: '#808080', tritan: '#808080' },
  { hex: '#ffffff', protan: '#ffffff', deutan: '#ffffff', tritan: '#ffffff' },
  { hex: '#b22222', protan: '#514820', deutan: '#74671b', tritan: '#c40024' },
  { hex: '#228b22', protan: '#8e7d0e', deutan: '#82752d', tritan: '#008777' },
  { hex: '#4169e1', protan: '#0879e5', deutan: '#006adf', tritan: '#00869b' },
  { hex: '#8b4513', protan: '#594e0a', deutan: '#6a5e11', tritan: '#99353b' },
  { hex: '#ffd700', protan: '#f0d300', deutan: '#fadf24', tritan: '#ffc4b7' },
];

describe('Colour vision', () => {
  it('uses the published matrices', () => {
    for (const kind of KINDS) expect(visionMatrix(kind, 1)).toEqual(PUBLISHED[kind]);
    // Severity 0.5 of the same tables, first row of each.
    expect(visionMatrix('protan', 0.5)[0]).toEqual([0.458064, 0.679578, -0.137642]);
    expect(visionMatrix('deutan', 0.5)[0]).toEqual([0.547494, 0.607765, -0.155259]);
    expect(visionMatrix('tritan', 0.5)[0]).toEqual([1.017277, 0.027029, -0.044306]);
  });

  it.each(SEEN)('shows $hex as R colorspace does, for all three', ({ hex, ...seen }) => {
    for (const kind of KINDS) expect(seenAs(kind, hex), kind).toBe(seen[kind]);
  });

  it('has eleven matrices for each kind, every row of which keeps greys grey', () => {
    for (const kind of KINDS) {
      expect(SEVERITY_MATRICES[kind]).toHaveLength(11);
      for (const [tenth, matrix] of SEVERITY_MATRICES[kind].entries()) {
        for (const row of matrix) {
          expect(Math.abs(row[0] + row[1] + row[2] - 1), `${kind} 0.${tenth}`).toBeLessThan(1.2e-6);
        }
      }
    }
  });

  it('goes from the colour itself at severity 0 evenly between the published tenths', () => {
    expect(seenAs('deutan', '#b22222', { severity: 0 })).toBe('#b22222');
    for (const kind of KINDS) {
      const middle = visionMatrix(kind, 0.75).flat();
      const ends = [visionMatrix(kind, 0.7).flat(), visionMatrix(kind, 0.8).flat()] as const;
      for (const [index, entry] of middle.entries()) {
        expect(entry).toBeCloseTo((ends[0][index]! + ends[1][index]!) / 2, 9);
      }
    }
  });

  it('refuses a severity outside 0 to 1', () => {
    for (const severity of [-0.1, 1.1, Number.NaN]) {
      expect(() => visionMatrix('protan', severity)).toThrow(/severity/);
    }
  });
});

describe('The grey picture', () => {
  it('shows each colour as the neutral of the same value, within half a step of 256', () => {
    fc.assert(
      fc.property(anyHex, (hex) => {
        const [red, green, blue] = parseHex(seenAs('grey', hex))!;
        expect(red).toBe(green);
        expect(green).toBe(blue);
        expect(Math.abs(value(seenAs('grey', hex)) - value(hex))).toBeLessThan(0.26);
      }),
      { seed: SEED, numRuns: 500 },
    );
  });

  it('leaves every grey as it is', () => {
    for (let level = 0; level < 256; level += 1) {
      const hex = `#${level.toString(16).padStart(2, '0').repeat(3)}`;
      expect(seenAs('grey', hex)).toBe(hex);
    }
  });
});
