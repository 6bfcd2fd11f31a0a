import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { swapsByValue, turnedColourway } from '../../src/cloth/colourway';
import { meanColour } from '../../src/cloth/likeness';
import { printMix } from '../../src/cloth/print/printMix';
import { colourName } from '../../src/cloth/standIns';
import { linearOfHex, oklabOf, value } from '../../src/colour/spaces';
import { everyCloth, fabricsInUse } from '../../src/model/colourway';
import { speak } from '../../src/model/phrase';
import type { Fabric } from '../../src/model/project';
import { demo } from '../demo';
import { photographed } from '../model/picture/images';

const plain = (id: string, colour: string): Fabric => ({
  id,
  name: id,
  colour,
  cloth: { kind: 'plain' },
  background: false,
});
const greys = (prefix: string, levels: readonly number[]) =>
  levels.map((level, index) =>
    plain(`${prefix}${index}`, `#${level.toString(16).padStart(2, '0').repeat(3)}`),
  );

/** The least sum over every way to choose different cloths, by trying all. */
function leastByTrying(wants: number[], offers: number[]): number {
  if (wants.length === 0) return 0;
  const [first, ...rest] = wants;
  return Math.min(
    ...offers.map(
      (offer, index) =>
        Math.abs(offer - first!) +
        leastByTrying(
          rest,
          offers.filter((_, at) => at !== index),
        ),
    ),
  );
}

describe('cloth for a colourway chosen by value', () => {
  it('is the best there is, no cloth twice, kept or turned over (checked by trying every choice)', () => {
    const levels = (most: number) =>
      fc.array(fc.integer({ min: 0, max: 255 }), { minLength: 1, maxLength: most });
    fc.assert(
      fc.property(levels(4), levels(6), fc.boolean(), (used, offered, turned) => {
        fc.pre(offered.length >= used.length);
        const inUse = greys('u', used);
        const palette = greys('p', offered);
        const swaps = swapsByValue(inUse, palette, turned ? 'turnedOver' : 'kept');
        expect(new Set(swaps.map((swap) => swap.by)).size).toBe(used.length);
        const has = inUse.map((fabric) => value(fabric.colour));
        const sum = Math.min(...has) + Math.max(...has);
        const wants = has.map((one) => (turned ? sum - one : one));
        const cost = swaps.reduce((total, swap) => {
          const want = wants[inUse.findIndex((fabric) => fabric.id === swap.fabric)]!;
          return total + Math.abs(want - value(palette.find((fabric) => fabric.id === swap.by)!.colour));
        }, 0);
        expect(cost).toBeCloseTo(
          leastByTrying(
            wants,
            palette.map((fabric) => value(fabric.colour)),
          ),
          6,
        );
      }),
      { seed: 5, numRuns: 200 },
    );
  });

  it('turned over gives the lightest cloth to the darkest fabric', () => {
    const swaps = swapsByValue(greys('u', [10, 240]), greys('p', [20, 230]), 'turnedOver');
    expect(swaps.find((swap) => swap.fabric === 'u0')?.by).toBe('p1');
    expect(swaps.find((swap) => swap.fabric === 'u1')?.by).toBe('p0');
  });

  it('from a small palette takes the nearest, several times, and from none nothing', () => {
    expect(
      swapsByValue(greys('u', [10, 20, 240]), greys('p', [15]), 'kept').every((swap) => swap.by === 'p0'),
    ).toBe(true);
    expect(swapsByValue(greys('u', [10]), [], 'kept')).toEqual([]);
  });
});

describe('made-up cloth in turned hues', () => {
  const project = demo('keepers-winter');
  const inUse = fabricsInUse(project).filter((fabric) => !fabric.background);
  const lightness = (id: string, among: readonly Fabric[]) =>
    value(meanColour(printMix(among.find((fabric) => fabric.id === id)!)));

  it('is as light or dark as the old, none for the background, under ids that are new', () => {
    const { swaps, cloth } = turnedColourway(project, 'Warm', 150, 'kept');
    expect(swaps.map((swap) => swap.fabric)).toEqual(inUse.map((fabric) => fabric.id));
    for (const { fabric, by } of swaps)
      expect(Math.abs(lightness(by, cloth) - lightness(fabric, project.fabrics))).toBeLessThan(9);
    const ids = [...everyCloth(project), ...cloth].map((fabric) => fabric.id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('is named by the colour it has, no two alike', () => {
    for (const degrees of [0, 60, 120, 180, 300]) {
      const { cloth } = turnedColourway(project, 'Colourway 1', degrees, 'kept');
      for (const { name, colour } of cloth) {
        const said = speak(colourName(colour));
        expect(name.toLowerCase()).toMatch(new RegExp(`^${said}( \\d+)?, colourway 1$`));
      }
      expect(new Set(cloth.map(({ name }) => name)).size).toBe(cloth.length);
    }
  });

  it('turned over puts the lightest made-up cloth where the darkest fabric was, each cloth once', () => {
    const { swaps, cloth } = turnedColourway(project, 'Night', 150, 'turnedOver');
    expect(new Set(swaps.map((swap) => swap.by))).toEqual(new Set(cloth.map((fabric) => fabric.id)));
    const before = inUse.map((fabric) => lightness(fabric.id, project.fabrics));
    const after = inUse.map((fabric) => {
      const { by } = swaps.find((swap) => swap.fabric === fabric.id)!;
      return lightness(by, cloth);
    });
    const at = (values: number[], end: (...all: number[]) => number) => values.indexOf(end(...values));
    expect(at(after, Math.max)).toBe(at(before, Math.min));
    expect(at(after, Math.min)).toBe(at(before, Math.max));
  });

  it('makes plain cloth for photographed fabric, as light as its mean, and leaves the photograph itself alone', () => {
    const photo = photographed('a'.repeat(64));
    const fabrics = project.fabrics.map(({ id, name, background }) => ({ ...photo, id, name, background }));
    const { cloth } = turnedColourway({ ...project, fabrics }, 'Night', 150, 'kept');
    expect(cloth.length).toBe(inUse.length);
    const lightnessOf = (hex: string) => oklabOf(linearOfHex(hex))[0];
    for (const made of cloth) {
      expect(made.cloth).toEqual({ kind: 'plain' });
      expect(lightnessOf(made.colour)).toBeCloseTo(lightnessOf(meanColour(printMix(photo))), 2);
    }
  });

  it('is none where only background is in use', () => {
    const fabrics = project.fabrics.map((fabric) => ({ ...fabric, background: true }));
    expect(turnedColourway({ ...project, fabrics }, 'None', 90, 'kept')).toEqual({ swaps: [], cloth: [] });
  });
});
