// The orders in which fabrics are laid out.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawProject } from '../../src/drawing/drawProject';
import { type FabricAmount, fabricAmounts, foundByName, inOrder } from '../../src/drawing/fabricOrder';
import { clothValue } from '../../src/drawing/shares';
import type { Fabric } from '../../src/model/project';
import { anyHex, SEED } from '../colour/arbitraryColours';
import { demo } from '../demo';

const plain = (name: string, colour: string): Fabric => ({
  id: name, name, colour, cloth: { kind: 'plain' }, background: false,
}); // biome-ignore format: a table

const NO_AMOUNTS = new Map();
const names = (fabrics: readonly Fabric[]) => fabrics.map((fabric) => fabric.name);

describe('fabrics laid out', () => {
  it('by hue go once round the colour circle from red, and greys come last, light before dark', () => {
    const mixed = [
      plain('slate grey', '#555555'), plain('blue', '#2244cc'), plain('cream', '#f4f0ea'), plain('green', '#2f8f3f'),
      plain('red', '#cc2222'), plain('yellow', '#d9b41c'), plain('plum', '#7a2a8a'),
    ]; // biome-ignore format: a table
    const order = ['red', 'yellow', 'green', 'blue', 'plum', 'cream', 'slate grey'];
    expect(names(inOrder(mixed, 'hue', NO_AMOUNTS))).toEqual(order);
  });

  it('by value go from light to dark, by name from A, and none is lost in any order', () => {
    const project = demo('plum-orchard');
    const amounts = fabricAmounts(project, drawProject(project));
    const values = inOrder(project.fabrics, 'value', amounts).map(clothValue);
    expect(values).toEqual(values.toSorted((one, other) => other - one));
    for (const order of ['value', 'hue', 'amount', 'name'] as const) {
      const laid = inOrder(project.fabrics, order, amounts);
      expect(new Set(laid)).toEqual(new Set(project.fabrics));
    }
  });

  it('by amount begin with the largest share of the top, and go on with what is on hand', () => {
    const project = demo('harbour-reading-corner');
    const spare = [plain('much', '#111111'), plain('nothing', '#222222'), plain('little', '#333333')];
    project.fabrics.unshift(...spare);
    project.stripsOnHand.push({ id: 'x1', fabric: 'little', width: 1, length: 40, count: 1 });
    project.clothOnHand.push({
      id: 'x2',
      fabric: 'much',
      kind: 'remnant',
      stripLength: 20,
      depth: 9,
      count: 2,
    });
    const amounts = fabricAmounts(project, drawProject(project));
    expect([amounts.get('little')?.onHand, amounts.get('much')?.onHand]).toEqual([40, 360]);
    const laid = inOrder(project.fabrics, 'amount', amounts);
    const shares = laid.map((fabric) => amounts.get(fabric.id)?.share ?? 0);
    expect(shares).toEqual(shares.toSorted((one, other) => other - one));
    expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
    const unused = names(laid.filter((fabric) => !(amounts.get(fabric.id)?.share ?? 0)));
    expect(unused.indexOf('much')).toBeLessThan(unused.indexOf('little'));
    expect(unused.indexOf('little')).toBeLessThan(unused.indexOf('nothing'));
  });
});

const RUNS = { seed: SEED, numRuns: 250 };
const anyList = fc
  .array(fc.record({ name: fc.string({ maxLength: 12, unit: 'grapheme' }), colour: anyHex }), {
    maxLength: 40,
  })
  .map((rows) => rows.map(({ name, colour }, at) => ({ ...plain(name, colour), id: `f${at}` })));

describe('any list of fabrics', () => {
  it('is all there in every order, which is that of its key, and equal fabrics keep theirs', () => {
    const anyAmounts = fc.array(
      fc.record({ share: fc.constantFrom(0, 0.1, 0.2), onHand: fc.constantFrom(0, 5) }),
      {
        minLength: 40,
        maxLength: 40,
      },
    );
    fc.assert(
      fc.property(anyList, anyAmounts, (fabrics, rows) => {
        const amounts = new Map<string, FabricAmount>(fabrics.map(({ id }, at) => [id, rows[at]!]));
        for (const order of ['value', 'hue', 'amount', 'name'] as const) {
          const laid = inOrder(fabrics, order, amounts);
          expect(laid.map(({ id }) => id).sort()).toEqual(fabrics.map(({ id }) => id).sort());
          expect(inOrder(laid, order, amounts)).toEqual(laid);
        }
        const values = inOrder(fabrics, 'value', amounts).map(clothValue);
        expect(values.every((one, at) => at === 0 || one <= values[at - 1]!)).toBe(true);
        const byAmount = inOrder(fabrics, 'amount', amounts).map(({ id }) => amounts.get(id)!);
        const key = ({ share, onHand }: FabricAmount) => share * 1000 + onHand;
        expect(byAmount.map(key)).toEqual(byAmount.map(key).toSorted((one, other) => other - one));
      }),
      RUNS,
    );
  });

  it('is searched by words in any order, with or without accents and large letters, and each is found by its own name', () => {
    fc.assert(
      fc.property(anyList, fc.string({ maxLength: 3, unit: 'grapheme' }), (fabrics, text) => {
        const found = foundByName(fabrics, text);
        expect(found).toEqual(fabrics.filter((fabric) => found.includes(fabric)));
        expect(foundByName(found, text)).toEqual(found);
        expect(foundByName(fabrics, ` ${text}  `)).toEqual(found);
        for (const fabric of fabrics) expect(foundByName(fabrics, fabric.name)).toContain(fabric);
      }),
      RUNS,
    );
    const list = ['Écru crêpe', 'Rust stripe, wide', 'Wide rust check', 'Straße'].map((name) =>
      plain(name, '#777777'),
    );
    expect(names(foundByName(list, 'ecru'))).toEqual(['Écru crêpe']);
    expect(names(foundByName(list, 'CRÊPE'))).toEqual(['Écru crêpe']);
    expect(names(foundByName(list, 'rust wide'))).toEqual(['Rust stripe, wide', 'Wide rust check']);
    expect(names(foundByName(list, 'tartan'))).toEqual([]);
    expect(foundByName(list, '  ')).toEqual(list);
  });
});
