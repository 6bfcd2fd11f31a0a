// Where fabrics lie: sums against the blocks, distances against brute force and a simulation of chance, leans and outlines.
import { describe, expect, it } from 'vitest';
import { analyse } from '../../src/balance/analyse';
import { blockNodes } from '../../src/balance/contactGraph';
import { valueTarget } from '../../src/balance/intent';
import { NearestTable } from '../../src/balance/nearest';
import { unionOutlines } from '../../src/balance/outline';
import { directionWords, positionWords } from '../../src/balance/position';
import { blockOutline } from '../../src/geometry/block';
import { area, boxOutline } from '../../src/geometry/point';
import { speak } from '../../src/model/phrase';
import { dice, scrappyTop } from './tops';

const project = scrappyTop({ rows: 4, columns: 5, seed: 12 });
const analysis = analyse(project);

describe('the spread of the fabrics', () => {
  it('adds up to the wedges of the whole top', () => {
    const whole = 20 * area(blockOutline(project.wedge));
    expect(analysis.fabrics.reduce((sum, one) => sum + one.area, 0)).toBeCloseTo(whole, 6);
    expect(analysis.fabrics.reduce((sum, one) => sum + one.dominance, 0)).toBeCloseTo(1, 9);
    for (const one of analysis.fabrics) {
      expect(one.quarters.reduce((sum, part) => sum + part, 0)).toBeCloseTo(1, 9);
      expect(one.evenness).toBeGreaterThan(0);
      expect(one.evenness).toBeLessThanOrEqual(1);
      expect(one.centre.x).toBeGreaterThan(0);
      expect(one.centre.x).toBeLessThan(70);
    }
    const top = analysis.fabrics.toSorted((one, other) => other.dominance - one.dominance)[0]!;
    expect(analysis.dominant).toBe(top.fabric);
  });

  it('finds the nearest other block as brute force does, and the mean by chance as a simulation does', () => {
    const nodes = blockNodes(analysis.model);
    const table = new NearestTable(analysis.model, nodes);
    const at = Array.from(nodes.blockOf, (block) => {
      const cell = analysis.model.cellOf[block]!;
      return { x: (cell % 5) * 14, y: Math.floor(cell / 5) * 14 };
    });
    const plain = (marked: readonly number[]) => {
      const list = at.filter((_, node) => marked[node]);
      const nearest = list.map((one) =>
        Math.min(
          ...list
            .filter((other) => other !== one)
            .map((other) => Math.hypot(one.x - other.x, one.y - other.y)),
        ),
      );
      return nearest.reduce((sum, one) => sum + one, 0) / list.length;
    };
    const random = dice(4);
    for (const count of [3, 6, 11]) {
      let sum = 0;
      const deals = 4000;
      for (let deal = 0; deal < deals; deal++) {
        const marked = at.map(() => 0);
        for (let left = count; left > 0; ) {
          const pick = random.below(20);
          if (marked[pick]) continue;
          marked[pick] = 1;
          left -= 1;
        }
        const found = plain(marked);
        sum += found / deals;
        if (deal < 20) expect(table.measure(marked)!.mean).toBeCloseTo(found, 9);
      }
      const byChance = table.measure(at.map((_, node) => (node < count ? 1 : 0)))!.byChance;
      expect(Math.abs(sum / byChance - 1)).toBeLessThan(0.015);
    }
  });

  it('says of fewer than three blocks that chance tells nothing', () => {
    const table = new NearestTable(analysis.model, blockNodes(analysis.model));
    expect(table.measure([1, 1])).toBeNull();
  });
});

describe('outlines of pools', () => {
  const box = (x: number, y: number) => boxOutline({ x, y, width: 2, height: 2 });
  it('go round an L of boxes, keep boxes apart that meet in a corner, and go round a hole the other way', () => {
    expect(unionOutlines([box(0, 0), box(2, 0), box(0, 2)])).toHaveLength(1);
    expect(area(unionOutlines([box(0, 0), box(2, 0), box(0, 2)])[0]!)).toBeCloseTo(12, 12);
    expect(unionOutlines([box(0, 0), box(2, 2)]).map((one) => one.length)).toEqual([4, 4]);
    const ring = [0, 2, 4].flatMap((x) => [0, 2, 4].map((y) => box(x, y))).filter((_, at) => at !== 4);
    expect(
      unionOutlines(ring)
        .map(area)
        .toSorted((one, other) => one - other),
    ).toEqual([4, 36]);
  });
});

describe('places in words', () => {
  it('are thirds of the top and eighths of the compass', () => {
    const at = (x: number, y: number) => speak(positionWords({ x, y }, { width: 30, height: 60 }));
    expect([at(1, 1), at(15, 1), at(29, 59), at(15, 30), at(1, 30), at(-5, 99)]).toEqual([
      'upper left', 'at the top', 'lower right', 'in the middle', 'on the left', 'lower left',
    ]); // biome-ignore format: a row
    expect([directionWords(1, 0), directionWords(0, -1), directionWords(-1, 1)].map((one) => speak(one))).toEqual([
      'right', 'top', 'lower left',
    ]); // biome-ignore format: a row
  });
});

describe('the wanted order', () => {
  const cells = { x: [0, 1, 2, 0, 1, 2], y: [0, 0, 0, 1, 1, 1], filled: [1, 1, 1, 1, 1, 1] };
  const deviations = [5, 3, 1, -1, -3, -5];
  it('light to dark deals the lightest to the left, rows alike', () => {
    const found = valueTarget({ value: 'light to dark', colour: 'scattered' }, cells, deviations);
    expect(Array.from(found)).toEqual([4, 0, -4, 4, 0, -4]);
  });
  it('light middle is the opposite of dark middle in where the light goes', () => {
    const light = valueTarget({ value: 'light middle', colour: 'scattered' }, cells, deviations);
    const dark = valueTarget({ value: 'dark middle', colour: 'scattered' }, cells, deviations);
    expect(light[1]).toBe(4);
    expect(dark[1]).toBe(-4);
    expect(light.reduce((sum, one) => sum + one, 0)).toBeCloseTo(0, 12);
  });
});
