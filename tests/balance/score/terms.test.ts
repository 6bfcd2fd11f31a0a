// The score: about 1 by chance on walls of every size, lower for what is better, and true to its published formulas.
import { describe, expect, it } from 'vitest';
import { type Intent, SCATTERED } from '../../../src/balance/score/intent';
import { termScales } from '../../../src/balance/score/termScales';
import { evaluateTerms } from '../../../src/balance/score/terms';
import { DEFAULT_WEIGHTS, TERM_NAMES, type TermName, weighted } from '../../../src/balance/score/weights';
import { kernelOf, quadratic } from '../../../src/balance/wall/kernel';
import { type WallModel, wallModel } from '../../../src/balance/wall/wallModel';
import { clothTable } from '../../../src/cloth/cloths';
import type { Project } from '../../../src/model/project';
import { runs } from '../../runs';
import { dice, scrappyTop } from '../tops';

const TOGETHER: Intent = { value: 'light middle', colour: 'families together' };

function modelOf(project: Project): WallModel {
  return wallModel(project, clothTable(project.fabrics));
}

/** Blocks dealt to the cells and turned at random. */
function dealt(project: Project, seed: number): Project {
  const random = dice(seed);
  const cells = [...project.wall.cells];
  for (let left = cells.length - 1; left > 0; left--) {
    const pick = random.below(left + 1);
    [cells[left], cells[pick]] = [cells[pick]!, cells[left]!];
  }
  const turns = project.wedge.perBlock % 4 === 0 ? 4 : 2;
  return {
    ...project,
    wall: { ...project.wall, cells: cells.map((cell) => ({ ...cell!, turn: random.below(turns) })) },
  };
}

/** Wedges dealt to the places, tip up and tip down in turn. */
function dealtWedges(project: Project, seed: number): Project {
  const random = dice(seed);
  const wedges = project.blocks.flatMap((block) => block.places);
  for (let left = wedges.length - 1; left > 1; left--) {
    const pick = (left % 2) + 2 * random.below(Math.floor(left / 2) + 1);
    [wedges[left], wedges[pick]] = [wedges[pick]!, wedges[left]!];
  }
  const { perBlock } = project.wedge;
  return {
    ...project,
    blocks: project.blocks.map((block, at) => ({
      ...block,
      places: wedges.slice(at * perBlock, (at + 1) * perBlock),
    })),
  };
}

function averages(tops: readonly Project[], intent: Intent): Record<TermName, number> {
  const sums = Object.fromEntries(TERM_NAMES.map((name) => [name, 0])) as Record<TermName, number>;
  for (const project of tops) {
    const model = modelOf(project);
    const terms = evaluateTerms(termScales(model, intent), model);
    for (const name of TERM_NAMES) sums[name] += terms[name] / tops.length;
  }
  return sums;
}

describe('the terms of the score', () => {
  for (const [rows, columns, perBlock, deals] of [
    [2, 3, 8, 240],
    [4, 5, 8, runs(80, 160)],
    [6, 7, 6, runs(40, 80)],
    [12, 12, 8, runs(15, 30)],
  ] as const) {
    for (const intent of [SCATTERED, TOGETHER]) {
      it(`are about 1 by chance on ${rows} × ${columns} blocks of ${perBlock}, ${intent.value}, ${intent.colour}`, () => {
        const base = scrappyTop({ rows, columns, seed: 6, perBlock, fabrics: 30 }); // Among so many some are alike.
        const tops = Array.from({ length: deals }, (_, at) => dealt(dealtWedges(base, 500 + at), at));
        const found = averages(tops, intent);
        for (const name of TERM_NAMES) {
          // The squared moment and the form of few blocks scatter widely round 1; the sums of many inches do not.
          const slack = name === 'wholeTopWeight' ? 0.35 : 0.2;
          expect(found[name], name).toBeGreaterThan(1 - slack);
          expect(found[name], name).toBeLessThan(1 + slack);
        }
      }, 30_000);
    }
  }

  it('are worse where lights and darks are sorted than where they are scattered, and best as an order where that is wanted', () => {
    const base = scrappyTop({ rows: 5, columns: 6, seed: 8 });
    const light = modelOf(base).lightness;
    const order = base.blocks.map((_, at) => at).sort((one, other) => light[other]! - light[one]!);
    const sorted: Project = {
      ...base,
      wall: {
        ...base.wall,
        cells: base.wall.cells.map((_, at) => ({
          block: `b${order[(at % 6) * 5 + Math.floor(at / 6)]!}`,
          turn: 0,
          pinned: false,
        })),
      },
    };
    const score = (project: Project, intent: Intent) => {
      const model = modelOf(project);
      return evaluateTerms(termScales(model, intent), model);
    };
    const across: Intent = { value: 'light to dark', colour: 'scattered' };
    expect(score(sorted, SCATTERED).valueSpread).toBeGreaterThan(2);
    expect(score(sorted, SCATTERED).wholeTopWeight).toBeGreaterThan(3);
    expect(score(sorted, across).valueSpread).toBeLessThan(0.05);
    expect(score(base, across).valueSpread).toBeGreaterThan(0.5);
  });

  it('are figures however few of the hung blocks have wedges, whatever lies round them', () => {
    const around = { where: 'around', width: 1.5, fabric: 'c0' } as const;
    for (const perBlock of [6, 8, 10, 12] as const) {
      const top = scrappyTop({ rows: 2, columns: 2, perBlock, seed: 5 });
      for (const setting of [top.setting, { ...top.setting, sashing: around }]) {
        for (let filled = 0; filled <= 2; filled++) {
          const blocks = top.blocks.map((block, at) =>
            at < filled ? block : { ...block, places: block.places.map(() => null) },
          );
          const model = modelOf({ ...top, blocks, setting } as Project);
          const terms = evaluateTerms(termScales(model, SCATTERED), model);
          expect(
            TERM_NAMES.filter((name) => !Number.isFinite(terms[name])),
            `${filled} of ${perBlock} wedges, sashing ${setting.sashing.where}`,
          ).toEqual([]);
        }
      }
    }
  });

  it('do not change when only the numbering of the fabrics and blocks does', () => {
    const base = scrappyTop({ rows: 3, columns: 4, seed: 9 });
    const other: Project = { ...base, fabrics: base.fabrics.toReversed(), blocks: base.blocks.toReversed() };
    const terms = (project: Project) => {
      const model = modelOf(project);
      return evaluateTerms(termScales(model), model);
    };
    for (const name of TERM_NAMES) expect(terms(other)[name]).toBeCloseTo(terms(base)[name], 9);
  });

  it('add up by their weights', () => {
    const ones = Object.fromEntries(TERM_NAMES.map((name) => [name, 1])) as Record<TermName, number>;
    expect(weighted(ones, DEFAULT_WEIGHTS)).toBe(
      Object.values(DEFAULT_WEIGHTS).reduce((sum, one) => sum + one, 0),
    );
  });
});

describe('the form over groups of blocks', () => {
  it('is the sum over all groups of 2 × 2 and 3 × 3 cells of the squared group sum over m²', () => {
    const rows = 4;
    const columns = 5;
    const random = dice(2);
    const values = Float64Array.from({ length: rows * columns }, () => random.part() - 0.5);
    let plain = 0;
    for (const side of [2, 3]) {
      for (let row = 1 - side; row < rows; row++) {
        for (let column = 1 - side; column < columns; column++) {
          let sum = 0;
          for (let r = Math.max(0, row); r < Math.min(rows, row + side); r++) {
            for (let c = Math.max(0, column); c < Math.min(columns, column + side); c++)
              sum += values[r * columns + c]!;
          }
          plain += sum ** 2 / side ** 2;
        }
      }
    }
    expect(quadratic(kernelOf(rows, columns), values)).toBeCloseTo(plain, 12);
  });
});
