import fc from 'fast-check';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { describe, expect, it } from 'vitest';
import { decisionsOf, type Scopes } from '../../../src/arrange/decisions';
import { costTables } from '../../../src/arrange/live/costTables';
import { LiveWall } from '../../../src/arrange/live/liveWall';
import { movesBetween } from '../../../src/arrange/movesBetween';
import { ALL_SCOPES } from '../../../src/arrange/score';
import { StripOrders, withRoomForOne } from '../../../src/arrange/search/stripOrders';
import { termScales } from '../../../src/balance/score/termScales';
import { evaluateTerms } from '../../../src/balance/score/terms';
import { DEFAULT_WEIGHTS, weighted } from '../../../src/balance/score/weights';
import { wallModel } from '../../../src/balance/wall/wallModel';
import { clothTable } from '../../../src/cloth/cloths';
import { apply } from '../../../src/editing/apply';
import { keepShuffle, rearrange } from '../../../src/editing/commands/wall';
import { EMPTY_HISTORY, nextLabels, record, undo } from '../../../src/editing/history';
import { canGoTogether, type Move, moved } from '../../../src/model/moves';
import { phrase, speak } from '../../../src/model/phrase';
import {
  COLOUR_INTENTS,
  type Project,
  type Strip,
  type StripSet,
  VALUE_INTENTS,
} from '../../../src/model/project';
import { dice, scrappyTop } from '../../balance/tops';
import { runs } from '../../runs';
import { awkwardTop } from '../awkwardTop';
import { alternatives, arrange, searched } from '../toTheEnd';

const NONE: Scopes = { swap: false, turn: false, shiftCorners: false, trade: false, strips: false };
const STRIPS: Scopes = { ...NONE, strips: true };

const seeds = fc.integer({ min: 0, max: 1e6 });
const counts = fc.constantFrom(6 as const, 8 as const, 10 as const, 12 as const);

/** A top some of whose sets are sewn, cut or locked, with some locked strips, a pinned and a sewn block. */
function partlyFree(seed: number, perBlock: 6 | 8 | 10 | 12): Project {
  const random = dice(seed);
  const top = awkwardTop(seed, perBlock);
  top.stripSets = top.stripSets.map((set) => ({ ...set, strips: set.strips.map((strip) => ({ ...strip })) }));
  top.stripSets[random.below(6)]!.progress = random.below(2) === 0 ? 'sewn' : 'cut';
  top.stripSets[random.below(6)]!.locked = true;
  for (const set of top.stripSets) if (random.below(3) === 0) set.strips[random.below(3)]!.locked = true;
  return top;
}

function counted(strips: readonly Strip[]): string[] {
  return strips.map((strip) => JSON.stringify([strip.fabric, strip.width, strip.locked ?? false])).toSorted();
}

function twins(strips: readonly Strip[]): number {
  return strips.filter((strip, at) => at > 0 && strip.fabric === strips[at - 1]!.fabric).length;
}

describe('orders of strips tried on a living wall', () => {
  it('score as the moved project does, kept or taken back, beside trades and swaps of the same wedges', () => {
    fc.assert(
      fc.property(
        seeds,
        counts,
        fc.constantFrom(...VALUE_INTENTS),
        fc.constantFrom(...COLOUR_INTENTS),
        (seed, perBlock, value, colour) => {
          const project = partlyFree(seed, perBlock);
          const model = wallModel(project, clothTable(project.fabrics));
          const scales = termScales(model, { value, colour });
          const decisions = decisionsOf(project, model, ALL_SCOPES);
          if (decisions.sets.length === 0) return;
          const tables = withRoomForOne(costTables(model, scales, DEFAULT_WEIGHTS));
          const spare = new Int32Array(decisions.spare.length + 2);
          spare.set(decisions.spare);
          const wall = new LiveWall(tables, spare);
          const orders = new StripOrders(project, wall, decisions.sets);
          const full = () => {
            const then = moved(
              project,
              movesBetween(project, { ...orientations(wall), orders: orders.laid }),
            );
            return weighted(evaluateTerms(scales, wallModel(then, model.cloths)), DEFAULT_WEIGHTS);
          };
          const random = xoroshiro128plus(seed);
          const roll = dice(seed);
          for (let round = 0; round < 25; round++) {
            const before = wall.cost;
            const tried = orders.tryOne(random);
            if (tried && roll.below(2) === 0) {
              orders.keep();
              expect(wall.cost).toBeCloseTo(before + tried.added, 8);
            } else if (tried) orders.takeBack();
            const places = decisions.tradable[roll.below(2)]!;
            const [place, other] = [places[roll.below(places.length)]!, places[roll.below(places.length)]!];
            if (place !== other) wall.trade(place, other, wall.tradeCost(place, other));
            expect(wall.cost).toBeCloseTo(full(), 8);
          }
          expect(Array.from(wall.spare)).toEqual(Array.from(spare));
        },
      ),
      { numRuns: runs(7, 40) },
    );
  });
});

function orientations({ typeAt, orientationOf, blockIn }: LiveWall) {
  return { typeAt, orientationOf, blockIn };
}

describe('a shuffle that may put strips in another order', () => {
  it('leaves sewn, cut and locked sets, sets of sewn and pinned blocks, and locked strips alone', () => {
    let changed = 0;
    fc.assert(
      fc.property(seeds, counts, (seed, perBlock) => {
        const project = partlyFree(seed, perBlock);
        const random = dice(seed);
        project.blocks[random.below(20)]!.progress = 'octagon';
        const pinned = project.wall.cells.find((cell) => cell !== null)!;
        pinned.pinned = true;
        const kept = new Set(
          project.blocks
            .filter((block) => block.progress !== 'planned' || block.id === pinned.block)
            .flatMap((block) => block.places.map((place) => place?.set)),
        );
        const result = searched(project, { seed, scopes: ALL_SCOPES, budget: { steps: 8000 } });
        const outcome = apply(project, keepShuffle(result.moves));
        if (!outcome.ok) throw new Error(speak(outcome.problems[0]!.message));
        for (const [at, set] of project.stripSets.entries()) {
          const then = outcome.project.stripSets[at]!;
          expect({ ...then, strips: [] }).toEqual({ ...set, strips: [] });
          expect(counted(then.strips)).toEqual(counted(set.strips));
          set.strips.forEach((strip, place) => {
            if (strip.locked) expect(then.strips[place]).toEqual(strip);
          });
          if (set.locked || set.progress !== 'planned' || kept.has(set.id)) expect(then).toEqual(set);
          else if (JSON.stringify(then) !== JSON.stringify(set)) changed += 1;
        }
      }),
      { numRuns: runs(8, 25), seed: 20 },
    );
    expect(changed).toBeGreaterThan(runs(1, 5));
  });

  it('keeps neighbours of different fabrics apart and the narrowest strips off the outside edges', () => {
    let changed = 0;
    for (let seed = 1; seed <= 4; seed++) {
      const project = scrappyTop({ rows: 3, columns: 4, seed, fabrics: 6 });
      const result = searched(project, { seed, scopes: STRIPS, budget: { steps: 8000 } });
      expect(result.moves.length).toBeGreaterThan(0);
      for (const move of result.moves) {
        if (move.kind !== 'strips') throw new Error(`a ${move.kind} that was not asked for`);
        const before = project.stripSets.find((set) => set.id === move.set)!.strips;
        const rims = (strips: readonly Strip[]) => [strips[0]!, strips.at(-1)!];
        const narrow = (strips: readonly Strip[]) => rims(strips).filter((strip) => strip.width === 1).length;
        expect(twins(move.strips)).toBeLessThanOrEqual(twins(before));
        expect(narrow(move.strips)).toBeLessThanOrEqual(narrow(before));
        changed += 1;
      }
    }
    expect(changed).toBeGreaterThan(10);
  });

  it('lowers the score, tells it as the moved project has it, and repeats for the same seed', () => {
    const project = scrappyTop({ rows: 4, columns: 5, seed: 6, fabrics: 9 });
    const model = wallModel(project, clothTable(project.fabrics));
    const scales = termScales(model, project.preferences.intent);
    for (const scopes of [STRIPS, ALL_SCOPES]) {
      const wish = { seed: 4, scopes, budget: { steps: 15_000 } };
      const result = searched(project, wish);
      const judged = evaluateTerms(scales, wallModel(moved(project, result.moves), model.cloths));
      expect(result.after.terms).toEqual(judged);
      expect(result.after.total).toBeCloseTo(weighted(judged, DEFAULT_WEIGHTS), 12);
      expect(result.after.total).toBeLessThan(result.before.total - 0.2);
      expect(searched(project, wish)).toEqual(result);
    }
  });

  it('finds what turns and swaps alone cannot', () => {
    const project = scrappyTop({ rows: 2, columns: 3, seed: 3, fabrics: 7 });
    const scopes = { ...ALL_SCOPES, trade: false, strips: false };
    const without = arrange(project, { seed: 1, scopes, budget: { steps: 60_000 } });
    expect(without.verdict.kind).toBe('proved');
    const within = searched(project, {
      seed: 1,
      scopes: { ...scopes, strips: true },
      budget: { steps: 60_000 },
    });
    expect(within.after.total).toBeLessThan(without.after.total - 0.1);
  });

  it('has a bound below what is found, and is proved when no set is free', () => {
    const project = scrappyTop({ rows: 2, columns: 3, seed: 3 });
    const wish = { seed: 1, scopes: { ...ALL_SCOPES, trade: false }, budget: { steps: 20_000 } };
    const free = arrange(project, wish);
    expect(free.verdict.kind).toBe('within');
    expect(free.bound).toBeLessThan(free.after.total);
    for (const set of project.stripSets) set.progress = 'sewn';
    expect(arrange(project, wish).verdict.kind).toBe('proved');
  });

  it('is undone in one step, under the words of the shuffle', () => {
    const project = scrappyTop({ rows: 3, columns: 4, seed: 2, fabrics: 8 });
    const result = searched(project, { seed: 1, scopes: STRIPS, budget: { steps: 5000 } });
    const command = keepShuffle(result.moves);
    const outcome = apply(project, command);
    if (!outcome.ok) throw new Error(speak(outcome.problems[0]!.message));
    expect(outcome.project.stripSets).not.toEqual(project.stripSets);
    const history = record(EMPTY_HISTORY, outcome.change);
    expect(speak(nextLabels(history).undo!)).toBe('shuffle for balance');
    expect(undo(outcome.project, history)!.project).toEqual(project);
  });

  it('is among the alternatives too, each scored as the moved project is', () => {
    const project = scrappyTop({ rows: 3, columns: 3, seed: 5, fabrics: 9 });
    const cloths = clothTable(project.fabrics);
    const wish = { seed: 3, scopes: { ...ALL_SCOPES, trade: false }, budget: { steps: 60_000 } };
    const found = alternatives(project, wish, 3);
    expect(found.some((one) => one.moves.some((move) => move.kind === 'strips'))).toBe(true);
    for (const { moves, score } of found) {
      // By the chance of its own wall, as the wall will say it.
      const own = wallModel(moved(project, moves), cloths);
      expect(score.terms).toEqual(evaluateTerms(termScales(own, project.preferences.intent), own));
    }
  });
});

describe('a move of strips', () => {
  const project = scrappyTop({ rows: 2, columns: 2, seed: 1 });
  const set = project.stripSets[0]!;
  const turned: Move = { kind: 'strips', set: set.id, strips: set.strips.toReversed() };
  const refusal = (about: Partial<StripSet>, sewnBlock = false) => {
    const draft = structuredClone(project);
    Object.assign(draft.stripSets[0]!, about);
    if (sewnBlock) {
      draft.blocks[0]!.progress = 'octagon';
      draft.blocks[0]!.places[0] = { set: set.id, tip: 'up' };
    }
    const outcome = apply(draft, rearrange([turned], phrase('sew otherwise')));
    return outcome.ok ? '' : speak(outcome.problems[0]!.message);
  };

  it('puts the strips in that order and leaves the project it was given as it was', () => {
    const before = structuredClone(project);
    expect(moved(project, [turned]).stripSets[0]!.strips).toEqual(set.strips.toReversed());
    expect(project).toEqual(before);
    expect(moved(project, []).stripSets).toBe(project.stripSets);
  });

  it('is refused for a set that is sewn, cut, in a sewn block or locked, and for a strip that is locked', () => {
    expect(refusal({})).toBe('');
    expect(refusal({ progress: 'sewn' })).toMatch(/^Set S0 is sewn/);
    expect(refusal({ progress: 'cut' })).toMatch(/^Set S0 is sewn/);
    expect(refusal({}, true)).toMatch(/^Set S0 is sewn/);
    expect(refusal({ locked: true })).toMatch(/^Set S0 is locked/);
    const [first, ...others] = set.strips;
    expect(refusal({ strips: [{ ...first!, locked: true }, ...others] })).toBe(
      'Strip 1 of set S0 is locked; it keeps its place.',
    );
  });

  it('that would lose a strip, or bring one in, is no move of this set', () => {
    const fewer: Move = { ...turned, strips: set.strips.slice(1) };
    const other: Move = { ...turned, strips: [{ ...set.strips[0]!, width: 9 }, ...set.strips.slice(1)] };
    expect(() => moved(project, [fewer])).toThrow('other strips');
    expect(() => moved(project, [other])).toThrow('other strips');
  });

  it('goes together only with what touches no block that has its wedges', () => {
    const at = project.blocks.findIndex((block) => block.places.some((place) => place?.set === set.id));
    const touching: Move = { kind: 'turn', block: project.blocks[at]!.id, turn: 1 };
    const far = project.blocks.find((block) => !block.places.some((place) => place?.set === set.id))!;
    const apart: Move = { kind: 'turn', block: far.id, turn: 1 };
    expect(canGoTogether(project, [turned], [touching])).toBe(false);
    expect(canGoTogether(project, [turned], [apart])).toBe(true);
  });
});
