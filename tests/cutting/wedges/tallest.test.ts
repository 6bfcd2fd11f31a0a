// The tallest wedge that the sets still give to the blocks, and what is said where a taller one is asked for.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { tallestWedge, whyTooTall } from '../../../src/cutting/wedges/tallest';
import { apply } from '../../../src/editing/apply';
import { changeHeightEmptying } from '../../../src/editing/commands/sets/wedgesPerBlock';
import { changeWedge, replaceSets } from '../../../src/editing/commands/stripSets';
import { speak } from '../../../src/model/phrase';
import type { Project } from '../../../src/model/project';
import { demo, unsewn } from '../../demo';
import { workshopProject } from '../../editing/workshopProject';
import { runs } from '../../runs';

const seed = 281_127;
const QUILT = unsewn(demo('harbour-reading-corner'));

/** The quilt with sets of these lengths and with these numbers of strips, cut 1 1/2" wide, its blocks using what they gave before. */
const quilts = fc
  .array(fc.record({ wide: fc.double({ min: 0, max: 1.5, noNaN: true }), longer: fc.double({ min: 0, max: 12, noNaN: true }) }), { minLength: 5, maxLength: 5 })
  .map((changes): Project => ({
    ...QUILT,
    stripSets: QUILT.stripSets.map((set, at) => ({
      ...set,
      length: set.length + (changes[at]?.longer ?? 0),
      strips: set.strips.map((strip, index) => (index === 0 ? { ...strip, width: strip.width + (changes[at]?.wide ?? 0) } : strip)),
    })),
  })); // biome-ignore format: a table of a quilt

const accepted = (project: Project, cutHeight: number) => apply(project, changeWedge({ cutHeight })).ok;

describe('the tallest wedge', () => {
  it('is accepted, and a sixteenth more is refused with that limit in words', () => {
    fc.assert(
      fc.property(quilts, (project) => {
        const tallest = tallestWedge(project)!;
        expect(accepted(project, tallest)).toBe(true);
        const outcome = apply(project, changeWedge({ cutHeight: tallest + 1 / 16 }));
        if (outcome.ok) throw new Error(`${tallest} is not the tallest`);
        const limit = speak({ say: '{limit}', with: { limit: { inches: tallest } } });
        expect(speak(outcome.problems[0]!.message)).toContain(`The tallest that fits is ${limit}.`);
      }),
      { seed, numRuns: runs(34, 100) },
    );
  });

  it('divides what is refused from what is not: no taller one fits, no lower one lacks wedges', () => {
    fc.assert(
      fc.property(quilts, fc.double({ min: 1, max: 40, noNaN: true }), (project, height) => {
        const tallest = tallestWedge(project)!;
        if (Math.abs(height - tallest) < 1 / 16) return;
        expect(whyTooTall(project, height) === null).toBe(height < tallest);
      }),
      { seed, numRuns: 300 },
    );
  });

  it('of one wedge that a set gives says so of one', () => {
    const said = [4, 5, 6, 7, 8].map((length) => {
      const [set, ...rest] = QUILT.stripSets;
      return speak(whyTooTall({ ...QUILT, stripSets: [{ ...set!, length }, ...rest] }, 7)!);
    });
    expect(said.filter((why) => why.includes(' 1 wedge 7" high, and blocks use ')).length).toBeGreaterThan(0);
    expect(said.filter((why) => why.includes(' 1 wedges '))).toEqual([]);
  });

  it('is on a millimetre where lengths are in centimetres', () => {
    const metric: Project = { ...QUILT, preferences: { ...QUILT.preferences, unit: 'cm' } };
    const millimetres = tallestWedge(metric)! * 25.4;
    expect(millimetres).toBeCloseTo(Math.round(millimetres), 6);
  });
});

describe('a height that is refused', () => {
  it('names the lowest set in use, its height and the limit', () => {
    const outcome = apply(QUILT, changeWedge({ cutHeight: 9 }));
    const words = outcome.ok ? '' : speak(outcome.problems[0]!.message);
    expect(words).toMatch(/^A wedge 9" high does not fit on set \w+, which blocks use: it is 8" high\. The tallest/);
  });

  it('is taken by the ways out: lower, sets made anew, blocks emptied', () => {
    for (const command of [
      changeWedge({ cutHeight: tallestWedge(QUILT)! }),
      replaceSets(QUILT, [], 1, 9),
      changeHeightEmptying(9),
    ]) {
      expect(apply(QUILT, command).ok).toBe(true);
    }
    const emptied = apply(QUILT, changeHeightEmptying(9));
    const places = emptied.ok ? emptied.project.blocks.flatMap((block) => block.places) : [];
    expect(places.every((place) => place === null)).toBe(true);
  });

  it('is not refused where no block uses a wedge yet', () => {
    expect(accepted(workshopProject(), 9)).toBe(true);
  });
}); // biome-ignore format: one line to a sentence
