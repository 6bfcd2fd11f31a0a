import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rankWedges, type WedgeOffer } from '../../../src/arrange/choose/composeRank';
import { TopEffect } from '../../../src/arrange/mend/topEffect';
import { type Analysis, analyse } from '../../../src/balance/analyse';
import { evaluateTerms } from '../../../src/balance/score/terms';
import { type Terms, weighted } from '../../../src/balance/score/weights';
import { wallModel } from '../../../src/balance/wall/wallModel';
import { wedgeLedger } from '../../../src/cutting/wedges/ledger';
import { moved } from '../../../src/model/moves';
import { COLOUR_INTENTS, type Project, VALUE_INTENTS } from '../../../src/model/project';
import { dice } from '../../balance/tops';
import { runs } from '../../runs';
import { awkwardTop } from '../awkwardTop';

const WEIGHTS: Terms = {
  clashLength: 3,
  lookAlikes: 2,
  valueSpread: 1.5,
  colourSpread: 1,
  fabricSpread: 0.5,
  wholeTopWeight: 2,
};

/** An awkward top with a few wedges of each set to spare, an emptied place and a block on the side table. */
function topWithSpares(seed: number, perBlock: 6 | 8 | 10 | 12): Project {
  const project = awkwardTop(seed, perBlock);
  const random = dice(seed + 5);
  for (const row of wedgeLedger(project)) {
    row.set.cut = { up: row.used.up + random.below(3), down: row.used.down + random.below(3) };
  }
  return project;
}

/** The score of the top after the moves, worked out anew against the same scales. */
function scoreAfter(analysis: Analysis, offer: WedgeOffer): number {
  const then = wallModel(moved(analysis.project, offer.moves), analysis.model.cloths);
  return weighted(evaluateTerms(analysis.scales, then), WEIGHTS);
}

const tops = fc.record({
  seed: fc.integer({ min: 0, max: 1e6 }),
  perBlock: fc.constantFrom(6 as const, 8 as const, 10 as const, 12 as const),
  value: fc.constantFrom(...VALUE_INTENTS),
  colour: fc.constantFrom(...COLOUR_INTENTS),
});

describe('what a wedge on offer does to the whole top', () => {
  it('is the difference to the score worked out anew after it is taken, in any place of any block', () => {
    let full = 0;
    fc.assert(
      fc.property(tops, ({ seed, perBlock, value, colour }) => {
        const project = topWithSpares(seed, perBlock);
        const analysis = analyse(project, { intent: { value, colour } });
        const effect = new TopEffect(analysis, WEIGHTS);
        const random = dice(seed);
        for (let round = 0; round < 6; round++) {
          // The place that is empty in one block is among those asked for.
          const at = round === 0 ? (seed + 3) % 20 : random.below(project.blocks.length);
          const place = round === 0 ? 2 : random.below(perBlock);
          for (const offer of rankWedges(project, project.blocks[at]!.id, place, effect)) {
            const blank = project.blocks[at]!.places.every((wedge) => wedge === null);
            if (blank) expect(offer.added).toBe(0);
            else expect(effect.now + offer.added).toBeCloseTo(scoreAfter(analysis, offer), 8);
            full += 1;
          }
        }
      }),
      { numRuns: runs(3, 30) },
    );
    expect(full).toBeGreaterThan(runs(40, 500));
  });

  it('does not change by being asked', () => {
    const project = topWithSpares(8, 8);
    const effect = new TopEffect(analyse(project), WEIGHTS);
    const once = rankWedges(project, 'b4', 3, effect);
    expect(rankWedges(project, 'b4', 3, effect)).toEqual(once);
  });

  it('orders what fits equally well on the rims, and never comes before the rims or the tip', () => {
    fc.assert(
      fc.property(tops, ({ seed, perBlock }) => {
        const project = topWithSpares(seed, perBlock);
        const analysis = analyse(project);
        const effect = new TopEffect(analysis, WEIGHTS);
        const offers = rankWedges(project, project.blocks[(seed + 7) % 20]!.id, seed % perBlock, effect);
        const rank = (offer: WedgeOffer) => [
          offer.rightTip ? 0 : 1,
          offer.fit.rimClashes + offer.elsewhere.rimClashes,
          offer.fit.rimLookAlikes + offer.elsewhere.rimLookAlikes,
          scoreAfter(analysis, offer),
        ];
        offers.slice(1).forEach((offer, at) => {
          const before = rank(offers[at]!);
          const here = rank(offer);
          const differs = before.findIndex((one, key) => Math.abs(one - here[key]!) > 1e-7);
          if (differs >= 0) expect(before[differs]).toBeLessThan(here[differs]!);
        });
      }),
      { numRuns: runs(5, 30) },
    );
  });
});
