// Blocks as a list of text: written and read again they are the same, and every fault has its line and place.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { apply } from '../../../src/editing/apply';
import { readBlockList, writeBlockList } from '../../../src/editing/entering/blockList';
import { enterBlocks } from '../../../src/editing/entering/enterBlocks';
import { speak } from '../../../src/model/phrase';
import type { Block, Project } from '../../../src/model/project';
import { runs } from '../../runs';
import { partlySewn } from '../randomMoves';
import { after, workshopProject } from '../workshopProject';

const NAMES = { planned: 'Planned', octagon: 'Wedges joined', squared: 'Corners on', joined: 'In its row' };

/** A quilt half way, its sets under names that need care. */
const quilts = fc
  .record({
    seed: fc.nat(100_000),
    labels: fc.infiniteStream(fc.string({ minLength: 1, maxLength: 4, unit: 'grapheme' })),
  })
  .map(({ seed, labels }) => {
    const project = partlySewn(seed);
    const used = new Set<string>();
    for (const [at, set] of project.stripSets.entries()) {
      const label = at % 2 === 0 ? `${set.label.slice(0, 3)}` : (labels.next().value as string);
      if (!used.has(label) && label.trim() === label) set.label = label;
      used.add(set.label);
    }
    return project;
  });

const bare = ({ blocks }: Project) =>
  blocks
    .map(({ number, places, progress }) => ({ number, places, progress }))
    .toSorted((one, other) => one.number - other.number);

describe('a list of blocks', () => {
  it('changes nothing when it is written and read again', () => {
    fc.assert(
      fc.property(quilts, (project) => {
        const list = readBlockList(project, writeBlockList(project, NAMES), 'octagon', NAMES);
        expect(list.problems).toEqual([]);
        const outcome = apply(project, enterBlocks(project, list.blocks));
        expect(outcome.ok && outcome.change.patches).toEqual([]);
      }),
      { numRuns: runs(67, 200) },
    );
  });
  it('makes the same blocks again where there are none', () => {
    fc.assert(
      fc.property(quilts, (project) => {
        const text = writeBlockList(project, NAMES);
        const cells = project.blocks.map(() => null);
        const empty: Project = {
          ...project,
          blocks: [],
          setting: { ...project.setting, layout: { kind: 'straight' }, plain: null },
          wall: { rows: 1, columns: cells.length, cells },
        };
        const list = readBlockList(empty, text, 'octagon', NAMES);
        const outcome = apply(empty, enterBlocks(empty, list.blocks));
        expect(outcome.ok ? bare(outcome.project) : outcome.problems).toEqual(bare(project));
      }),
      { numRuns: runs(33, 100) },
    );
  });
  it('reads arrows, letters and words, with and without number and progress', () => {
    const project = workshopProject();
    const wedges = ['s1 up', 's2 down', 's1 up', 's2 down', 's2 up', 's1 down', 's2 up', 's1 down'];
    for (const text of [
      'A↑ B↓ A↑ B↓ B↑ A↓ B↑ A↓',
      'Au Bd au bd Bu Ad Bu Ad',
      'A up, B down, A up, B down, B up, A down, B up, A down',
      'A ↑|B ↓|A^|Bv|B▲|A▼|Bup|Adown',
      'Block 1: A↑B↓A↑B↓B↑A↓B↑A↓ (wedges joined)',
      '1. "A"↑ "b"d Au Bd Bu Ad Bu Ad (octagon)',
    ]) {
      const { blocks, problems } = readBlockList(project, text, 'octagon', NAMES);
      expect(problems).toEqual([]);
      expect(blocks).toHaveLength(1);
      expect(blocks[0]!.places.map((wedge) => `${wedge?.set} ${wedge?.tip}`)).toEqual(wedges);
      expect(blocks[0]).toMatchObject({ line: 1, block: 'b1', number: 1, progress: 'octagon' });
    }
  });
  it('tells sets of two letters from tips', () => {
    const [a, b] = workshopProject().stripSets;
    const sets = [a!, b!, { ...a!, id: 's3', label: 'AU' }, { ...a!, id: 's4', label: 'D' }];
    const project = { ...workshopProject(), stripSets: sets };
    const { blocks } = readBlockList(project, 'Au AU↓ AUu D↓ Au D↓ AU ↑ Dd', 'planned', NAMES);
    expect(blocks[0]!.places.map((wedge) => `${wedge?.set} ${wedge?.tip}`)).toEqual([
      's1 up',
      's3 down',
      's3 up',
      's4 down',
      's1 up',
      's4 down',
      's3 up',
      's4 down',
    ]);
  });
  it('names the line and the place of every fault, and still reads the other lines', () => {
    const project = workshopProject();
    const good = 'A↑ B↓ A↑ B↓ A↑ B↓ A↑ B↓';
    const text = [
      good,
      '',
      'A↑ Q↓ A↑ B A↑ B↓ A↑ B↓',
      'A↑ B↓',
      `9: ${good}`,
      `9: ${good}`,
      `${good} (glued)`,
    ].join('\n');
    const { blocks, problems } = readBlockList(project, text, 'octagon', NAMES);
    expect(blocks.map(({ line, number }) => [line, number])).toEqual([
      [1, 1],
      [5, 9],
    ]);
    expect(problems.map(({ line, place }) => [line, place])).toEqual([
      [3, 2],
      [3, 4],
      [4, null],
      [6, null],
      [7, null],
    ]);
    expect(problems.map(({ message }) => speak(message))).toEqual([
      'There is no set Q.',
      '“B” does not say which way its tip points: B↑ or B↓.',
      'It has 2 wedges; a block has 8. Write – for an empty place.',
      'Block 9 stands on an earlier line.',
      '“glued” is no progress of a block. There are: Planned, Wedges joined, Corners on and In its row.',
    ]);
  });
  it('tells one wedge as one, and a number too large for a block as that', () => {
    const told = (text: string) =>
      readBlockList(workshopProject(), text, 'octagon', NAMES).problems.map(({ message }) => speak(message));
    expect(told('A↑')).toEqual(['It has 1 wedge; a block has 8. Write – for an empty place.']);
    expect(told('1234567890: A↑ B↓ A↑ B↓ A↑ B↓ A↑ B↓')).toEqual(['A block has a number from 1 to 10,000.']);
  });
  it('says that a sewn block keeps its wedges', () => {
    const line = (wedges: string) => `1: ${wedges}`;
    const sewn = after(workshopProject(), (now) =>
      enterBlocks(now, readBlockList(now, line('A↑ B↓ A↑ B↓ A↑ B↓ A↑ B↓'), 'octagon', NAMES).blocks, [
        { set: 's1', tip: 'up', count: 9 },
        { set: 's2', tip: 'down', count: 9 },
      ]),
    );
    expect((sewn.blocks[0] as Block).progress).toBe('octagon');
    const { problems } = readBlockList(sewn, line('A↓ B↓ A↑ B↓ A↑ B↓ A↑ B↓'), 'octagon', NAMES);
    expect(problems).toMatchObject([{ line: 1, place: null }]);
  });
});
