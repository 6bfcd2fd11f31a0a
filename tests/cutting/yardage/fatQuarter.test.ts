// Fat quarters and cloth on hand as they really come: half the usable width, and the edge straightened before anything is cut.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type FabricYardage, fabricYardage } from '../../../src/cutting/yardage/fabricYardage';
import type { NeededPiece } from '../../../src/cutting/yardage/neededPiece';
import { boxOutline } from '../../../src/geometry/point';
import { phrase, speak } from '../../../src/model/phrase';
import type { ClothOnHand, Project } from '../../../src/model/project';
import { clippedArea, overlap } from '../../geometry/clipping';
import { runs } from '../../runs';
import { projectOf } from '../fabrics';

interface Shop {
  readonly width: number;
  readonly straighten: number;
  readonly shrinkage: number;
  readonly soldBy: 'yard' | 'metre';
}

const shops: fc.Arbitrary<Shop> = fc.record({
  width: fc.integer({ min: 30 * 8, max: 60 * 8 }).map((eighths) => eighths / 8),
  straighten: fc.integer({ min: 0, max: 32 }).map((eighths) => eighths / 8),
  shrinkage: fc.constantFrom(0, 0, 3, 5),
  soldBy: fc.constantFrom('yard' as const, 'metre' as const),
});

const USUAL: Shop = { width: 40, straighten: 1, shrinkage: 0, soldBy: 'yard' };

/** Fat quarters at a tenth of what cloth costs, so that they are bought wherever everything fits on them. */
function shopAt({ width, straighten, shrinkage, soldBy }: Shop, more: Partial<Project> = {}): Project {
  const project = projectOf(more);
  project.preferences.usableWidth = width;
  Object.assign(project.buying, { straighten, shrinkage, soldBy, price: 100, fatQuarterPrice: 0.1 });
  return project;
}

function rectangles(
  width: number,
  height: number,
  count: number,
  more: Partial<NeededPiece> = {},
): NeededPiece {
  return {
    step: 'corners', fabric: 'f1', what: phrase('Squares'), shape: 'rectangle', width, height, count, onHand: 0,
    upright: false, why: [], ...more,
  }; // biome-ignore format: short
}

function cut(
  project: Project,
  pieces: readonly NeededPiece[],
  scope: 'whole' | 'left' = 'whole',
): FabricYardage {
  return fabricYardage(project, project.fabrics[0]!, pieces, scope);
}

/** What of a fat quarter can be cut: half the width, half a yard or half a metre, washed, its edge cut off. */
function usable({ width, straighten, shrinkage, soldBy }: Shop) {
  const bought = soldBy === 'yard' ? 18 : 50 / 2.54;
  return { across: width / 2, along: (bought * (100 - shrinkage)) / 100 - straighten };
}

/** The pieces as they lie, sheet by sheet: all there, none over another or beyond a sheet of this size, lying either way. */
function expectLaid({ layout }: FabricYardage, count: number, across: number, along: number) {
  expect(layout.placed).toHaveLength(count);
  layout.placed.forEach((one, at) => {
    const piece = boxOutline({ x: one.x, y: one.y, width: one.across, height: one.along });
    const beyond = [across, along].map((width, turned) => {
      const sheet = boxOutline({ x: 0, y: 0, width, height: turned === 0 ? along : across });
      return one.across * one.along - clippedArea(overlap(piece, sheet));
    });
    expect(Math.min(...beyond)).toBeLessThan(1e-6);
    for (const other of layout.placed.slice(0, at)) {
      if (other.sheet !== one.sheet) continue;
      const its = boxOutline({ x: other.x, y: other.y, width: other.across, height: other.along });
      expect(clippedArea(overlap(piece, its))).toBeLessThan(1e-6);
    }
  });
}

describe('a fat quarter', () => {
  const side = fc.integer({ min: 12, max: 64 }).map((eighths) => eighths / 8);

  it('gives the squares that lie on half the width and half the length, straightened, and not one more', () => {
    fc.assert(
      fc.property(shops, side, fc.integer({ min: 1, max: 30 }), (shop, square, count) => {
        const { across, along } = usable(shop);
        const each = Math.floor(across / square + 1e-9) * Math.floor(along / square + 1e-9);
        fc.pre(each > 0);
        const found = cut(shopAt(shop), [rectangles(square, square, count)]);
        expect(found.buy).toEqual({ kind: 'fatQuarters', count: Math.ceil(count / each) });
        expectLaid(found, count, across, along);
      }),
      { seed: 91, numRuns: runs(50, 300) },
    );
  });

  it('holds pieces of several sizes where they are laid', () => {
    const pieces = fc.array(fc.tuple(side, side, fc.integer({ min: 1, max: 6 })), {
      minLength: 1,
      maxLength: 4,
    });
    fc.assert(
      fc.property(shops, pieces, (shop, sizes) => {
        const { across, along } = usable(shop);
        const found = cut(
          shopAt(shop),
          sizes.map(([width, height, count]) => rectangles(width, height, count)),
        );
        if (found.buy.kind !== 'fatQuarters') return;
        expectLaid(
          found,
          sizes.reduce((sum, [, , count]) => sum + count, 0),
          across,
          along,
        );
        expect(new Set(found.layout.placed.map((one) => one.sheet)).size).toBe(found.buy.count);
      }),
      { seed: 92, numRuns: runs(50, 150) },
    );
  });

  // 40" usable and 1" to straighten: 20" × 17", three squares by three.
  it.each([
    [9, 1],
    [12, 2],
    [24, 3],
  ])('%d squares of 5 1/2" take %d of them', (count, quarters) => {
    expect(cut(shopAt(USUAL), [rectangles(5.5, 5.5, count)]).buy).toEqual({
      kind: 'fatQuarters',
      count: quarters,
    });
  });

  it('says its size, and what it comes from, in the working', () => {
    const words = (shop: Shop, unit: 'in' | 'cm') =>
      cut(shopAt(shop), [rectangles(5.5, 5.5, 9)]).why.map((one) => speak(one, unit));
    expect(words(USUAL, 'in')).toContain(
      'A fat quarter gives 20" × 17" to cut: half of 40", and 18" less 1" to straighten it.',
    );
    const metric = { width: 110 / 2.54, straighten: 2 / 2.54, shrinkage: 4, soldBy: 'metre' } as const;
    expect(words(metric, 'cm')).toContain(
      'A fat quarter gives 55.0 cm × 46.0 cm to cut: half of 110.0 cm, and 50.0 cm less 4% in the wash and 2.0 cm to straighten it.',
    );
  });

  it('is no cloth for what would have to be joined from its bits', () => {
    const project = shopAt(USUAL);
    project.fabrics[0]!.oneWay = true;
    // Level borders of one-way cloth lie across it: 38" is one strip of the bolt, or two bits of 20".
    const borders = rectangles(38, 2.5, 2, { step: 'borders', upright: true });
    const found = cut(project, [borders]);
    expect(found.buy.kind).toBe('length');
    expect(found.lines.every((line) => line.join === null)).toBe(true);
    expect(cut(project, [{ ...borders, width: 19 }]).buy.kind).toBe('fatQuarters');
  });
});

describe('cloth on hand', () => {
  const cloth = (more: Partial<ClothOnHand>): ClothOnHand => ({
    id: 'c', fabric: 'f1', kind: 'yardage', stripLength: 40, depth: 12, count: 1, ...more,
  }); // biome-ignore format: short

  it('gives what lies on it once its edge is straightened; precut strips are straight', () => {
    const kinds = fc.constantFrom(
      'yardage' as const,
      'fat quarter' as const,
      'remnant' as const,
      'precut strips' as const,
    );
    const eighths = (least: number, most: number) =>
      fc.integer({ min: least * 8, max: most * 8 }).map((one) => one / 8);
    fc.assert(
      fc.property(
        shops,
        kinds,
        eighths(2, 40),
        eighths(10, 44),
        eighths(1, 4),
        (shop, kind, depth, long, wide) => {
          const clothOnHand = [cloth({ kind, depth, stripLength: long, count: 2 })];
          const project = shopAt(shop, { clothOnHand });
          project.buying.fatQuarters = false;
          const left = depth - (kind === 'precut strips' ? 0 : shop.straighten);
          const holds = 2 * Math.max(0, Math.floor(left / wide + 1e-9));
          // Strips as long as the cloth, so that the count is plain.
          const strips = (count: number) =>
            cut(project, [rectangles(long, wide, count, { step: 'sets' })], 'left');
          fc.pre(long > wide && long <= shop.width);
          if (holds > 0)
            expect(strips(holds)).toMatchObject({ buy: { kind: 'nothing' }, onHand: { enough: true } });
          const more = strips(holds + 1);
          expect(more.buy.kind).toBe('length');
          expect(more.onHand?.enough).toBe(false);
        },
      ),
      { seed: 93, numRuns: runs(100, 300) },
    );
  });

  it('says what is cut off it, where something is', () => {
    const words = (kind: ClothOnHand['kind'], straighten: number) => {
      const project = shopAt({ ...USUAL, straighten }, { clothOnHand: [cloth({ kind })] });
      return cut(project, [rectangles(20, 2, 2)], 'left').why.map((one) => speak(one));
    };
    const say = 'Of every piece of fabric on hand 1" is cut off to straighten the edge.';
    expect(words('remnant', 1)).toContain(say);
    expect(words('precut strips', 1)).not.toContain(say);
    expect(words('remnant', 0).join(' ')).not.toContain('straighten');
  });
});
