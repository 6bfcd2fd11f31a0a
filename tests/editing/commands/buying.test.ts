// Commands on buying: each can be undone and made again, with its words.

import fc from 'fast-check';
import { applyPatches } from 'immer';
import { describe, expect, it } from 'vitest';
import { apply, type Command } from '../../../src/editing/apply';
import { changeBacking, changeBuying, changeKits, pricesMatched } from '../../../src/editing/commands/buying';
import { usualBuying } from '../../../src/model/buying';
import { createProject } from '../../../src/model/create';
import { speak } from '../../../src/model/phrase';
import type { Project } from '../../../src/model/project';
import { writeProject } from '../../../src/model/reading/read';
import { readProject } from '../../../src/model/reading/readText';

const project = createProject('p', 'P');

const commands: [words: string, command: Command][] = [
  ['change how fabric is sold', changeBuying({ soldBy: 'metre' })],
  ['change the shrinkage', changeBuying({ shrinkage: 3 })],
  ['change the use of fat quarters', changeBuying({ fatQuarters: false })],
  ['change the corner squares', changeBuying({ corners: 'fits' })],
  ['change how long pieces are cut', changeBuying({ longPieces: 'whole' })],
  ['change the spare length of the binding', changeBuying({ bindingExtra: 10 })],
  ['change the price of fabric', changeBuying({ price: 12.5 })],
  ['change the backing', changeBacking({ overhang: 2.5 })],
  ['change the kits', changeKits({ count: 30 })],
];

describe('every command on buying', () => {
  it.each(commands)('“%s” can be undone and made again', (words, command) => {
    const before = structuredClone(project);
    const outcome = apply(project, command);
    if (!outcome.ok) throw new Error('refused');
    const { change } = outcome;
    expect(project).toEqual(before);
    expect(outcome.project).not.toEqual(before);
    expect(speak(change.label)).toBe(words);
    expect(applyPatches(outcome.project, change.inverse as never)).toEqual(before);
    expect(applyPatches(before, change.patches as never)).toEqual(outcome.project);
    expect(readProject(writeProject(outcome.project))).toEqual({
      ok: true,
      value: outcome.project,
      pictures: new Map(),
      remarks: [],
    });
  });
});

describe('a file from before buying was written down', () => {
  it('opens with the usual choices', () => {
    const { buying, ...old } = project;
    const read = readProject(JSON.stringify(old));
    expect(read.ok && read.value.buying).toEqual(usualBuying());
    expect(buying).toEqual(usualBuying());
  });

  it('with part of it keeps that part', () => {
    const read = readProject(
      JSON.stringify({ ...project, buying: { shrinkage: 4, backing: { overhang: 2 } } }),
    );
    expect(read.ok && read.value.buying).toMatchObject({ shrinkage: 4, backing: { overhang: 2, seam: 0.5 } });
  });

  it.each<[place: string, buying: object]>([
    ['buying.shrinkage', { shrinkage: 60 }],
    ['buying.price', { price: -1 }],
    ['buying.kits.count', { kits: { count: 0 } }],
    ['buying.soldBy', { soldBy: 'bolt' }],
  ])('with a wrong %s is refused there', (place, buying) => {
    const read = readProject(JSON.stringify({ ...project, buying }));
    expect(read.ok ? '' : read.problems[0]!.path).toBe(place);
  });
});

describe('fabric sold by the other unit', () => {
  /** A quilt with a price wherever there may be one. */
  function pricedQuilt(price: number): Project {
    const quilt = createProject('p', 'P');
    quilt.fabrics[0]!.price = price;
    Object.assign(quilt.buying, { soldBy: 'yard', price, fatQuarterPrice: price });
    quilt.buying.backing.price = price;
    const cloth = { ...quilt.fabrics[0]!, id: 'made-up' };
    const swaps = [{ fabric: quilt.fabrics[0]!.id, by: cloth.id }];
    quilt.colourways.push({ id: 'c1', name: 'C', swaps, cloth: [cloth] });
    return quilt;
  }

  function pricesIn({ buying, fabrics, colourways }: Project) {
    const cloth = [...fabrics, ...colourways.flatMap((one) => one.cloth ?? [])];
    return [buying.price, buying.fatQuarterPrice, buying.backing.price, ...cloth.map((one) => one.price)];
  }

  function soldBy(quilt: Project, unit: 'yard' | 'metre'): Project {
    const outcome = apply(quilt, changeBuying({ soldBy: unit }));
    if (!outcome.ok) throw new Error('refused');
    return outcome.project;
  }

  it('is worth the same at every price: $13 a yard is $14.22 a metre, and $13 a yard again', () => {
    const before = pricedQuilt(13);
    const after = soldBy(before, 'metre');
    // 13 / 0.9144 = 14.2169…
    expect(pricesIn(after).filter((one) => one !== undefined)).toEqual([14.22, 14.22, 14.22, 14.22, 14.22]);
    expect(pricesIn(soldBy(after, 'yard'))).toEqual(pricesIn(before));
  });

  it('is worth the same to half of the last decimal that a price was written with', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 9_000_000 }),
        fc.constantFrom(2, 3),
        fc.boolean(),
        (units, decimals, metric) => {
          const price = units / 10 ** decimals;
          const quilt = pricedQuilt(price);
          quilt.buying.soldBy = metric ? 'metre' : 'yard';
          const { buying } = soldBy(quilt, metric ? 'yard' : 'metre');
          const worth = metric ? price * 0.9144 : price / 0.9144;
          expect(Math.abs(buying.price! - worth)).toBeLessThan(
            0.5000001 / 10 ** (units % 10 === 0 ? 2 : decimals),
          );
        },
      ),
    );
  });

  it('keeps every price where it is sold by that unit already, and leaves what has no price without one', () => {
    const quilt = pricedQuilt(13);
    expect(pricesIn(soldBy(quilt, 'yard'))).toEqual(pricesIn(quilt));
    expect(pricesIn(soldBy(project, 'metre'))).toEqual(pricesIn(project));
    expect(pricesIn(soldBy(pricedQuilt(0), 'metre'))).toEqual(pricesIn(pricedQuilt(0)));
  });

  it('is refused where a price would be more than any may be, and says which', () => {
    const outcome = apply(pricedQuilt(95_000), changeBuying({ soldBy: 'metre' }));
    expect(outcome.ok ? '' : speak(outcome.problems[0]!.message)).toBe(
      '95,000.00 a yard would be 103,893.26 a metre, and a price is at most 100,000.00. Change that price first.',
    );
  });

  it('says what became of the prices', () => {
    const words = (quilt: Project, unit: 'yard' | 'metre') => {
      const told = pricesMatched(quilt, unit);
      return told && speak(told);
    };
    const dollars = (quilt: Project) => {
      quilt.buying.currency = '$';
      return quilt;
    };
    expect(words(dollars(pricedQuilt(13)), 'metre')).toBe(
      'Prices are changed to match: $13.00 a yard is $14.22 a metre, rounded.',
    );
    expect(words(soldBy(dollars(pricedQuilt(13)), 'metre'), 'yard')).toBe(
      'Prices are changed to match: $14.22 a metre is $13.00 a yard, rounded.',
    );
    expect(words(pricedQuilt(13), 'yard')).toBeNull();
    expect(words(pricedQuilt(0), 'metre')).toBeNull();
    expect(words(project, 'metre')).toBeNull();
    const quarters = dollars(createProject('p', 'P'));
    quarters.buying.fatQuarterPrice = 3.5;
    expect(words(quarters, 'metre')).toBe(
      'Prices are changed to match: a fat quarter at $3.50 is now at $3.83, rounded.',
    );
  });
});
