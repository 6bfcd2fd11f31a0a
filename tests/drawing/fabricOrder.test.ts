// The orders in which fabrics are laid out.
import { describe, expect, it } from 'vitest';
import { drawProject } from '../../src/drawing/drawProject';
import { fabricAmounts, inOrder } from '../../src/drawing/fabricOrder';
import { clothValue } from '../../src/drawing/shares';
import type { Fabric } from '../../src/model/project';
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
