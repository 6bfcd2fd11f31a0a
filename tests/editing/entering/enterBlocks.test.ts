// Blocks entered as sewn: what gives way where wedges lack, what is refused, and that the ledger stays sound.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkWedges, wedgeLedger } from '../../../src/cutting/wedges/ledger';
import { apply } from '../../../src/editing/apply';
import { addBlocks } from '../../../src/editing/commands/blocks';
import { openBlocks } from '../../../src/editing/commands/chooseWedges';
import { pinBlocks } from '../../../src/editing/commands/wall';
import {
  type EnteredBlock,
  enterBlocks,
  shortPlaces,
  supplyOf,
} from '../../../src/editing/entering/enterBlocks';
import { speak } from '../../../src/model/phrase';
import type { Place, Project } from '../../../src/model/project';
import { dice } from '../../balance/tops';
import { runs } from '../../runs';
import { done, refusal } from '../outcomes';
import { partlySewn } from '../randomMoves';
import { withWedges, workshopProject } from '../workshopProject';

const wedges = (...words: string[]): (Place | null)[] =>
  Array.from({ length: 8 }, (_, at) => {
    const [set, tip] = (words[at % words.length] ?? '').split(' ') as [string, Place['tip']];
    return { set, tip };
  });
const entered = (more: Partial<EnteredBlock> = {}): EnteredBlock => ({
  block: null,
  number: null,
  places: wedges('s1 up', 's1 down', 's2 up', 's2 down'),
  progress: 'octagon',
  ...more,
});

/** Blocks of any wedges of the quilt, most of them new. */
function anyEntered(project: Project, seed: number): EnteredBlock[] {
  const random = dice(seed);
  const open = project.blocks.filter(({ progress }) => progress === 'planned');
  return Array.from({ length: 1 + random.below(4) }, (_, at) => ({
    block: at === 0 && open.length > 0 ? open[random.below(open.length)]!.id : null,
    number: null,
    progress: random.below(2) === 0 ? 'octagon' : 'squared',
    places: Array.from({ length: project.wedge.perBlock }, (_place, place) => ({
      set: project.stripSets[random.below(project.stripSets.length)]!.id,
      tip: place % 2 === 0 ? 'up' : 'down',
    })),
  }));
}

describe('entering blocks', () => {
  it('takes from planned blocks only what lacks, and counts what still lacks: the ledger stays sound', () => {
    fc.assert(
      fc.property(fc.nat(100_000), (seed) => {
        const project = partlySewn(seed);
        const blocks = anyEntered(project, seed);
        const { given, short } = supplyOf(project, blocks);
        const open = new Set(openBlocks(project));
        expect(given.every(({ block }) => open.has(block))).toBe(true);
        const places = shortPlaces(blocks, short).reduce((sum, found) => sum + found.size, 0);
        expect(places).toBe(short.reduce((sum, { there, needed }) => sum + needed - there, 0));
        const refused = apply(project, enterBlocks(project, blocks));
        expect(refused.ok).toBe(short.length === 0);
        const counts = short.map(({ set, tip, needed }) => ({ set, tip, count: needed }));
        const outcome = apply(project, enterBlocks(project, blocks, counts));
        if (!outcome.ok) throw new Error(speak(outcome.problems[0]!.message));
        expect(checkWedges(outcome.project)).toEqual([]);
        const lost = (now: Project) =>
          now.blocks
            .filter(({ id }) => !blocks.some(({ block }) => block === id))
            .slice(0, project.blocks.length)
            .flatMap(({ places: now }) => now)
            .filter((wedge) => wedge === null).length;
        const before = project.blocks.filter(({ id }) => !blocks.some(({ block }) => block === id)).length;
        expect(
          lost({ ...outcome.project, blocks: outcome.project.blocks.slice(0, project.blocks.length) }) -
            lost(project),
        ).toBe(given.length);
        expect(outcome.project.blocks.length - before).toBe(blocks.length);
      }),
      { numRuns: runs(30, 150) },
    );
  });
  it('hangs new blocks, marks them sewn and their sets cut, as one change', () => {
    const project = workshopProject();
    const after = done(project, enterBlocks(project, [entered(), entered({ progress: 'joined' })]));
    expect(after.blocks.slice(2).map(({ number, progress }) => [number, progress])).toEqual([
      [3, 'octagon'],
      [4, 'joined'],
    ]);
    expect(after.wall.cells.slice(2, 4).map((cell) => cell?.block)).toEqual(['b3', 'b4']);
    expect(after.stripSets.map(({ progress }) => progress)).toEqual(['cut', 'cut']);
  });
  it('turns an empty block so that place 1 lies at the top, unless it is pinned', () => {
    const bare = structuredClone(workshopProject());
    bare.blocks[0]!.cornerShift = 1;
    bare.wall.cells[0]!.turn = 2;
    const into = [entered({ block: 'b1' })];
    const after = done(bare, enterBlocks(bare, into));
    expect([after.blocks[0]!.cornerShift, after.wall.cells[0]!.turn]).toEqual([0, 0]);
    const pinned = done(bare, pinBlocks(bare, ['b1'], true));
    const held = done(pinned, enterBlocks(pinned, into));
    expect([held.blocks[0]!.cornerShift, held.wall.cells[0]!.turn]).toEqual([1, 2]);
  });
  it('takes a wedge out of the planned block of the highest number first', () => {
    const project = withWedges(workshopProject(), 's1 up');
    const [row] = wedgeLedger(project);
    const all = Array.from(
      { length: 8 },
      (_, at): Place => ({ set: at < row!.available.up ? 's1' : 's2', tip: 'up' }),
    );
    const { given } = supplyOf(project, [entered({ block: 'b2', places: all })]);
    expect(given).toEqual([{ block: 'b1', place: 0 }]);
  });
  it('refuses other wedges for a sewn block, and a block with an empty place as sewn', () => {
    const project = done(workshopProject(), addBlocks(1));
    const sewn = done(project, enterBlocks(project, [entered({ block: 'b1' })]));
    const other = entered({ block: 'b1', places: wedges('s1 down', 's1 up', 's2 up', 's2 down') });
    expect(refusal(sewn, enterBlocks(sewn, [other]))).toContain('is sewn');
    const open = entered({ places: entered().places.with(3, null) });
    expect(refusal(project, enterBlocks(project, [open]))).toContain('has an empty place');
  });
});
