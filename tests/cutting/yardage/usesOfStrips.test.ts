// What the strips of a fabric are cut for, as the cutter reads it: which width goes into which strip sets.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { stripsAlike, usesOfStrips } from '../../../src/cutting/yardage/lineWords';
import { yardage } from '../../../src/cutting/yardage/yardage';
import { speak } from '../../../src/model/phrase';
import type { Project } from '../../../src/model/project';
import { formatLength } from '../../../src/model/units';
import { randomProject } from '../../drawing/samples';
import { runs } from '../../runs';

const QUILTS = fc.record({
  seed: fc.integer({ min: 1, max: 9999 }),
  unit: fc.constantFrom('in' as const, 'cm' as const),
  lengths: fc.array(fc.constantFrom(12, 20, 40, 60, 400), { minLength: 3, maxLength: 3 }),
  /** So many times the sets are there, each time with other labels. */
  times: fc.constantFrom(1, 2, 5),
  quarters: fc.boolean(),
});

function quilt({ seed, unit, lengths, times, quarters }: typeof QUILTS extends fc.Arbitrary<infer One> ? One : never): Project {
  const project = randomProject(seed, 8, 1, 2);
  const stripSets = Array.from({ length: times }, (_, time) =>
    project.stripSets.map((set, index) => ({ ...set, id: `${set.id}-${time}`, label: `${'ABC'[index]}${time}`, length: lengths[index]! })),
  ).flat();
  return {
    ...project,
    preferences: { ...project.preferences, unit },
    buying: { ...project.buying, fatQuarters: quarters },
    stripSets,
    blocks: [],
    wall: { rows: 1, columns: 1, cells: [null] },
  };
} // biome-ignore format: a fixture

describe('strips for strip sets', () => {
  it('say which width goes into which sets, every set by its letter, and nothing twice', () => {
    let several = 0;
    fc.assert(
      fc.property(QUILTS, (one) => {
        const project = quilt(one);
        for (const { fabric, layout, lines } of yardage(project, 'whole').fabrics) {
          for (const strips of stripsAlike(layout)) {
            const uses = usesOfStrips(strips, lines).map((use) => speak(use, one.unit));
            const forSets = uses.filter((use) => use.startsWith('Strips for'));
            expect(new Set(uses).size, uses.join(' / ')).toBe(uses.length);
            if (forSets.length > 1) several += 1;
            for (const use of forSets) {
              const [, named, width] = /^Strips for strip sets? (.*), (.* wide)$/.exec(use) ?? [];
              const labels = named?.split(/, | and /) ?? [];
              const holding = (length: number) =>
                project.stripSets
                  .filter((set) => set.length === length && set.strips.some((strip) => strip.fabric === fabric.id && `${formatLength(strip.width, one.unit)} wide` === width))
                  .map(({ label }) => label);
              const length = project.stripSets.find(({ label }) => label === labels[0])?.length ?? 0;
              expect(labels, use).toEqual(holding(length));
            }
          }
        }
      }),
      { numRuns: runs(67, 200) },
    );
    expect(several).toBeGreaterThan(runs(2, 10));
  }); // biome-ignore format: one law
});
