// Commands on buying: each can be undone and made again, with its words.
import { applyPatches } from 'immer';
import { describe, expect, it } from 'vitest';
import { apply, type Command } from '../../../src/editing/apply';
import { changeBacking, changeBuying, changeKits } from '../../../src/editing/commands/buying';
import { usualBuying } from '../../../src/model/buying';
import { createProject } from '../../../src/model/create';
import { speak } from '../../../src/model/phrase';
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
