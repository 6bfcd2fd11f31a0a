// Where fabrics lie: sums against the blocks, distances against brute force and a simulation of chance, leans and outlines.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { analyse } from '../../../src/balance/analyse';
import { joinsOfLabels } from '../../../src/balance/evenness/autocorrelation';
import { offsetWords, spreadWords } from '../../../src/balance/evenness/fabricWords';
import { NearestTable } from '../../../src/balance/evenness/nearest';
import { valueTarget } from '../../../src/balance/score/intent';
import { evenWeights } from '../../../src/balance/wall/contactGraph';
import { unionOutlines } from '../../../src/balance/wall/outline';
import { directionWords, positionWords } from '../../../src/balance/wall/position';
import { drawProject } from '../../../src/drawing/drawProject';

import { area, boxOutline, placed } from '../../../src/geometry/point';
import { apothem } from '../../../src/geometry/wedge';
import { speak } from '../../../src/model/phrase';
import type { Project } from '../../../src/model/project';
import { cellCount } from '../../../src/model/wallCells';
import { blockOutline } from '../../geometry/blockOutline';
import { clippedArea, overlap } from '../../geometry/clipping';
import { runs } from '../../runs';
import { dice, scrappyTop } from '../tops';

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

  it('counts pieces, wedges and rims as the drawing shows them', () => {
    const pieces = drawProject(project).blocks.flatMap((hung) =>
      hung.pieces.flatMap((piece) =>
        piece.part === 'band' ? [{ ...piece, wedge: `${hung.block} ${piece.place}` }] : [],
      ),
    );
    for (const one of analysis.fabrics) {
      const own = pieces.filter((piece) => piece.fabric === one.fabric);
      expect(one.pieces).toBe(own.length);
      expect(one.wedges).toBe(new Set(own.map((piece) => piece.wedge)).size);
      expect(one.rims).toBe(own.filter((piece) => piece.band === 1).length);
      expect(one.area).toBeCloseTo(
        own.reduce((sum, piece) => sum + area(piece.outline), 0),
        6,
      );
    }
    expect(new Set(analysis.fabrics.map((one) => one.rims)).size).toBeGreaterThan(3);
  });

  it('counts every piece to the quarters it lies in by area, as another library clips the drawing', () => {
    const tops = fc.record({
      rows: fc.integer({ min: 1, max: 3 }),
      columns: fc.integer({ min: 1, max: 3 }),
      perBlock: fc.constantFrom(6 as const, 8 as const, 12 as const),
      seed: fc.integer({ min: 1, max: 1000 }),
      onPoint: fc.boolean(),
      bare: fc.array(fc.boolean(), { minLength: 13, maxLength: 13 }),
      gaps: fc.array(fc.integer({ min: 0, max: 24 }), { minLength: 2, maxLength: 2 }),
    });
    fc.assert(
      fc.property(tops, ({ onPoint, bare, gaps, ...plan }) => {
        const top = scrappyTop({ ...plan, fabrics: 6 });
        // Where the middle of what hangs is no middle of a block, a line goes through pieces anywhere.
        if (onPoint && plan.perBlock !== 6) {
          const fabric = top.fabrics[0]!.id;
          top.setting = { ...top.setting, layout: { kind: 'onPoint', sides: fabric, corners: fabric } };
          const hung = top.wall.cells;
          const cells = cellCount(plan.rows, plan.columns, top.setting.layout);
          top.wall.cells = Array.from({ length: cells }, (_, at) => (bare[at] ? null : (hung.pop() ?? null)));
        } else {
          const { sashing } = top.setting;
          const columnGaps = gaps
            .slice(0, plan.columns - 1)
            .map((quarters, after) => ({ after, width: quarters / 4 }));
          top.setting = { ...top.setting, sashing: { ...sashing, where: 'between', width: 1, columnGaps } };
        }
        fc.pre(top.wall.cells.some((cell) => cell !== null));
        const drawn = drawProject(top).blocks.flatMap((hung) =>
          hung.pieces.flatMap((piece) =>
            piece.part === 'band'
              ? [
                  {
                    fabric: piece.fabric,
                    outline: placed(piece.outline, hung.quarters, hung.centre, hung.tilt),
                  },
                ]
              : [],
          ),
        );
        const centres = drawProject(top).blocks.map((hung) => hung.centre);
        const middle = (of: readonly number[]) => (Math.min(...of) + Math.max(...of)) / 2;
        const x = middle(centres.map((one) => one.x));
        const y = middle(centres.map((one) => one.y));
        const far = 1000;
        const boxes = [[x - far, y - far], [x, y - far], [x - far, y], [x, y]].map(([left, above]) =>
          boxOutline({ x: left!, y: above!, width: far, height: far }),
        ); // biome-ignore format: short
        for (const one of analyse(top).fabrics) {
          const own = drawn.filter((piece) => piece.fabric === one.fabric);
          const whole = own.reduce((sum, piece) => sum + area(piece.outline), 0);
          boxes.forEach((box, at) => {
            const inside = own.reduce((sum, piece) => sum + clippedArea(overlap(piece.outline, box)), 0);
            expect(one.quarters[at]! * one.area).toBeCloseTo(inside, 4);
          });
          expect(one.quarters.reduce((sum, part) => sum + part * one.area, 0)).toBeCloseTo(whole, 6);
        }
      }),
      { seed: 31, numRuns: runs(8, 40) },
    );
  });

  it('finds the next wedge with a fabric as brute force over the wall does, and the mean by chance as dealing does', () => {
    const { model } = analysis;
    const at = middles(project);
    const random = dice(4);
    for (const one of analysis.fabrics.slice(0, 8)) {
      const fabric = model.cloths.index.get(one.fabric)!;
      const areas = at.map(({ type }) => model.typeFabricArea[type * model.fabricCount + fabric]!);
      expect(one.nearest!.mean).toBeCloseTo(meanNearest(at, areas), 4);
      const permutations = 300;
      let sum = 0;
      for (let deal = 0; deal < permutations; deal++)
        sum += meanNearest(at, shuffled(areas, random)) / permutations;
      expect(Math.abs(sum / one.nearest!.byChance - 1), one.fabric).toBeLessThan(0.02);
    }
  });

  it('tells a fabric that hangs in one corner from the same one dealt out', () => {
    const rows = 4;
    const plain = Array.from({ length: rows * rows * 8 }, (_, at) => at);
    const table = new NearestTable(analyse(scrappyTop({ rows, columns: rows, seed: 5 })).model);
    const measured = (held: (at: number) => boolean) =>
      table.measure(Float64Array.from(plain, (at) => (held(at) ? 1 : 0)))!;
    const gathered = measured((at) => at < 16);
    const dealt = measured((at) => at % 8 === 3);
    expect(gathered.byChance).toBe(dealt.byChance);
    expect(gathered.mean).toBeLessThan(gathered.byChance * 0.75);
    expect(dealt.mean).toBeGreaterThan(dealt.byChance * 1.2);
    expect(dealt.mean).toBeCloseTo(14, 9);
  });

  it('says of fewer than three wedges that chance tells nothing', () => {
    const table = new NearestTable(analysis.model);
    expect(table.measure(new Float64Array(160).fill(1, 0, 2))).toBeNull();
  });

  it('counts joins of rims over the contacts of the wedges, as told pair by pair', () => {
    const { model, layers } = analysis;
    const { graph } = layers.wedges;
    const rims = layers.wedgeNodes.wedgeOf.map((wedge) => model.typeRim[model.typeAt[wedge]!]!);
    for (const one of analysis.fabrics) {
      const fabric = model.cloths.index.get(one.fabric)!;
      let both = 0;
      for (let node = 0; node < graph.size; node++) {
        for (let at = graph.start[node]!; at < graph.start[node + 1]!; at++) {
          if (graph.to[at]! > node && rims[node] === fabric && rims[graph.to[at]!] === fabric) both += 1;
        }
      }
      expect(one.joins.both.statistic).toBe(both);
      const marked = Array.from(rims, (rim) => (rim === fabric ? 1 : 0));
      expect(one.joins).toEqual(joinsOfLabels(evenWeights(graph), marked, 2)[1]);
    }
  });

  it('is said with its inches and what chance would give', () => {
    const [one] = analysis.fabrics;
    const words = spreadWords(one!, analysis.wholeTop.middle!).map((part) => speak(part));
    expect(words[0]).toMatch(/^[\d.]+ sq in, \d+% of the fabric in the wedges: \d+ pieces in \d+ wedges\.$/);
    expect(words[1]).toMatch(/^Its centre lies (.* the middle|in the very middle)\.$/);
    expect(words[3]).toMatch(/to the next, middle to middle: .*" on average; in a random layout .*"\.$/);
    expect(words.join(' ')).not.toMatch(/[{}]/);
    const rare = { ...one!, wedges: 1, pieces: 1, nearest: null };
    const few = spreadWords(rare, analysis.wholeTop.middle!).map((part) => speak(part));
    expect(few[0]).toMatch(/in the wedges: 1 piece in 1 wedge\.$/);
    expect(few[3]).toBe('In 1 wedge only: too few to say how far apart they lie.');
    expect(speak(offsetWords({ x: 0, y: -2.5 }))).toBe('2 1/2" above the middle');
    expect(speak(offsetWords({ x: 0.01, y: 0.02 }))).toBe('in the very middle');
  });
});

/** Middles and kinds of all hung wedges, from the turns and cells of the project. */
function middles(top: Project): { x: number; y: number; type: number }[] {
  const reach = (2 / 3) * apothem(top.wedge);
  return top.wall.cells.flatMap((cell, index) => {
    const block = top.blocks.find((one) => one.id === cell?.block);
    if (!cell || !block) return [];
    return block.places.flatMap((place, at) => {
      if (!place) return [];
      const angle = ((at + block.cornerShift + 2 * cell.turn) * Math.PI) / 4;
      const set = top.stripSets.findIndex((one) => one.id === place.set);
      return {
        x: (index % top.wall.columns) * 2 * apothem(top.wedge) + reach * Math.sin(angle),
        y: Math.floor(index / top.wall.columns) * 2 * apothem(top.wedge) - reach * Math.cos(angle),
        type: 2 * set + (place.tip === 'up' ? 0 : 1),
      };
    });
  });
}

function meanNearest(at: readonly { x: number; y: number }[], areas: readonly number[]): number {
  const held = at.map((one, index) => ({ ...one, area: areas[index]! })).filter((one) => one.area > 0);
  const reach = held.map((one) =>
    Math.min(
      ...held.filter((other) => other !== one).map((other) => Math.hypot(one.x - other.x, one.y - other.y)),
    ),
  );
  const whole = held.reduce((sum, one) => sum + one.area, 0);
  return held.reduce((sum, one, index) => sum + one.area * reach[index]!, 0) / whole;
}

function shuffled(list: readonly number[], random: ReturnType<typeof dice>): number[] {
  const left = [...list];
  return list.map(() => left.splice(random.below(left.length), 1)[0]!);
}

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
  it('light to dark permutations the lightest to the left, rows alike', () => {
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
