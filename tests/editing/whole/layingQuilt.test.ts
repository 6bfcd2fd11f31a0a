// The whole quilt laid out in one action. The oracles count strips, wedges, cells and blocks anew, by themselves.
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { apply, type Change } from '../../../src/editing/apply';
import { setBlockProgress } from '../../../src/editing/commands/blocks';
import { layQuilt } from '../../../src/editing/commands/layQuilt';
import { changeSet } from '../../../src/editing/commands/stripSets';
import { pinBlocks, takeDown } from '../../../src/editing/commands/wall';
import { EMPTY_HISTORY, record, undo } from '../../../src/editing/history';
import { openProject } from '../../../src/editing/openProject';
import { speak } from '../../../src/model/phrase';
import type { ClothOnHand, Place, Project, StripOnHand } from '../../../src/model/project';
import { halfPlace } from '../../../src/model/wallCells';
import { plainFabrics, projectOf, stripSet, stripsOf } from '../../cutting/fabrics';
import { runs } from '../../runs';
import { after } from '../workshopProject';
import { laidOut, WISH } from './toTheEnd';

/** The project with all that laying out gives; the change for undo. */
function lay(
  project: Project,
  ...rest: Parameters<typeof laidOut> extends [Project, ...infer Rest] ? Rest : never
) {
  const { parts, words } = laidOut(project, ...rest);
  const said = words.map((one) => speak(one)).join(' ');
  if (!parts) return { project, said, change: null };
  const outcome = apply(project, layQuilt(parts));
  if (!outcome.ok) throw new Error(speak(outcome.problems[0]!.message));
  return { project: outcome.project, said, change: outcome.change as Change | null };
}

const filled = (project: Project) => project.blocks.filter((block) => !block.places.includes(null));
const hung = (project: Project) => project.wall.cells.flatMap((cell) => (cell ? [cell.block] : []));

/** Strips by fabric and width. */
function tally(rows: readonly { fabric: string; width: number; count?: number }[]): Map<string, number> {
  const counts = new Map<string, number>();
  for (const { fabric, width, count = 1 } of rows) {
    const key = `${fabric} ${width.toFixed(4)}`;
    counts.set(key, (counts.get(key) ?? 0) + count);
  }
  return counts;
}

const strip = fc.record({
  fabric: fc.integer({ min: 1, max: 6 }),
  width: fc.constantFrom(1, 1.25, 1.5, 2, 2.5),
  length: fc.constantFrom(36, 40, 42),
  count: fc.integer({ min: 1, max: 5 }),
});
const quiltsOf = (rows: { minLength: number; maxLength: number }) =>
  fc
    .tuple(fc.array(strip, rows), fc.constantFrom(6, 8, 12), fc.boolean())
    .map(([strips, perBlock, onPoint]): Project => {
      const base = projectOf({
        stripsOnHand: strips.map(
          (row, at): StripOnHand => ({ ...row, id: `h${at}`, fabric: `f${row.fabric}` }),
        ),
      });
      return {
        ...base,
        wedge: { ...base.wedge, perBlock: perBlock as 6 | 8 | 12 },
        ...(onPoint && perBlock !== 6
          ? {
              setting: { ...base.setting, layout: { kind: 'onPoint', sides: 'f1', corners: 'f1' } },
              wall: { ...base.wall, cells: Array.from({ length: 8 }, () => null) },
            }
          : {}),
      };
    });

const quilts = quiltsOf({ minLength: 0, maxLength: 18 });

/** A quilt laid out, then worked on: some sewn, some pinned, some emptied or taken down, and more strips on the table. */
const worked = fc
  .tuple(
    quiltsOf({ minLength: 8, maxLength: 14 }),
    fc.array(strip, { maxLength: 8 }),
    fc.array(fc.constantFrom('sewn', 'pinned', 'empty', 'down', 'some'), { minLength: 1, maxLength: 6 }),
  )
  .map(([quilt, more, doings]) => {
    let now = lay(quilt).project;
    now = {
      ...now,
      stripsOnHand: [
        ...now.stripsOnHand,
        ...more.map((row, at): StripOnHand => ({ ...row, id: `m${at}`, fabric: `f${row.fabric}` })),
      ],
    };
    doings.forEach((doing, at) => {
      const block = now.blocks[at];
      if (!block || block.places.includes(null)) return;
      if (doing === 'sewn')
        now = after(now, () => setBlockProgress([block.id], at % 2 ? 'octagon' : 'joined'));
      else if (doing === 'pinned') now = after(now, () => pinBlocks(now, [block.id], true));
      else if (doing === 'down') now = after(now, () => takeDown(now, block.id));
      else
        now = {
          ...now,
          blocks: now.blocks.map((one) =>
            one === block
              ? {
                  ...one,
                  places: one.places.map((place, index) => (doing === 'some' && index % 3 ? place : null)),
                }
              : one,
          ),
        };
    });
    return now;
  });

describe('laying out the whole quilt', () => {
  it('is undone exactly, in one step, and passes every check of a project from outside', () => {
    fc.assert(
      fc.property(fc.oneof(quilts, worked), (project) => {
        const text = JSON.stringify(project);
        const { project: laid, change } = lay(project);
        expect(JSON.stringify(project)).toBe(text);
        const opened = openProject(JSON.stringify(laid));
        expect(opened.ok ? [] : opened.problems.map((one) => speak(one.message))).toEqual([]);
        if (!change) return;
        expect(undo(laid, record(EMPTY_HISTORY, change))?.project).toEqual(project);
      }),
      { numRuns: runs(3, 20) },
    );
  });

  it('uses no strip twice, keeps every set, and what is sewn or pinned where it is', () => {
    fc.assert(
      fc.property(worked, (project) => {
        const { project: laid } = lay(project);
        expect(laid.stripSets.slice(0, project.stripSets.length)).toEqual(project.stripSets);
        const there = tally(project.stripsOnHand);
        for (const [key, used] of tally(laid.stripSets.flatMap((set) => set.strips)))
          expect(used, key).toBeLessThanOrEqual(there.get(key) ?? 0);
        for (const before of project.blocks) {
          const block = laid.blocks.find((one) => one.id === before.id)!;
          if (before.progress !== 'planned')
            expect(block).toEqual({ ...before, cornerShift: block.cornerShift });
          if (before.progress === 'joined') expect(block.cornerShift).toBe(before.cornerShift);
        }
        project.wall.cells.forEach((cell, at) => {
          const block = project.blocks.find((one) => one.id === cell?.block);
          if (!cell || !(cell.pinned || block?.progress === 'joined')) return;
          const now = laid.wall.cells.findIndex((one) => one?.block === cell.block);
          expect(laid.wall.cells[now]).toEqual(cell);
          expect(halfPlace(now, laid.wall)).toEqual(halfPlace(at, project.wall));
          expect(laid.blocks).toContainEqual(block);
        });
      }),
      { numRuns: runs(3, 20) },
    );
  });

  it('fills and hangs every block it makes, as many as a top of usual proportions takes of the wedges', () => {
    fc.assert(
      fc.property(quilts, (project) => {
        const { project: laid, said } = lay(project);
        expect(filled(laid)).toHaveLength(laid.blocks.length);
        expect(hung(laid).toSorted()).toEqual(laid.blocks.map((block) => block.id).toSorted());
        if (laid.blocks.length > 0) expect(laid.wall.cells.every((cell) => cell !== null)).toBe(true);
        // What is left of the wedges: fewer blocks than another row would take, and no block where none was made.
        const used = (tip: Place['tip']) =>
          laid.blocks.flatMap((block) => block.places).filter((place) => place?.tip === tip).length;
        const half = project.wedge.perBlock / 2;
        expect([used('up'), used('down')]).toEqual([laid.blocks.length * half, laid.blocks.length * half]);
        if (laid.blocks.length > 0)
          expect(said).toContain(
            laid.blocks.length === 1 ? '1 block hung' : `${laid.blocks.length} blocks hung`,
          );
      }),
      { numRuns: runs(3, 20) },
    );
  });

  it('is the same for the same number, and sound wherever it is stopped', () => {
    fc.assert(
      fc.property(worked, fc.nat({ max: 6 }), (project, stop) => {
        const once = laidOut(project);
        expect(laidOut(project)).toEqual(once);
        const { project: laid } = lay(project, {}, stop);
        expect(laid.stripSets).toEqual(once.parts?.stripSets ?? project.stripSets);
        expect(openProject(JSON.stringify(laid)).ok).toBe(true);
      }),
      { numRuns: runs(2, 10) },
    );
  });

  it('changes nothing but the order when it is done a second time', () => {
    fc.assert(
      fc.property(quilts, (project) => {
        const once = lay(project).project;
        const twice = lay(once).project;
        expect(twice.stripSets).toEqual(once.stripSets);
        expect(twice.blocks.map((block) => block.places)).toEqual(once.blocks.map((block) => block.places));
        expect([twice.wall.rows, twice.wall.columns]).toEqual([once.wall.rows, once.wall.columns]);
      }),
      { numRuns: runs(5, 40) },
    );
  });
});

test('many of the quilts these laws are tried on have blocks, and many of those worked on have some to keep', () => {
  const made = fc
    .sample(quilts, { numRuns: runs(8, 16), seed: 7 })
    .map((quilt) => lay(quilt).project.blocks.length);
  expect(made.filter((count) => count > 1).length).toBeGreaterThan(runs(2, 4));
  const kept = fc
    .sample(worked, { numRuns: runs(6, 60), seed: 8 })
    .filter((quilt) => quilt.blocks.some((one) => one.progress !== 'planned'));
  expect(kept.length).toBeGreaterThan(runs(0, 2));
});

test('forty strips of eight fabrics become a whole top, and it says so', () => {
  const fabrics = plainFabrics(8);
  const project = projectOf({ fabrics, stripsOnHand: stripsOf(fabrics, [[1, 2], [1.5, 2], [2, 1]]) }); // biome-ignore format: short
  const stages: string[] = [];
  const { parts, words } = laidOut(project, {}, undefined, ({ stage }) => stages.push(stage));
  expect(parts!.blocks.length).toBeGreaterThanOrEqual(4);
  expect([...new Set(stages)]).toEqual(['sets', 'blocks', 'shuffle']);
  expect(speak(words[0]!)).toMatch(
    /^\d sets from \d+ strips, \d+ wedges, \d blocks hung in \d rows of \d, (shuffled: )?score /,
  );
});

test('the blocks that were asked for hang on the wall that was chosen for them', () => {
  const fabrics = plainFabrics(8);
  const stripsOnHand = stripsOf(fabrics, [[1, 4], [1.5, 4], [2, 2]]); // biome-ignore format: short
  const wall = { rows: 2, columns: 2, cells: [null, null, null, null] };
  const { project } = lay(projectOf({ fabrics, stripsOnHand, wall }), { want: { blocks: 4 } });
  expect(project.blocks).toHaveLength(4);
  expect(project.wall.cells.every((cell) => cell !== null)).toBe(true);
  expect([project.wall.rows, project.wall.columns]).toEqual([2, 2]);
});

describe('fabric that is not cut yet', () => {
  const fabrics = plainFabrics(6);
  const clothOnHand = fabrics.map(({ id }): ClothOnHand => ({ id: `c${id}`, fabric: id, kind: 'yardage', stripLength: 40, depth: 12, count: 1 })); // biome-ignore format: a row

  it('is cut into strips where there are no strips, no more than there is', () => {
    const { project, said } = lay(projectOf({ fabrics, clothOnHand }));
    expect(project.blocks.length).toBeGreaterThanOrEqual(6);
    expect(said).toMatch(/Cut \d+ strips from the fabric on hand\./);
    for (const { id } of fabrics) {
      const strips = project.stripsOnHand.filter((row) => row.fabric === id);
      const rest = project.clothOnHand.filter((row) => row.fabric === id);
      const inches = strips.reduce((sum, row) => sum + row.count * row.width * row.length, 0);
      const left = rest.reduce((sum, row) => sum + row.count * row.depth * row.stripLength, 0);
      expect(inches + left).toBeLessThanOrEqual(12 * 40 + 1e-6);
    }
  });

  it('stays whole beside strips that make blocks, unless it is wished', () => {
    const stripsOnHand = stripsOf(fabrics, [[1.5, 3], [2, 2]]); // biome-ignore format: short
    const both = projectOf({ fabrics, clothOnHand, stripsOnHand });
    const few = lay(both);
    expect(few.project.clothOnHand).toEqual(clothOnHand);
    const more = lay(both, { cut: true });
    expect(more.project.blocks.length).toBeGreaterThan(few.project.blocks.length);
  });
});

it('says the rule that leaves each strip', () => {
  let some = 0;
  fc.assert(
    fc.property(quilts, (quilt) => {
      const { project, said } = lay(quilt);
      const used = project.stripSets.flatMap((set) => set.strips).length;
      const there = project.stripsOnHand.reduce((sum, row) => sum + row.count, 0);
      const told = [...said.matchAll(/(\d+) strips? (?:is|are) left: ([^.]|\.\d)+\./g)];
      expect(told.reduce((sum, [, count]) => sum + Number(count), 0)).toBe(there - used);
      some += told.length;
    }),
    { numRuns: runs(5, 40) },
  );
  expect(some).toBeGreaterThan(runs(1, 10));
});

test('an empty quilt is left as it is, in words', () => {
  const project = projectOf({});
  expect(laidOut(project)).toMatchObject({ parts: null });
  expect(lay(project).said).toBe('There is nothing to lay out yet: add strips or fabric first.');
});

test('a locked set and one that is too low stay, and a set is not made of their strips', () => {
  const fabrics = plainFabrics(8);
  const stripsOnHand = stripsOf(fabrics, [[2, 1]]);
  const low = stripSet('s1', [{ fabric: 'f1', width: 2 }, { fabric: 'f2', width: 2 }]); // biome-ignore format: short
  const project = after(projectOf({ fabrics, stripsOnHand, stripSets: [low] }), (now) =>
    changeSet(now, 's1', { locked: true }),
  );
  const { project: laid } = lay(project);
  expect(laid.stripSets[0]).toEqual(project.stripSets[0]);
  expect(
    laid.stripSets
      .slice(1)
      .flatMap((set) => set.strips)
      .some((one) => one.fabric === 'f1' || one.fabric === 'f2'),
  ).toBe(false);
  expect(WISH.seed).toBe(laid.preferences.seed);
});
