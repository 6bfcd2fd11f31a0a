import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { createProject } from '../../../src/model/create';
import { speak } from '../../../src/model/phrase';
import type { Project } from '../../../src/model/project';
import { writeProject } from '../../../src/model/reading/read';
import { readProject } from '../../../src/model/reading/readText';

const demo = readFileSync(new URL('../../../demo-data/harbour-reading-corner.json', import.meta.url), 'utf8');

/** Reads the demo after one change to its plain document; gives the problems as "path: sentence". */
function spoilt(change: (document: Project) => void): string[] {
  const document = JSON.parse(demo) as Project;
  change(document);
  const read = readProject(JSON.stringify(document));
  return read.ok ? [] : read.problems.map((problem) => `${problem.path}: ${speak(problem.message)}`);
}

describe('a project file', () => {
  it('reads back as it was written', () => {
    const project = createProject('p', 'Harbour');
    expect(readProject(writeProject(project))).toEqual({
      ok: true,
      value: project,
      pictures: new Map(),
      remarks: [],
    });
    const read = readProject(demo);
    expect(read.ok && readProject(writeProject(read.value))).toEqual(read);
  });

  it('that is no JSON, or JSON of something else, is refused', () => {
    for (const text of ['', '{', 'null', '[]', '"x"', '{"format":"other","version":1}']) {
      expect(readProject(text).ok).toBe(false);
    }
  });

  it('of a newer version asks for a newer tool', () => {
    expect(spoilt((document) => Object.assign(document, { version: 99 }))[0]).toContain('version 99');
  });

  it('of version 0 is brought up to date', () => {
    const { preferences, ...rest } = JSON.parse(demo) as Project;
    const cells = rest.wall.cells.map((cell) => (cell ? { block: cell.block, turn: cell.turn } : null));
    const old = {
      ...rest,
      version: 0,
      unit: 'cm',
      wall: { ...rest.wall, cells },
      preferences: { ...preferences, unit: undefined },
    };
    const read = readProject(JSON.stringify(old));
    expect(read.ok && read.value.preferences.unit).toBe('cm');
    expect(read.ok && read.value.wall.cells.every((cell) => cell === null || cell.pinned === false)).toBe(
      true,
    );
  });

  it.each<[what: string, change: (document: Project) => void, place: string]>([
    [
      'a colour in words',
      (document) => Object.assign(document.fabrics[0]!, { colour: 'red' }),
      'fabrics[0].colour',
    ],
    [
      'a negative width',
      (document) => Object.assign(document.stripSets[1]!.strips[2]!, { width: -1 }),
      'stripSets[1].strips[2].width',
    ],
    ['an unknown key', (document) => Object.assign(document, { sparkle: 1 }), 'sparkle'],
    ['a missing part', (document) => Reflect.deleteProperty(document, 'wall'), 'wall'],
    [
      'an unknown fabric',
      (document) => Object.assign(document.setting, { cornerFabric: 'gone' }),
      'setting.cornerFabric',
    ],
    [
      'an unknown set',
      (document) => Object.assign(document.blocks[0]!.places[3]!, { set: 'gone' }),
      'blocks[0].places[3].set',
    ],
    ['seven places', (document) => document.blocks[2]!.places.pop(), 'blocks[2].places'],
    [
      'a block hung twice',
      (document) => Object.assign(document.wall.cells[1]!, { block: document.wall.cells[0]!.block }),
      'wall.cells[1].block',
    ],
    ['too few cells', (document) => document.wall.cells.pop(), 'wall.cells'],
    [
      'seven wedges to the block',
      (document) => Object.assign(document.wedge, { perBlock: 7 }),
      'wedge.perBlock',
    ],
    [
      'a strip that its seams swallow',
      (document) => Object.assign(document.stripSets[0]!.strips[1]!, { width: 0.5 }),
      'stripSets[0].strips[1].width',
    ],
    [
      'a turn past the last',
      (document) => Object.assign(document.wall.cells[0]!, { turn: 4 }),
      'wall.cells[0].turn',
    ],
    [
      'two fabrics with one id',
      (document) => Object.assign(document.fabrics[1]!, { id: document.fabrics[0]!.id }),
      'fabrics[1].id',
    ],
    [
      'two blocks with one number',
      (document) => Object.assign(document.blocks[1]!, { number: document.blocks[0]!.number }),
      'blocks[1].number',
    ],
  ])('with %s is refused, naming the place', (_what, change, place) => {
    expect(spoilt(change).join('\n')).toContain(`${place}: `);
  });
});
