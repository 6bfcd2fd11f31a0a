// The first sewn block: worked figures of the trade notes (plane geometry) and the way back through the block's size.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { explainMeasure, seamRange } from '../../../src/cutting/wedges/measure';
import { unfinishedBlock, wedgeProblem } from '../../../src/geometry/wedge';
import { speak } from '../../../src/model/phrase';
import type { WedgePlan } from '../../../src/model/project';
import { usualWedge } from '../../geometry/strips';

describe('a sewn block that is measured', () => {
  it('at 14 1/4 where 14 1/2 was planned comes from an assembly seam of about 0.2978 (trade notes 3)', () => {
    const found = explainMeasure(usualWedge, 14.25);
    if (!found.ok) throw new Error('refused');
    expect(found.value.seam).toBeCloseTo(0.2978, 4);
    expect(found.value.off).toBeCloseTo(-0.25, 12);
    expect(found.value.asPlanned).toBe(false);
    expect(speak(found.value.words)).toBe(
      'A block of 14 1/4" where 14 1/2" was planned comes from a seam of about 0.298" between the wedges.',
    );
    expect(speak(found.value.words, 'cm')).toContain('a seam of about 7.6 mm between the wedges.');
  });

  it('gives a plan whose block measures just that, for every number of wedges and every seam in the range', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(6, 8, 10, 12) as fc.Arbitrary<WedgePlan['perBlock']>,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.constantFrom(5, 7.5, 9),
        (perBlock, part, cutHeight) => {
          const wedge: WedgePlan = { ...usualWedge, perBlock, cutHeight };
          const { least, most } = seamRange(wedge);
          const assemblySeam = least + part * (most - least);
          const sewn: WedgePlan = { ...wedge, assemblySeam };
          const found = explainMeasure(wedge, unfinishedBlock(sewn).height);
          expect(found.ok).toBe(true);
          if (!found.ok) return;
          expect(found.value.seam).toBeCloseTo(assemblySeam, 9);
          expect(unfinishedBlock(found.value.wedge).height).toBeCloseTo(unfinishedBlock(sewn).height, 9);
          expect(wedgeProblem(found.value.wedge)).toBeNull();
        },
      ),
      { seed: 51_000, numRuns: 60 },
    );
  });

  it('states a tolerance: a ruler read half a sixteenth off moves the seam by no more than that', () => {
    for (const read of [14.25 - 1 / 32, 14.25 + 1 / 32]) {
      const exact = explainMeasure(usualWedge, 14.25);
      const off = explainMeasure(usualWedge, read);
      if (!exact.ok || !off.ok) throw new Error('refused');
      expect(Math.abs(off.value.seam - exact.value.seam)).toBeCloseTo(exact.value.tolerance, 12);
    }
  });

  it('within a sixteenth of the plan is as planned', () => {
    const found = explainMeasure(usualWedge, 14.5 + 1 / 16);
    expect(found.ok && found.value.asPlanned).toBe(true);
    expect(found.ok && speak(found.value.words)).toBe(
      'A block of 14 9/16" is as planned, to the nearest sixteenth.',
    );
  });

  it('in centimetres is read to the millimetre', () => {
    const millimetre = 0.1 / 2.54;
    const near = explainMeasure(usualWedge, 14.5 + millimetre, 'cm');
    expect(near.ok && speak(near.value.words, 'cm')).toBe(
      'A block of 36.9 cm is as planned, to the nearest millimetre.',
    );
    // A sixteenth of an inch is more than a millimetre.
    const further = explainMeasure(usualWedge, 14.5 + 1 / 16, 'cm');
    expect(further.ok && further.value.asPlanned).toBe(false);
    const inInches = explainMeasure(usualWedge, 14.25);
    const inCentimetres = explainMeasure(usualWedge, 14.25, 'cm');
    if (!inInches.ok || !inCentimetres.ok) throw new Error('refused');
    expect(inCentimetres.value.tolerance / inInches.value.tolerance).toBeCloseTo(16 * millimetre, 12);
  });

  it('is refused with the reason where no seam explains it: too large, too small, or no measure', () => {
    const say = (across: number) => {
      const found = explainMeasure(usualWedge, across);
      return found.ok ? 'explained' : `${found.problems[0]!.code}: ${speak(found.problems[0]!.message)}`;
    };
    // A half inch seam makes 14 − (1/4)·2/sin 22.5° + 1/2 = 13.193; the least that leaves no hole makes 15.
    expect(say(13)).toMatch(/^too-small: .*13".*1\/2" these wedges still make 13 3\/16"/);
    expect(say(15.1)).toMatch(/^too-large: .*make 15" at most/);
    expect(say(13.2)).toBe('explained');
    expect(say(15)).toBe('explained');
    expect(say(0)).toMatch(/^not-a-measure/);
    expect(say(Number.NaN)).toMatch(/^not-a-measure/);
  });
});
