// What is told of a change before it is made is what the wall is told once it is made: wedges that change blocks make other
// blocks, of which a random layout is another one.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rankWedges } from '../../src/arrange/choose/composeRank';
import { effectOf } from '../../src/arrange/mend/proposals';
import { TopEffect } from '../../src/arrange/mend/topEffect';
import { wedgeOffers } from '../../src/arrange/mend/wedgeOffers';
import { ALL_SCOPES } from '../../src/arrange/score';
import { type Analysis, analyse } from '../../src/balance/analyse';
import { DEFAULT_WEIGHTS, inPoints, TERM_NAMES, type Terms, weighted } from '../../src/balance/score/weights';
import { wishesOf } from '../../src/balance/score/wishes';
import { findBlock } from '../../src/model/find';
import { type Move, moved } from '../../src/model/moves';
import type { Place, Project } from '../../src/model/project';
import { dice, scrappyTop } from '../balance/tops';
import { runs } from '../runs';
import { awkwardTop } from './awkwardTop';
import { arrange } from './toTheEnd';

/** The terms that the wall is told after the moves. */
function termsThen(project: Project, moves: readonly Move[]): Terms {
  return analyse(moved(project, moves), wishesOf(project.preferences)).terms;
}

function expectTerms(told: Terms, then: Terms): void {
  for (const name of TERM_NAMES) expect(told[name], name).toBeCloseTo(then[name], 9);
}

const seeds = fc.integer({ min: 0, max: 1e6 });
/** A place of a planned block with offers for it. */
function somewhere(project: Project, seed: number): { id: string; place: number } {
  const random = dice(seed);
  const block = project.blocks[random.below(project.blocks.length)]!;
  return { id: block.id, place: random.below(project.wedge.perBlock) };
}

describe('what is told beforehand', () => {
  it('of a shuffle that may do everything', () => {
    let changed = 0;
    fc.assert(
      fc.property(seeds, (seed) => {
        const project = awkwardTop(seed, 8);
        const result = arrange(project, { seed, scopes: ALL_SCOPES, budget: { steps: 6000 } });
        expectTerms(result.told, termsThen(project, result.moves));
        changed += Math.sign(result.moves.length);
      }),
      { numRuns: runs(4, 40) },
    );
    expect(changed).toBeGreaterThan(0);
  });

  it.each([2, 5])(
    'of a shuffle is never worse than what there is, shuffled again and again (top %i)',
    (seed) => {
      let project = scrappyTop({ rows: 2, columns: 3, seed });
      const scopes = { ...ALL_SCOPES, shiftCorners: false, strips: false };
      let score = Number.POSITIVE_INFINITY;
      for (let round = 1; round <= 5; round++) {
        const { moves, told } = arrange(project, { seed: round, scopes, budget: { steps: 3000 } });
        expect(weighted(told, DEFAULT_WEIGHTS)).toBeLessThanOrEqual(score + 1e-9);
        score = weighted(told, DEFAULT_WEIGHTS);
        project = moved(project, moves);
      }
    },
  );

  it('of any wedge put or traded, as a mend and as an offer', () => {
    let offered = 0;
    fc.assert(
      fc.property(seeds, (seed) => {
        const project = awkwardTop(seed, 8);
        const analysis: Analysis = analyse(project, wishesOf(project.preferences));
        const { id, place } = somewhere(project, seed);
        const effect = new TopEffect(analysis, DEFAULT_WEIGHTS);
        for (const { moves } of rankWedges(project, id, place, effect).slice(0, 5))
          expectTerms(effectOf(analysis, moves).after.terms, termsThen(project, moves));
        const { leftOver, inTrade } = wedgeOffers(analysis, findBlock(project, id)!, place);
        const lies = findBlock(project, id)!.places[place] ?? null;
        const put = (block: string, at: number, wedge: Place | null): Move => ({
          kind: 'place',
          block,
          place: at,
          wedge,
        });
        const taken = [
          ...leftOver.map(({ wedge, top }) => ({ top, moves: [put(id, place, wedge)] })),
          ...inTrade.map(({ wedge, top, from }) => ({
            top,
            moves: [put(id, place, wedge), put(from.block, from.place, lies)],
          })),
        ];
        for (const { moves, top } of taken) {
          if (!top) continue;
          const then = weighted(termsThen(project, moves), DEFAULT_WEIGHTS);
          expect(top.after).toBeCloseTo(inPoints(then, DEFAULT_WEIGHTS), 8);
          offered += 1;
        }
      }),
      { numRuns: runs(4, 40) },
    );
    expect(offered).toBeGreaterThan(10);
  });
});
