// Weight and bulk: cloth by laying the pieces down with polygon-clipping, layers by counting what covers a point.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  blockBulk,
  bulkReport,
  clothInWedge,
  layersAtMiddle,
  weightWords,
} from '../../../src/cutting/top/bulk';
import { boxOutline } from '../../../src/geometry/point';
import { cutWedge } from '../../../src/geometry/wedge';
import { createBlock } from '../../../src/model/create';
import { speak } from '../../../src/model/phrase';
import type { Strip } from '../../../src/model/project';
import { clippedArea, overlap } from '../../geometry/clipping';
import { flatHeight, seamLines, setAndWedge, usualWedge, wedgeOnSet } from '../../geometry/strips';
import { projectOf, stripSet } from '../fabrics';

describe('cloth in a wedge', () => {
  it('is every strip as cut, its allowances folded to the pressed side, cut by the template', () => {
    fc.assert(
      fc.property(
        setAndWedge,
        fc.constantFrom('up' as const, 'down' as const),
        fc.constantFrom('first' as const, 'last' as const),
        ({ strips, wedge }, tip, pressing) => {
          const height = flatHeight(strips, wedge.seam);
          const template = wedgeOnSet(tip, 30, height, wedge);
          const lines = seamLines(strips, wedge.seam);
          let cloth = clippedArea(overlap(template, boxOutline({ x: 0, y: 0, width: 99, height })));
          for (const line of lines.slice(1, -1)) {
            const from = pressing === 'last' ? line : line - wedge.seam;
            cloth +=
              2 *
              clippedArea(overlap(template, boxOutline({ x: 0, y: from, width: 99, height: wedge.seam })));
          }
          expect(Math.abs(clothInWedge({ strips, pressing }, tip, wedge) - cloth)).toBeLessThan(1e-5);
        },
      ),
      { seed: 52_000, numRuns: 60 },
    );
  });

  it('of one strip is the wedge as cut', () => {
    const { base, tip } = cutWedge(usualWedge);
    const single = { strips: [{ fabric: 'f1', width: 8 }], pressing: 'last' as const };
    expect(clothInWedge(single, 'up', usualWedge)).toBeCloseTo(((base + tip) / 2) * 7.5, 9);
  });
});

describe('layers where the points meet', () => {
  it.each([6, 8, 10, 12] as const)(
    'with %d wedges are one more than the wedges, counted at points round the middle',
    (perBlock) => {
      // Each seam lays two allowances on its clockwise side, from the rim to a seam's width beyond the middle.
      for (let at = 0; at < 50; at += 1) {
        const angle = 0.013 + (2 * Math.PI * at) / 50;
        const point = { x: 0.01 * Math.cos(angle), y: 0.01 * Math.sin(angle) };
        let layers = 1;
        for (let seam = 0; seam < perBlock; seam += 1) {
          const toward = (2 * Math.PI * seam) / perBlock;
          const along = point.x * Math.cos(toward) + point.y * Math.sin(toward);
          const aside = -point.x * Math.sin(toward) + point.y * Math.cos(toward);
          if (along > -0.25 && aside > 0 && aside < 0.25) layers += 2;
        }
        expect(layers).toBe(layersAtMiddle(perBlock));
      }
    },
  );
});

describe('the bulk of a top', () => {
  const strips: Strip[] = [2, 1, 1.5, 1, 1.5, 1, 2, 1.5].map((width, at) => ({
    fabric: `f${at + 1}`,
    width,
  }));
  const plain = projectOf({ stripSets: [stripSet('s1', strips, { cut: { up: 40, down: 40 } })] });
  const whole = createBlock(plain);
  const blocks = Array.from({ length: 6 }, (_, at) => ({
    ...whole,
    id: `b${at + 1}`,
    number: at + 1,
    places: whole.places.map((_place, place) => ({
      set: 's1',
      tip: place % 2 === 0 ? ('up' as const) : ('down' as const),
    })),
  }));
  const project = {
    ...plain,
    blocks,
    wall: {
      rows: 3,
      columns: 2,
      cells: blocks.map((block) => ({ block: block.id, turn: 0, pinned: false })),
    },
    setting: { ...plain.setting, sashing: { where: 'around' as const, width: 1.5, fabric: 'f1' } },
  };

  it('counts 56 strip seams, 8 between wedges and 4 at the corners in a block of the worked set', () => {
    const bulk = blockBulk(project, blocks[0]!);
    expect([bulk.stripSeams, bulk.wedgeSeams, bulk.cornerSeams, bulk.layersAtMiddle]).toEqual([56, 8, 4, 9]);
  });

  it('weighs its cloth, allowances included, with and without sashing', () => {
    const report = bulkReport(project);
    expect(report.asSet.top).toBeCloseTo(32.5 * 48, 6);
    expect(report.withoutSashing.top).toBeCloseTo(28 * 42, 6);
    const perBlock = blockBulk(project, blocks[0]!).cloth;
    expect(report.withoutSashing.cloth).toBeCloseTo(6 * perBlock, 6);
    // Sashing: 9 short pieces 1 1/2 × 14 (3 rows of 3) and 4 whole strips 32 1/2 × 1 1/2, each 1/2 in more both ways.
    expect(report.asSet.cloth - report.withoutSashing.cloth).toBeCloseTo(9 * 2 * 14.5 + 4 * 33 * 2, 6);
    expect(report.asSet.grams.light).toBeCloseTo(report.asSet.cloth * 0.0254 ** 2 * 135, 6);
    expect(report.asSet.grams.heavy / report.asSet.grams.light).toBeCloseTo(150 / 135, 9);
    expect(report.withoutSashing.layers).toBeGreaterThan(report.asSet.layers);
    expect(report.advice.length).toBeGreaterThanOrEqual(1);
  });

  it('is told in one figure where both ends of cotton round to the same', () => {
    const told = (light: number, heavy: number, unit: 'in' | 'cm') =>
      speak(weightWords({ light, heavy }, unit));
    expect(told(32, 36, 'in')).toBe('about 1 oz');
    expect(told(32, 36, 'cm')).toBe('about 30 to 40 g');
    expect(told(31, 34, 'cm')).toBe('about 30 g');
    expect(told(540, 600, 'in')).toBe('about 19 to 21 oz');
  });

  it('has no advice and weighs nothing without blocks', () => {
    const bare = projectOf({});
    expect(bulkReport(bare)).toMatchObject({
      block: null,
      asSet: { cloth: 0, grams: { light: 0 } },
      advice: [],
    });
  });
});
