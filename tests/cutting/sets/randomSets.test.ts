// Sets made at random: what must hold for every seed, and the rules of thumb (common practice, no source) as far as the
// strips allow them.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type MadeSets, makeSets, type SetMaking, setMakingOf } from '../../../src/cutting/sets/randomSets';
import { stripKey } from '../../../src/cutting/sets/stripsUnused';
import { availableWedges } from '../../../src/cutting/wedges/yield';
import { setHeight } from '../../../src/geometry/stripSet';
import { speak } from '../../../src/model/phrase';
import type { StripOnHand, StripSet } from '../../../src/model/project';
import { usualWedge } from '../../geometry/strips';
import { runs } from '../../runs';
import { plainFabrics, projectOf, stripSet, stripsOf } from '../fabrics';

const seed = 31_000;
const fabrics = plainFabrics(12);
/** The usual proportion, 2 : 2 : 1 of 1, 1 1/2 and 2. */
const usualStrips = stripsOf(fabrics, [[1, 4], [1.5, 4], [2, 2]]); // biome-ignore format: a table

function making(more: Partial<SetMaking>): SetMaking {
  return {
    fabrics,
    lookalikes: 10,
    stripsOnHand: usualStrips,
    wedge: usualWedge,
    keep: [],
    want: { sets: 5 },
    seed: 1,
    ...more,
  };
}

/** A maker who cuts by centimetres is told of round ones, also where there are no strips to go by. */
it('names the strips that are wanted in the usual sizes of the person’s unit', () => {
  const said = (unit: 'in' | 'cm') =>
    makeSets(making({ stripsOnHand: [], unit, want: { sets: 2 } }))
      .notes.map((note) => speak(note, unit))
      .join(' ');
  expect(said('in')).toContain('more strips cut 1 1/2" wide, 40" long or longer');
  expect(said('cm')).toContain('more strips cut 4.0 cm wide, 105.0 cm long or longer');
});

function counts(rows: readonly { fabric: string; width: number; count?: number }[]): Map<string, number> {
  const found = new Map<string, number>();
  for (const row of rows) {
    const key = stripKey(row.fabric, row.width);
    found.set(key, (found.get(key) ?? 0) + (row.count ?? 1));
  }
  return found;
}

/** On hand = in new sets + in kept sets (as far as on hand) + left, for every fabric and width. */
function expectNothingLostOrInvented(
  made: MadeSets,
  onHand: readonly StripOnHand[],
  keep: readonly StripSet[] = [],
) {
  const there = counts(onHand);
  const sewn = counts(made.sets.flatMap((set) => set.strips));
  const kept = counts(keep.flatMap((set) => set.strips));
  const left = counts(made.left);
  for (const [key, count] of there) {
    const takenByKept = Math.min(kept.get(key) ?? 0, count);
    expect((sewn.get(key) ?? 0) + takenByKept + (left.get(key) ?? 0), key).toBe(count);
  }
  for (const key of sewn.keys()) expect(there.has(key), `${key} was never on hand`).toBe(true);
}

describe('strip sets made at random', () => {
  it('are high enough, with neighbours of different fabrics and no narrowest strip on the outside, for every seed', () => {
    fc.assert(
      fc.property(fc.nat(10_000), (anySeed) => {
        const made = makeSets(making({ seed: anySeed }));
        expect(made.notes).toEqual([]);
        expect(made.sets).toHaveLength(5);
        for (const set of made.sets) {
          const height = setHeight(set.strips, usualWedge.seam);
          expect(height).toBeGreaterThanOrEqual(7.5);
          expect(height).toBeLessThanOrEqual(8.5);
          expect(set.strips[0]!.width).toBeGreaterThan(1);
          expect(set.strips.at(-1)!.width).toBeGreaterThan(1);
          set.strips.slice(1).forEach((strip, at) => {
            expect(strip.fabric).not.toBe(set.strips[at]!.fabric);
          });
          expect(new Set(set.strips.map((strip) => strip.width)).size).toBeGreaterThanOrEqual(2);
        }
        expectNothingLostOrInvented(made, usualStrips);
      }),
      { seed, numRuns: runs(3, 8) },
    );
  });

  it('have rims as different from one another as the fabrics allow: ten rims of twelve fabrics, none twice', () => {
    const { sets } = makeSets(making({ seed: 5 }));
    const rims = sets.flatMap((set) => [set.strips[0]!.fabric, set.strips.at(-1)!.fabric]);
    expect(new Set(rims).size).toBe(10);
  });

  it('use the fabrics evenly: with five sets no fabric is used more than two strips over another', () => {
    const used = counts(
      makeSets(making({ seed: 9 })).sets.flatMap((set) => set.strips.map((one) => ({ ...one, width: 1 }))),
    );
    const numbers = fabrics.map((fabric) => used.get(stripKey(fabric.id, 1)) ?? 0);
    expect(Math.max(...numbers) - Math.min(...numbers)).toBeLessThanOrEqual(2);
  });

  it('are the same for the same seed and others for another', () => {
    expect(makeSets(making({ seed: 3 }))).toEqual(makeSets(making({ seed: 3 })));
    expect(makeSets(making({ seed: 3 })).sets).not.toEqual(makeSets(making({ seed: 4 })).sets);
  });

  it('number five for six blocks of a 7 1/2 in wedge, and give 24 wedges of each tip (common practice, no source)', () => {
    const { sets } = makeSets(making({ want: { blocks: 6 } }));
    expect(sets).toHaveLength(5);
    const wedges = sets.map((set) => availableWedges(set, usualWedge));
    expect(wedges.reduce((sum, count) => sum + count.up, 0)).toBeGreaterThanOrEqual(24);
    expect(wedges.reduce((sum, count) => sum + count.down, 0)).toBeGreaterThanOrEqual(24);
  });

  it('do not put two look-alikes side by side where there is a choice', () => {
    const twins = plainFabrics(8).map((fabric, at) => (at === 7 ? { ...fabric, colour: '#8c1f40' } : fabric)); // the eighth reads as the first
    const stripsOnHand = stripsOf(twins, [[1.5, 5], [2, 3]]); // biome-ignore format: a table
    for (const anySeed of [1, 2, 3]) {
      const { sets } = makeSets(making({ fabrics: twins, stripsOnHand, want: { sets: 4 }, seed: anySeed }));
      for (const set of sets) {
        set.strips.slice(1).forEach((strip, at) => {
          expect([strip.fabric, set.strips[at]!.fabric].sort()).not.toEqual(['f1', 'f8']);
        });
      }
    }
  });

  it('leave kept sets alone, do not use their strips again, and take other letters and ids', () => {
    const keep = [
      stripSet('s1', makeSets(making({ want: { sets: 1 } })).sets[0]!.strips, { label: 'A', locked: true }),
    ];
    const made = makeSets(making({ keep, want: 'most' }));
    expect(made.sets.map((set) => set.label)).not.toContain('A');
    expect(made.sets.map((set) => set.id)).not.toContain('s1');
    expectNothingLostOrInvented(made, usualStrips, keep);
    const project = projectOf({
      fabrics,
      stripsOnHand: usualStrips,
      stripSets: [...keep, stripSet('s2', []), stripSet('s3', keep[0]!.strips, { progress: 'sewn' })],
    });
    expect(setMakingOf(project, 'most', 1).keep.map((set) => set.id)).toEqual(['s1', 's3']);
  });

  it('count the wedges of kept sets when asked for enough for so many blocks', () => {
    const all = makeSets(making({ want: { blocks: 6 } })).sets;
    const keep = all.slice(0, 3).map((set) => ({ ...set, locked: true }));
    expect(makeSets(making({ want: { blocks: 6 }, keep })).sets.length).toBeLessThanOrEqual(2);
  });

  it('do not mix strips of lengths that differ by more than 2 in where that gives no more, and are as long as their shortest strip', () => {
    const stripsOnHand = [...stripsOf(fabrics, [[1.5, 3]], 40), ...stripsOf(fabrics, [[1.5, 3]], 21)];
    const made = makeSets(making({ stripsOnHand, want: { sets: 7 } }));
    expect(made.sets.length).toBeGreaterThanOrEqual(7);
    expect(new Set(made.sets.map((set) => set.length))).toEqual(new Set([40, 21]));
    const long = made.sets.filter((set) => set.length === 40).flatMap((set) => set.strips);
    expect(long.length).toBeLessThanOrEqual(36);
    const longLeft = made.left.filter((row) => row.length === 40).reduce((sum, row) => sum + row.count, 0);
    expect(long.length + longLeft).toBe(36);
  });
});

describe('strips that do not suffice', () => {
  const random = fc.record({
    fabricCount: fc.integer({ min: 1, max: 6 }),
    each: fc.array(fc.tuple(fc.constantFrom(0.75, 1, 1.25, 1.5, 2, 2.5), fc.integer({ min: 0, max: 3 })), {
      maxLength: 3,
    }),
    sets: fc.integer({ min: 1, max: 4 }),
    anySeed: fc.nat(1000),
  });

  it('are said in a note whose cure is enough: with the strips it names on hand the sets can be made', () => {
    fc.assert(
      fc.property(random, ({ fabricCount, each, sets, anySeed }) => {
        const some = plainFabrics(fabricCount);
        const stripsOnHand = stripsOf(some, each).map((row, at) => ({ ...row, id: `r${at}` }));
        const first = makeSets(making({ fabrics: some, stripsOnHand, want: { sets }, seed: anySeed }));
        expectNothingLostOrInvented(first, stripsOnHand);
        for (const set of first.sets) expect(setHeight(set.strips, 0.25)).toBeGreaterThanOrEqual(7.5);
        if (first.sets.length === sets) return;
        const note = first.notes.map((one) => speak(one)).join(' ');
        const cure = /(\d+) more strips? cut ([\d /]+)" wide, ([\d /]+)" long/.exec(note);
        expect(cure, note).not.toBeNull();
        const [whole, over, under] = cure![2]!.split(/[ /]/).map(Number);
        const width = under ? whole! + over! / under : over ? whole! / over : whole!;
        const bought = { id: 'bought', fabric: some[0]!.id, width, length: 40, count: Number(cure![1]) };
        const second = makeSets(
          making({ fabrics: some, stripsOnHand: [...stripsOnHand, bought], want: { sets }, seed: anySeed }),
        );
        expect(second.sets).toHaveLength(sets);
      }),
      { seed, numRuns: runs(5, 25) },
    );
  });

  it('without any strips there are no sets and the note says what a set needs', () => {
    const made = makeSets(making({ stripsOnHand: [], want: { sets: 1 } }));
    expect(made.sets).toEqual([]);
    // 7 1/2 in = n strips of 1 1/2 finishing 1 each, and the two outside allowances: 7 strips.
    expect(made.notes.map((note) => speak(note))).toEqual([
      'There are not enough strips for a set 7 1/2" high. 7 more strips cut 1 1/2" wide, 40" long or longer, mend it.',
    ]);
  });

  it('a single fabric still makes sets, and the note says it lies beside itself', () => {
    const one = plainFabrics(1);
    const made = makeSets(
      making({ fabrics: one, stripsOnHand: stripsOf(one, [[1.5, 20]]), want: { sets: 2 } }),
    );
    expect(made.sets).toHaveLength(2);
    expect(speak(made.notes[0]!)).toContain('beside itself');
  });

  it('strips that would vanish in their seams, or are too short for two wedges, are left aside and said', () => {
    const odd = [
      { id: 'n', fabric: 'f1', width: 0.5, length: 40, count: 3 },
      { id: 's', fabric: 'f1', width: 2, length: 8, count: 1 },
    ];
    const made = makeSets(making({ stripsOnHand: [...usualStrips, ...odd] }));
    expect(made.notes).toEqual([]);
    expect(made.whyLeft.map(({ rule, rows }) => [rule, rows.map((row) => row.id)]).slice(-2)).toEqual([
      ['short', ['s']],
      ['narrow', ['n']],
    ]);
    expectNothingLostOrInvented(made, [...usualStrips, ...odd]);
  });
});

describe('sets with locked strips', () => {
  const five = makeSets(making({ seed: 4 })).sets;

  /** The set with these strips (by place, from 0) locked. */
  const locking = (set: StripSet, places: readonly number[]): StripSet => ({
    ...set,
    strips: set.strips.map((strip, at) => (places.includes(at) ? { ...strip, locked: true } : strip)),
  });

  it('keep their letters, and locked strips keep their places, the last one at the end, for every seed', () => {
    fc.assert(
      fc.property(
        fc.nat(10_000),
        fc.array(fc.array(fc.nat(5), { minLength: 1, maxLength: 3 }), { minLength: 1, maxLength: 3 }),
        (anySeed, locked) => {
          const held = locked.map((places, at) =>
            locking(five[at]!, [...places, ...(at === 0 ? [five[0]!.strips.length - 1] : [])]),
          );
          const made = makeSets(making({ seed: anySeed, held }));
          expect(made.notes).toEqual([]);
          expect(made.sets).toHaveLength(5);
          held.forEach((set, at) => {
            const now = made.sets.find((one) => one.id === set.id)!;
            expect(now.label).toBe(set.label);
            expect(now.strips.filter((strip) => strip.locked)).toEqual(
              set.strips.filter((strip) => strip.locked),
            );
            for (const place of locked[at]!) {
              const last = place === set.strips.length - 1;
              if (!last)
                expect(now.strips[place], `place ${place} of ${set.label}`).toEqual(set.strips[place]);
            }
            if (set.strips.at(-1)!.locked) expect(now.strips.at(-1)).toEqual(set.strips.at(-1));
            expect(setHeight(now.strips, usualWedge.seam)).toBeGreaterThanOrEqual(7.5);
          });
          expect(new Set(made.sets.map((set) => set.label)).size).toBe(5);
          expectNothingLostOrInvented(made, usualStrips);
        },
      ),
      { seed, numRuns: runs(4, 10) },
    );
  });

  it('change round what is locked: the other strips are drawn afresh', () => {
    const held = [locking(five[0]!, [0])];
    const [one, other] = [11, 12].map((anySeed) => makeSets(making({ seed: anySeed, held })).sets[0]!.strips);
    expect(one![0]).toEqual(held[0]!.strips[0]);
    expect(other![0]).toEqual(held[0]!.strips[0]);
    expect(one!.slice(1)).not.toEqual(other!.slice(1));
  });

  it('keep what is locked even where no strips are left to lay to it, and say what is missing', () => {
    const held = [locking(five[0]!, [0, 1, 2])];
    const onHand = [0, 1, 2].map((at) => ({ ...five[0]!.strips[at]!, id: `r${at}`, length: 40, count: 1 }));
    const made = makeSets(making({ stripsOnHand: onHand, held, want: { sets: 1 } }));
    expect(made.sets.map((set) => set.strips)).toEqual([held[0]!.strips.slice(0, 3)]);
    expect(made.left).toEqual([]);
    expect(speak(made.notes[0]!)).toContain('There are not enough strips');
  });
});
