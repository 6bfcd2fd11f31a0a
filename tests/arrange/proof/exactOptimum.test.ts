import fc from 'fast-check';
import highsLoader from 'highs';
import { describe, expect, it } from 'vitest';
import { eigenvaluesOf } from '../../../src/arrange/branch/eigenvalues';
import { decisionsOf } from '../../../src/arrange/decisions';
import { costTables } from '../../../src/arrange/live/costTables';
import { LiveWall } from '../../../src/arrange/live/liveWall';
import { contactsOf } from '../../../src/arrange/proof/contactTables';
import { spreadOf } from '../../../src/arrange/proof/spreadAssignment';
import { Search } from '../../../src/arrange/search/search';
import { type Intent, SCATTERED } from '../../../src/balance/score/intent';
import { termScales } from '../../../src/balance/score/termScales';
import { DEFAULT_WEIGHTS } from '../../../src/balance/score/weights';
import { wallModel } from '../../../src/balance/wall/wallModel';
import { clothTable } from '../../../src/cloth/cloths';
import { speak } from '../../../src/model/phrase';
import type { Project } from '../../../src/model/project';
import { COLOUR_INTENTS, VALUE_INTENTS } from '../../../src/model/project';
import { scrappyTop } from '../../balance/tops';
import { runs } from '../../runs';
import { type AllPairs, allPairs, leastOfAll } from '../allPairs';
import { arrange, bestOf, lowerBound } from '../toTheEnd';

const SCOPES = { swap: true, turn: true, shiftCorners: false, trade: false, strips: false } as const;

function sixBlocks(seed: number): Project {
  return scrappyTop({ rows: 3, columns: 2, seed, fabrics: 8 + (seed % 12), sets: 5 });
}

function proving(project: Project, intent: Intent = SCATTERED) {
  const model = wallModel(project, clothTable(project.fabrics));
  const tables = costTables(model, termScales(model, intent), DEFAULT_WEIGHTS);
  const decisions = decisionsOf(project, model, SCOPES);
  return { tables, decisions, contacts: contactsOf(tables, decisions), spread: spreadOf(tables) };
}

describe('the best arrangement of a small wall', () => {
  it('is the best of all 2,949,120 ways to order and turn six blocks, gone through one by one', () => {
    for (const seed of [3, 8].slice(0, runs(1, 2))) {
      const project = sixBlocks(seed);
      const { least, count } = leastOfAll(allPairs(project));
      expect(count).toBe(720 * 4 ** 6);
      const { contacts, spread } = proving(project);
      expect(bestOf(contacts, spread)!.cost).toBeCloseTo(least, 8);
      const result = arrange(project, { seed: 1, scopes: SCOPES, budget: { steps: 40_000 } });
      expect(result.after.total).toBeCloseTo(least, 8);
      expect(result.verdict).toEqual({ kind: 'proved' });
      expect(speak(result.verdictWords)).toBe('Best possible by turning and swapping, proved');
    }
  });

  it('is the best of all ways to hang four blocks, whatever is wanted of them', () => {
    for (const value of VALUE_INTENTS) {
      for (const colour of COLOUR_INTENTS) {
        const project = scrappyTop({ rows: 2, columns: 2, seed: 11, fabrics: 6, sets: 4 });
        project.setting.sashing.where = 'around';
        project.setting.sashing.fabric = 'c1';
        project.setting.cornerFabric = 'c0';
        const { least, count } = leastOfAll(allPairs(project, DEFAULT_WEIGHTS, { value, colour }));
        expect(count).toBe(24 * 4 ** 4);
        const { contacts, spread } = proving(project, { value, colour });
        expect(bestOf(contacts, spread)!.cost).toBeCloseTo(least, 8);
      }
    }
  });

  it('is the best of all ways to hang them where corners follow the cells by a rule, whatever is wanted', () => {
    for (const [at, value] of VALUE_INTENTS.entries()) {
      for (const colour of runs(1, 2) === 1 ? [COLOUR_INTENTS[at % 2]!] : COLOUR_INTENTS) {
        const project = ruledBlocks(at + 20);
        const { least } = leastOfAll(allPairs(project, DEFAULT_WEIGHTS, { value, colour }));
        const { contacts, spread } = proving(project, { value, colour });
        expect(bestOf(contacts, spread)!.cost).toBeCloseTo(least, 8);
        expect(lowerBound(contacts, spread)).toBeLessThanOrEqual(least + 1e-9);
        const wish = { seed: 1, scopes: SCOPES, intent: { value, colour }, budget: { steps: 4_000 } };
        const result = arrange(project, wish);
        expect(result.after.total).toBeCloseTo(least, 8);
        expect(result.verdict).toEqual({ kind: 'proved' });
      }
    }
  }, 60_000);

  it('is the best of all ways to hang four blocks between uneven sashing, and five on point', () => {
    for (const seed of [2, 9, 14].slice(0, runs(1, 3))) {
      const uneven = scrappyTop({ rows: 2, columns: 2, seed, fabrics: 6, sets: 4 });
      const gap = { after: 1, width: 3 };
      const sashing = { where: 'between', width: 1, fabric: 'c1', columnGaps: [gap], rowGaps: [] } as const;
      uneven.setting.sashing = { ...sashing, columnGaps: [...sashing.columnGaps], rowGaps: [] };
      const onPoint = scrappyTop({ rows: 1, columns: 5, seed, fabrics: 6, sets: 4 });
      onPoint.setting.layout = { kind: 'onPoint', sides: 'c0', corners: 'c1' };
      onPoint.wall = { ...onPoint.wall, rows: 2, columns: 2 };
      for (const [project, ways] of [
        [uneven, 24 * 4 ** 4],
        [onPoint, 120 * 4 ** 5],
      ] as const) {
        const { least, count } = leastOfAll(allPairs(project));
        expect(count).toBe(ways);
        const result = arrange(project, { seed: 1, scopes: SCOPES, budget: { steps: 40_000 } });
        expect(result.verdict.kind).toBe('proved');
        expect(result.after.total).toBeCloseTo(least, 8);
      }
    }
  });

  it('is what an exact solver of mixed-integer programs finds (HiGHS)', async () => {
    const highs = await highsLoader();
    for (const seed of [5, 6, 7].slice(0, runs(1, 3))) {
      const project = scrappyTop({ rows: 1, columns: 3, seed, fabrics: 5, sets: 4 });
      const pairs = allPairs(project);
      const solved = highs.solve(asProgram(pairs));
      expect(solved.Status).toBe('Optimal');
      const { contacts, spread } = proving(project);
      expect(bestOf(contacts, spread)!.cost).toBeCloseTo(solved.ObjectiveValue + pairs.empty, 5);
    }
  }, 60_000);

  it('is found by the search alone, from any seed', () => {
    for (let seed = 1; seed <= runs(5, 12); seed++) {
      const { tables, decisions, contacts, spread } = proving(sixBlocks(seed));
      const search = new Search(new LiveWall(tables, decisions.spare), decisions, seed);
      while (search.steps < 30_000) search.advance(search.steps / 30_000);
      expect(search.best.cost).toBeCloseTo(bestOf(contacts, spread)!.cost, 8);
    }
  });

  it('leaves pinned blocks where they hang and is the best around them', () => {
    const project = sixBlocks(4);
    project.wall.cells[2]!.pinned = true;
    const { least } = leastOfAll(withHeld(allPairs(project), project, 2));
    const { contacts, spread, tables } = proving(project);
    const best = bestOf(contacts, spread)!;
    expect(best.cost).toBeCloseTo(least, 8);
    expect(best.blockIn[2]).toBe(tables.model.blockIn[2]);
    expect(best.orientationOf[tables.model.blockIn[2]!]).toBe(
      tables.model.orientationOf[tables.model.blockIn[2]!],
    );
  });
});

describe('the bound', () => {
  it('is never above the best arrangement there is', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 1e6 }),
        fc.constantFrom(...VALUE_INTENTS),
        fc.constantFrom(...COLOUR_INTENTS),
        (seed, value, colour) => {
          const { contacts, spread } = proving(sixBlocks(seed), { value, colour });
          const best = bestOf(contacts, spread)!.cost;
          const bound = lowerBound(contacts, spread);
          expect(bound).toBeLessThanOrEqual(best + 1e-9);
          expect(bound).toBeGreaterThan(0);
        },
      ),
      { numRuns: runs(9, 25) },
    );
  });

  it('is never above the best where corners follow the cells, and says something', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 1e6 }),
        fc.constantFrom(...VALUE_INTENTS),
        fc.constantFrom(...COLOUR_INTENTS),
        (seed, value, colour) => {
          const project = sixBlocks(seed);
          project.setting.cornerFabric = 'c0';
          project.setting.cornerRule = { kind: 'checkerboard', fabric: 'c1' };
          if (seed % 3 === 0) project.blocks[2]!.places[1] = null;
          const { contacts, spread } = proving(project, { value, colour });
          const bound = lowerBound(contacts, spread);
          expect(bound).toBeLessThanOrEqual(bestOf(contacts, spread)!.cost + 1e-9);
          expect(bound).toBeGreaterThan(0);
        },
      ),
      { numRuns: runs(6, 15) },
    );
  });

  it('comes from eigenvalues that are those of the string of n beads, 2 − 2 cos(kπ/(n + 1))', () => {
    for (const size of [1, 2, 5, 40]) {
      const beads = new Float64Array(size * size);
      for (let at = 0; at < size; at++) {
        beads[at * size + at] = 2;
        if (at > 0) beads[at * size + at - 1] = -1;
        if (at < size - 1) beads[at * size + at + 1] = -1;
      }
      eigenvaluesOf(beads, size).forEach((value, at) => {
        expect(value).toBeCloseTo(2 - 2 * Math.cos(((at + 1) * Math.PI) / (size + 1)), 10);
      });
    }
  });

  it('and that are finite where entries are too small to square', () => {
    for (const tiny of [1e-150, 1e-162, 5e-324]) {
      const matrix = Float64Array.from([3, tiny, tiny, tiny, 0, tiny, tiny, tiny, tiny]);
      const values = eigenvaluesOf(matrix, 3);
      for (const [at, value] of [0, 0, 3].entries()) expect(values[at]).toBeCloseTo(value, 12);
      for (const value of eigenvaluesOf(new Float64Array(16).fill(tiny), 4)) expect(value).toBeCloseTo(0, 12);
    }
  });

  it('and whose sum and sum of squares are the trace and the squared entries of any symmetric matrix', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 12 }).chain((size) =>
          fc.tuple(
            fc.constant(size),
            fc.array(fc.double({ min: -9, max: 9, noNaN: true }), {
              minLength: size * size,
              maxLength: size * size,
            }),
          ),
        ),
        ([size, entries]) => {
          const matrix = Float64Array.from(entries, (_, at) => {
            const row = Math.floor(at / size);
            const column = at % size;
            return entries[row * size + column]! + entries[column * size + row]!;
          });
          const values = eigenvaluesOf(matrix, size);
          const trace = Array.from({ length: size }, (_, at) => matrix[at * size + at]!).reduce(
            (a, b) => a + b,
            0,
          );
          expect(values.reduce((sum, one) => sum + one, 0)).toBeCloseTo(trace, 8);
          const squares = matrix.reduce((sum, one) => sum + one * one, 0);
          expect(values.reduce((sum, one) => sum + one * one, 0)).toBeCloseTo(squares, 6);
        },
      ),
    );
  });
});

/** Four blocks, two of them with corners in another cloth by the rule, one in every third top with corners of its own. */
function ruledBlocks(seed: number): Project {
  const project = scrappyTop({ rows: 2, columns: 2, seed, fabrics: 6, sets: 4 });
  project.setting.cornerFabric = 'c0';
  project.setting.cornerRule = { kind: 'checkerboard', fabric: 'c1' };
  if (seed % 3 === 0) project.blocks[1]!.cornerFabric = 'c2';
  if (seed % 2 === 0) project.blocks[2]!.places[3] = null;
  return project;
}

/** The same sums with the block of a cell held there as it hangs: all else in that cell costs more than any wall. */
function withHeld(pairs: AllPairs, project: Project, cell: number): AllPairs {
  const held = project.wall.cells[cell]!;
  const option = project.blocks.findIndex((block) => block.id === held.block) * 4 + held.turn;
  const alone = pairs.alone.map((cost, at) =>
    Math.floor(at / pairs.options) === cell && at % pairs.options !== option ? 1e6 : cost,
  );
  return { ...pairs, alone };
}

/** The wall as a mixed-integer program in LP format: x hangs an option in a cell, y two options in two cells. */
function asProgram({ cells, options, alone, pair }: AllPairs): string {
  const objective: string[] = [];
  const rows: string[] = [];
  const binaries: string[] = [];
  const x = (cell: number, option: number) => `x_${cell}_${option}`;
  const term = (cost: number, name: string) =>
    `${cost < 0 ? '-' : '+'} ${Math.abs(cost).toFixed(12)} ${name}`;
  const all = Array.from({ length: options }, (_, option) => option);
  for (let cell = 0; cell < cells; cell++) {
    rows.push(`${all.map((option) => x(cell, option)).join(' + ')} = 1`);
    for (const option of all) {
      objective.push(term(alone[cell * options + option]!, x(cell, option)));
      binaries.push(x(cell, option));
    }
  }
  for (let block = 0; block < options / 4; block++) {
    const hung = Array.from({ length: cells * 4 }, (_, at) => x(at >> 2, block * 4 + (at & 3)));
    rows.push(`${hung.join(' + ')} = 1`);
  }
  for (let cell = 0; cell < cells; cell++) {
    for (let other = cell + 1; other < cells; other++) {
      const y = (one: number, two: number) => `y_${cell}_${other}_${one}_${two}`;
      const apart = (one: number) => all.filter((two) => two >> 2 !== one >> 2);
      for (const one of all) {
        for (const two of apart(one)) {
          objective.push(term(pair[((cell * cells + other) * options + one) * options + two]!, y(one, two)));
        }
        rows.push(
          `${apart(one)
            .map((two) => y(one, two))
            .join(' + ')} - ${x(cell, one)} = 0`,
        );
        rows.push(
          `${apart(one)
            .map((two) => y(two, one))
            .join(' + ')} - ${x(other, one)} = 0`,
        );
      }
    }
  }
  const wrapped = (parts: readonly string[]) => parts.join('\n ');
  return `Minimize\n obj: ${wrapped(objective)}\nSubject To\n${rows
    .map((row, at) => ` r${at}: ${row.replaceAll(' + ', '\n + ')}`)
    .join('\n')}\nBinary\n ${wrapped(binaries)}\nEnd\n`;
}
