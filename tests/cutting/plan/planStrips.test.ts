// Planning forwards, against an exact integer programme (HiGHS) and against the sets that the strips really make.
import fc from 'fast-check';
import highsLoader from 'highs';
import { describe, expect, it } from 'vitest';
import { planStrips, usualWidths } from '../../../src/cutting/plan/planStrips';
import { OFF_PROPORTION, setPatterns, totalsCost, totalsTable } from '../../../src/cutting/plan/setTotals';
import { makeSets } from '../../../src/cutting/sets/randomSets';
import { speak } from '../../../src/model/phrase';
import { usualWedge } from '../../geometry/strips';
import { runs } from '../../runs';
import { plainFabrics } from '../fabrics';

const seed = 53_000;
const highs = await highsLoader();

/** Cheapest totals as an integer programme straight from the strips of each set, without patterns. */
function exactCost(sets: number, widths: readonly { width: number; part: number }[], height: number): number {
  const parts = widths.reduce((sum, one) => sum + one.part, 0);
  const lines: string[] = [];
  const whole: string[] = [];
  const objective: string[] = [];
  const columns = widths.map((_, at) => Array.from({ length: sets }, (__, set) => `x_${set}_${at}`));
  for (let set = 0; set < sets; set += 1) {
    const reach = widths.map((one, at) => `${one.width - 0.5} x_${set}_${at}`).join(' + ');
    const beyond = Math.max(0.5, Math.min(...widths.map((one) => one.width - 0.5)));
    lines.push(`${reach} >= ${height - 0.5}`, `${reach} <= ${height - 0.5 + beyond - 0.001}`);
    // The same sets in another order are no other answer.
    if (set > 0) lines.push(`x_${set - 1}_0 - x_${set}_0 >= 0`);
  }
  widths.forEach((one, at) => {
    whole.push(...columns[at]!);
    objective.push(...columns[at]!.map((name) => `${one.width} ${name}`), `${OFF_PROPORTION / 2} d_${at}`);
    const share = widths.flatMap((_, other) =>
      columns[other]!.map((name) => `${(other === at ? 1 : 0) - one.part / parts} ${name}`),
    );
    const sum = share.join(' + ').replaceAll('+ -', '- ');
    lines.push(`${sum} - d_${at} <= 0`, `${sum} + d_${at} >= 0`);
  });
  const text = `Minimize\n ${objective.join(' + ')}\nSubject To\n ${lines.join('\n ')}\nGeneral\n ${whole.join(' ')}\nEnd`;
  return highs.solve(text, { mip_rel_gap: 0 }).ObjectiveValue;
}

describe('strips for so many sets', () => {
  it('cost no more than the integer programme finds, for up to four sets', () => {
    const random = fc.record({
      sets: fc.integer({ min: 1, max: 4 }),
      widths: fc.uniqueArray(fc.constantFrom(0.75, 1, 1.25, 1.5, 2, 2.5), { minLength: 1, maxLength: 3 }),
      parts: fc.array(fc.integer({ min: 1, max: 3 }), { minLength: 3, maxLength: 3 }),
      height: fc.constantFrom(4.5, 6, 8),
    });
    fc.assert(
      fc.property(random, ({ sets, widths, parts, height }) => {
        const wanted = widths.map((width, at) => ({ width, part: parts[at]! }));
        const found = totalsTable(wanted, height, 0.25)(sets)!;
        expect(found.exact).toBe(true);
        expect(found.cost).toBeCloseTo(totalsCost(found.counts, wanted), 9);
        expect(found.cost).toBeCloseTo(exactCost(sets, wanted, height), 6);
        for (const set of found.sets) {
          const reach = set.reduce((sum, count, at) => sum + count * (widths[at]! - 0.5), 0.5);
          expect(reach).toBeGreaterThanOrEqual(height - 1e-9);
        }
      }),
      { seed, numRuns: runs(4, 20) },
    );
  });

  it('keep near the proportion for many sets, and say that they are no longer proved', () => {
    const found = totalsTable(usualWidths('in'), 8, 0.25)(64)!;
    expect(found.exact).toBe(false);
    const strips = found.counts.reduce((sum, count) => sum + count, 0);
    found.counts.forEach((count, at) => {
      expect(Math.abs(count / strips - usualWidths('in')[at]!.part / 5)).toBeLessThan(0.05);
    });
    for (const [at, count] of found.counts.entries()) {
      expect(found.sets.reduce((sum, set) => sum + set[at]!, 0)).toBe(count);
    }
  });

  it('are none for a width that vanishes in its seams, or when no set is asked', () => {
    expect(setPatterns([0.5, 1], 8, 0.25).patterns).toEqual([]);
    expect(totalsTable(usualWidths('in'), 8, 0.25)(0)).toBeNull();
    expect(totalsTable([], 8, 0.25)(1)).toBeNull();
  });
});

describe('a plan for wanted blocks', () => {
  it('shares the strips evenly among the fabrics and counts their cloth', () => {
    const fabrics = plainFabrics(7).map((fabric) => fabric.id);
    const plan = planStrips({
      blocks: 6,
      wedge: usualWedge,
      widths: usualWidths('in'),
      fabrics,
      length: 40,
    })!;
    const strips = fabrics.map((fabric) =>
      plan.strips.reduce((sum, one) => sum + (one.fabric === fabric ? one.count : 0), 0),
    );
    expect(Math.max(...strips) - Math.min(...strips)).toBeLessThanOrEqual(1);
    const inches = plan.strips.reduce((sum, one) => sum + one.count * one.width, 0);
    expect(plan.cloth.reduce((sum, one) => sum + one.inches, 0)).toBeCloseTo(inches, 9);
    expect(speak(plan.words[0]!)).toBe('5 strip sets 8" high give 55 wedges.');
  });

  it('lists strips from which the sets can be made at random, with nothing missing', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 12 }),
        fc.integer({ min: 4, max: 10 }),
        fc.nat(99),
        (blocks, count, anySeed) => {
          const fabrics = plainFabrics(count);
          const plan = planStrips({
          blocks, wedge: usualWedge, widths: usualWidths('in'), fabrics: fabrics.map((one) => one.id), length: 40,
        })!; // biome-ignore format: short
          const stripsOnHand = plan.strips.map((strip, at) => ({ ...strip, id: `r${at}`, length: 40 }));
          const made = makeSets({
            fabrics,
            lookalikes: 10,
            stripsOnHand,
            wedge: usualWedge,
            keep: [],
            want: { blocks },
            seed: anySeed,
          });
          expect(made.sets.length).toBe(plan.sets);
          expect(made.notes).toEqual([]);
        },
      ),
      { seed, numRuns: runs(3, 10) },
    );
  });

  it('is none without fabrics, blocks, or a strip long enough for two wedges', () => {
    const wanted = { blocks: 6, wedge: usualWedge, widths: usualWidths('in'), fabrics: ['f1'], length: 40 };
    expect(planStrips({ ...wanted, fabrics: [] })).toBeNull();
    expect(planStrips({ ...wanted, blocks: 0 })).toBeNull();
    expect(planStrips({ ...wanted, length: 8 })).toBeNull();
  });
});
