// Adding blocks fills them with what is left, and nothing else changes.
import fc from 'fast-check';
import { expect, it, test } from 'vitest';
import { wedgeLedger } from '../../../src/cutting/wedges/ledger';
import { wantedTip } from '../../../src/cutting/wedges/nesting';
import { apply } from '../../../src/editing/apply';
import { addBlocks } from '../../../src/editing/commands/blocks';
import { addFilledBlocks } from '../../../src/editing/commands/chooseWedges';
import { EMPTY_HISTORY, record, undo } from '../../../src/editing/history';
import { speak } from '../../../src/model/phrase';
import type { Project } from '../../../src/model/project';
import { scrappyTop } from '../../balance/tops';
import { runs } from '../../runs';
import { after, withWedges, workshopProject } from '../workshopProject';

/** A top of which some blocks are gone, so that their wedges are left, and some places are empty; sets cut as counted anew. */
const tops = fc
  .record({
    seed: fc.nat(9999),
    perBlock: fc.constantFrom(6 as const, 8 as const),
    sets: fc.integer({ min: 2, max: 5 }),
    hung: fc.integer({ min: 0, max: 3 }),
    gap: fc.boolean(),
  })
  .map(({ seed, perBlock, sets, hung, gap }): Project => {
    const top = scrappyTop({ rows: 2, columns: 3, seed, perBlock, sets });
    const blocks = top.blocks.slice(0, hung).map((block, at) => ({
      ...block,
      places: block.places.map((place, index) => (gap && at === 0 && index % 3 === 1 ? null : place)),
    }));
    const cells = top.wall.cells.map((cell) => (blocks.some((one) => one.id === cell?.block) ? cell : null));
    const bare = { ...top, blocks, wall: { ...top.wall, cells } };
    // Enough of every wedge the blocks use.
    const cut = (id: string, tip: 'up' | 'down') =>
      blocks.flatMap((block) => block.places).filter((place) => place?.set === id && place.tip === tip)
        .length;
    return {
      ...bare,
      stripSets: top.stripSets.map((set, at) => ({
        ...set,
        cut: { up: cut(set.id, 'up') + ((seed + at) % 9), down: cut(set.id, 'down') + ((seed + 5 * at) % 8) },
      })),
    };
  });

it('as many new blocks as the wedges left allow are whole; one more holds the rest; the others stay as they are', () => {
  let parts = 0;
  fc.assert(
    fc.property(tops, fc.integer({ min: 1, max: 5 }), fc.nat(99), (project, count, seed) => {
      const half = project.wedge.perBlock / 2;
      const left = (tip: 'up' | 'down', now = project) =>
        wedgeLedger(now).reduce((sum, row) => sum + row.left[tip], 0);
      const whole = Math.min(count, Math.floor(Math.min(left('up'), left('down')) / half));
      const { command, words } = addFilledBlocks(project, count, seed);
      const outcome = apply(project, command);
      if (!outcome.ok) throw new Error(speak(outcome.problems[0]!.message));
      const now = outcome.project;
      expect(now.blocks.slice(0, project.blocks.length)).toEqual(project.blocks);
      const added = now.blocks.slice(project.blocks.length);
      expect(added).toHaveLength(count);
      const full = added.filter((block) => !block.places.includes(null));
      expect(full).toHaveLength(whole);
      for (const block of added) {
        block.places.forEach((place, at) => {
          if (place !== null && block.places[(at + 1) % block.places.length]?.tip)
            expect(block.places[(at + 1) % block.places.length]!.tip).not.toBe(place.tip);
        });
      }
      const part = added.find((block) => block.places.includes(null));
      if (part?.places.some((place) => place !== null)) {
        parts += 1;
        const empty = part.places.flatMap((place, at) => (place === null ? [at] : []));
        for (const at of empty) expect(left(wantedTip(part.places, at), now)).toBe(0);
        expect(words.map((one) => speak(one)).join(' ')).toContain(
          `${count === 1 ? 'it' : '1'} has ${empty.length} empty place${empty.length === 1 ? '' : 's'}`,
        );
      } else if (part) expect(left('up', now) + left('down', now)).toBe(0);
      expect(now.wall.cells).toEqual(after(project, () => addBlocks(count)).wall.cells);
      expect(undo(now, record(EMPTY_HISTORY, outcome.change))!.project).toEqual(project);
      expect(addFilledBlocks(project, count, seed).words).toEqual(words);
    }),
    { numRuns: runs(25, 150) },
  );
  expect(parts).toBeGreaterThan(runs(3, 15));
});

test('it says how many are filled, and what is missing', () => {
  const base = workshopProject();
  const project = { ...base, blocks: [], wall: { ...base.wall, cells: base.wall.cells.map(() => null) } };
  const said = (count: number) => addFilledBlocks(project, count, 1).words.map((one) => speak(one));
  expect(said(1)).toEqual(['1 block added and filled.']);
  const few = {
    ...project,
    stripSets: project.stripSets.slice(0, 1).map((set) => ({ ...set, cut: { up: 3, down: 9 } })),
  };
  expect(addFilledBlocks(few, 1, 1).words.map((one) => speak(one))).toEqual([
    '1 block added; it has 1 empty place.',
  ]);
  expect(said(2)).toEqual(['2 blocks added and filled.']);
  // 11 wedges of each tip: two blocks take 8 of each, three are left for a third.
  expect(said(3)).toEqual(['2 blocks added and filled; 1 has 2 empty places.']);
  expect(said(5)).toEqual(['2 blocks added and filled; 1 has 2 empty places; 2 are empty.']);
});

test('a block that is filled in part keeps its empty places', () => {
  const project = withWedges(workshopProject(), 's1 up', 's2 down');
  const { command } = addFilledBlocks(project, 1, 3);
  expect(after(project, () => command).blocks[0]).toEqual(project.blocks[0]);
});
