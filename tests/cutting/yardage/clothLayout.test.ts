// The listed cloth suffices because a layout is built on it: checked against an independent polygon library.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type ClothLayout, type CutPart, layOutCutting } from '../../../src/cutting/yardage/clothLayout';
import { boxOutline, type Outline } from '../../../src/geometry/point';
import { clippedArea, overlap } from '../../geometry/clipping';
import { runs } from '../../runs';

/** Sizes in sixteenths, as they come off a ruler. */
const sixteenths = (least: number, most: number) =>
  fc.integer({ min: least * 16, max: most * 16 }).map((count) => count / 16);

const parts: fc.Arbitrary<CutPart[]> = fc
  .array(
    fc.record({ across: sixteenths(1, 36), along: sixteenths(1, 16), count: fc.integer({ min: 1, max: 5 }) }),
    {
      minLength: 1,
      maxLength: 6,
    },
  )
  .map((list) => list.map((part, line) => ({ ...part, line })));

const stock = fc.array(fc.record({ across: sixteenths(6, 44), along: sixteenths(2, 24) }), { maxLength: 3 });

/** Largest shared or outlying area of all pieces, square inches. */
function worst(layout: ClothLayout): number {
  const outlines = layout.placed.map(
    (cut): Outline => boxOutline({ x: cut.x, y: cut.y, width: cut.across, height: cut.along }),
  );
  let most = 0;
  layout.placed.forEach((cut, index) => {
    const sheet = layout.sheets[cut.sheet]!;
    const whole = boxOutline({ x: 0, y: 0, width: sheet.across, height: sheet.along });
    most = Math.max(most, cut.across * cut.along - clippedArea(overlap(outlines[index]!, whole)));
    for (let other = 0; other < index; other += 1) {
      if (layout.placed[other]!.sheet !== cut.sheet) continue;
      most = Math.max(most, clippedArea(overlap(outlines[index]!, outlines[other]!)));
    }
  });
  return most;
}

function countsOf(layout: ClothLayout): Map<string, number> {
  const counts = new Map<string, number>();
  for (const { line, across, along } of layout.placed) {
    const key = `${line} ${across} ${along}`;
    counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  return counts;
}

describe('pieces laid out on cloth', () => {
  it('lie the same however many more pieces of fabric alike are there than could be used', () => {
    /** Every cut with the row of the cloth on hand that it is cut from, and the number of its piece in that row. */
    const laid = (wanted: CutPart[], onHand: { across: number; along: number }[], alike: number) => {
      const piles = onHand.flatMap((piece) => Array.from({ length: alike }, () => piece));
      const layout = layOutCutting(wanted, { width: 40 }, piles)!;
      const cuts = layout.placed.map(({ sheet, ...cut }) => {
        const at = layout.sheets[sheet]!.stock;
        return { ...cut, from: at === null ? null : [Math.floor(at / alike), at % alike] };
      });
      return { cuts, length: layout.length, sheets: layout.sheets.length };
    };
    const rows = stock.map((all) => all.slice(0, 1));
    fc.assert(
      fc.property(parts, rows, (wanted, onHand) => {
        const needed = wanted.reduce((sum, { count }) => sum + count, 0);
        const [few, many] = [laid(wanted, onHand, needed), laid(wanted, onHand, needed + 3000)];
        expect(many).toEqual(few);
      }),
      { numRuns: runs(34, 100), seed: 41 },
    );
  });

  it('are all there, none over another, none beyond the cloth', () => {
    fc.assert(
      fc.property(parts, stock, (wanted, onHand) => {
        const layout = layOutCutting(wanted, { width: 40 }, onHand)!;
        expect(worst(layout)).toBeLessThan(1e-6);
        expect(countsOf(layout)).toEqual(
          new Map(wanted.map(({ line, across, along, count }) => [`${line} ${across} ${along}`, count])),
        );
      }),
      { seed: 51, numRuns: runs(20, 60) },
    );
  });

  it('on sheets keep to the sheets, and the new ones are counted', () => {
    fc.assert(
      fc.property(parts, (wanted) => {
        const small = wanted.map((part) => ({ ...part, across: Math.min(part.across, 22) }));
        const layout = layOutCutting(small, { width: 22, sheetLength: 18 })!;
        expect(worst(layout)).toBeLessThan(1e-6);
        expect(layout.placed).toHaveLength(small.reduce((sum, part) => sum + part.count, 0));
        expect(new Set(layout.placed.map((cut) => cut.sheet)).size).toBe(layout.newSheets);
      }),
      { seed: 52, numRuns: 60 },
    );
  });

  it('take no more cloth than each line cut from strips of its own, and no less than their area', () => {
    fc.assert(
      fc.property(parts, (wanted) => {
        const layout = layOutCutting(wanted, { width: 40 })!;
        const byLine = wanted.map(
          ({ across, along, count }) => Math.ceil(count / Math.floor((40 + 1e-9) / across)) * along,
        );
        const area = wanted.reduce((sum, part) => sum + part.across * part.along * part.count, 0);
        expect(layout.length).toBeLessThanOrEqual(byLine.reduce((sum, one) => sum + one, 0) + 1e-9);
        expect(layout.length * 40).toBeGreaterThanOrEqual(area - 1e-6);
      }),
      { seed: 53, numRuns: 200 },
    );
  });

  it('can be cut with straight cuts only: every row lies in a strip right across its cloth', () => {
    fc.assert(
      fc.property(parts, stock, (wanted, onHand) => {
        const layout = layOutCutting(wanted, { width: 40 }, onHand)!;
        for (const cut of layout.placed) {
          const strip = layout.strips[cut.strip]!;
          expect(cut.sheet).toBe(strip.sheet);
          expect(cut.y).toBeGreaterThanOrEqual(strip.y - 1e-9);
          expect(cut.y + cut.along).toBeLessThanOrEqual(strip.y + strip.along + 1e-9);
        }
        const inStrips = layout.strips
          .flatMap((strip) => strip.rows)
          .reduce((sum, row) => sum + row.count, 0);
        expect(inStrips).toBe(layout.placed.length);
      }),
      { seed: 54, numRuns: 100 },
    );
  });

  it('use the cloth on hand before new cloth', () => {
    const layout = layOutCutting([{ line: 0, across: 40, along: 2, count: 4 }], { width: 40 }, [
      { across: 42, along: 5 },
    ])!;
    expect(layout.placed.filter((cut) => layout.sheets[cut.sheet]!.stock === 0)).toHaveLength(2);
    expect(layout.length).toBe(4);
  });

  it('larger than the cloth have no layout', () => {
    expect(layOutCutting([{ line: 0, across: 41, along: 2, count: 1 }], { width: 40 })).toBeNull();
    expect(
      layOutCutting([{ line: 0, across: 4, along: 19, count: 1 }], { width: 22, sheetLength: 18 }),
    ).toBeNull();
  });

  it('take nothing when there are none', () => {
    expect(layOutCutting([], { width: 40 })).toMatchObject({ length: 0, newSheets: 0, placed: [] });
  });
});
