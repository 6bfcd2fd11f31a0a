import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createProject } from '../../../src/model/create';
import { speak } from '../../../src/model/phrase';
import type { Project } from '../../../src/model/project';
import { writeProject } from '../../../src/model/read';
import { MOST_MEGABYTES, projectFileName, readProjectFile } from '../../../src/store/storage/projectFiles';

const file = (text: string, size = text.length) => ({ name: 'stones.json', size, text: async () => text });
const sound = createProject('river', 'River stones');

/** Path and sentence of everything wrong with the file. */
async function wrong(text: string): Promise<string[]> {
  const read = await readProjectFile(file(text));
  return read.ok ? [] : read.problems.map((problem) => `${problem.path} | ${speak(problem.message)}`);
}

describe('the name of a project file', () => {
  it.each([
    ['River stones, 2nd try!', 'river-stones-2nd-try.wedgewall.json'],
    ['', 'quilt.wedgewall.json'],
    ['../../etc/passwd', 'etc-passwd.wedgewall.json'],
    ['Größe', 'größe.wedgewall.json'],
    ['夏の庭', '夏の庭.wedgewall.json'],
    ['CON', 'quilt-con.wedgewall.json'],
  ])('of "%s" is %s', (name, expected) => {
    expect(projectFileName(name)).toBe(expected);
  });

  it('has no separator, control sign or surplus length, whatever the project is called', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 200 }), (name) => {
        expect(projectFileName(name)).toMatch(/^[\p{L}\p{M}\p{N}-]{1,66}\.wedgewall\.json$/u);
      }),
      { seed: 20 },
    );
  });
});

describe('reading a project file', () => {
  it('gives the project that was written, with or without a byte order mark', async () => {
    expect(await readProjectFile(file(writeProject(sound)))).toEqual({ ok: true, value: sound });
    expect(await readProjectFile(file(`\uFEFF${writeProject(sound)}`))).toEqual({ ok: true, value: sound });
  });

  it('does not open a file that is too large to be a project', async () => {
    const text = () => Promise.reject(new Error('was opened'));
    const read = await readProjectFile({ name: 'film.json', size: (MOST_MEGABYTES + 0.5) * 1024 ** 2, text });
    expect(read.ok ? '' : speak(read.problems[0]!.message)).toBe(
      'film.json is 51 MB; a project file is at most 50 MB. Was another file chosen by mistake?',
    );
  });

  it('says so when the file cannot be read any more', async () => {
    const read = await readProjectFile({
      name: 'stones.json',
      size: 9,
      text: () => Promise.reject(new Error('not found')),
    });
    expect(read.ok ? '' : speak(read.problems[0]!.message)).toContain('could not be read (not found)');
  });

  it.each([
    ['', ' | stones.json is empty.'],
    [
      '<svg/>',
      ' | stones.json is not a project file: it does not begin with a brace. Was another file chosen by mistake?',
    ],
  ])('tells a file of another kind (%j) apart', async (text, expected) => {
    expect(await wrong(text)).toEqual([expected]);
  });

  it('names the line a file breaks at', async () => {
    const [said] = await wrong('{\n "format": "wedgewall-project",\n "version": 1,,\n}');
    expect(said).toMatch(/^line 3 \| stones\.json cannot be read from line 3 on/);
  });

  it('says so when a file breaks off before its end', async () => {
    expect((await wrong(writeProject(sound).slice(0, 300)))[0]).toMatch(/breaks off/);
  });

  it('refuses readable JSON that is no project', async () => {
    expect((await wrong('{"format": "letter"}'))[0]).toMatch(/not a Wedgewall project file/);
  });

  // biome-ignore format: a table
  const damages: [string, (project: Project & Record<string, unknown>) => void, string][] = [
    ['a length out of range', (one) => { one.wedge.cutHeight = 500; },
      'wedge.cutHeight | At wedge, cut height: must be at most 40 in. The file has 500.'],
    ['words for a number', (one) => { Object.assign(one.wedge, { seam: 'quarter' }); },
      'wedge.seam | At wedge, seam allowance: should be a number. The file has "quarter".'],
    ['too many rows', (one) => { one.wall.rows = 100; },
      'wall.rows | At wall, rows: must be at most 40. The file has 100.'],
    ['a broken colour', (one) => { one.fabrics[0]!.colour = 'red'; },
      'fabrics[0].colour | At fabric Background, colour: a colour is written #rrggbb. The file has "red".'],
    ['a turn too far', (one) => { one.wall.cells[3] = { block: 'b1', turn: 7, pinned: false }; },
      'wall.cells[3].turn | At wall, row 2, column 2, turn: must be at most 3. The file has 7.'],
    ['an unknown choice', (one) => { Object.assign(one.preferences, { unit: 'mm' }); },
      'preferences.unit | At preferences, unit of length: should be "in" or "cm". The file has "mm".'],
    ['an entry that is missing', (one) => { Reflect.deleteProperty(one, 'name'); },
      'name | At name: missing in the file.'],
    ['an entry nobody knows', (one) => { Object.assign(one, { constructor: { deep: 1 } }); },
      'constructor | At entry "constructor": Wedgewall does not know this entry. The file has a group of entries.'],
    ['a list that is none', (one) => { Object.assign(one, { blocks: 'six' }); },
      'blocks | At blocks: should be a list. The file has "six".'],
    ['a border of a fabric that is not there', (one) => { one.setting.borders = [{ fabric: 'f9', width: 3 }]; },
      'setting.borders[0].fabric | At setting, border 1 from the inside, fabric: There is no fabric with the id f9.'],
    ['a strip of no use', (one) => { one.stripsOnHand = [{ id: 'h1', fabric: 'f1', width: 0.5, length: 40, count: 2 }]; },
      'stripsOnHand[0].width | At strips on hand, row 1, width: A strip cut 1/2" wide vanishes in its two seams; it must be wider than 1/2".'],
  ];
  it.each(damages)('names the place and the reason of %s', async (_what, damage, expected) => {
    const damaged = structuredClone(sound) as Project & Record<string, unknown>;
    damage(damaged);
    expect(await wrong(JSON.stringify(damaged))).toEqual([expected]);
  });

  it('calls blocks and strip sets by their number and letter, or by their position when these are broken', async () => {
    const damaged = {
      ...sound,
      stripSets: [{ label: 'C' }, { label: null }],
      blocks: [{ kind: 'pieced', number: 12, places: [{ set: '', tip: 'up' }] }],
    };
    const said = (await wrong(JSON.stringify(damaged))).join('\n');
    expect(said).toContain('At strip set C, id: missing in the file.');
    expect(said).toContain('At strip set 2 in the list, letter: should be text. The file has null.');
    expect(said).toContain('At block 12, place 1, strip set: an id cannot be empty. The file has "".');
  });

  it('has an answer for every document with one entry replaced by rubbish', async () => {
    const paths = (at: unknown, path: string[] = []): string[][] =>
      typeof at === 'object' && at !== null
        ? Object.entries(at).flatMap(([key, one]) => [[...path, key], ...paths(one, [...path, key])])
        : [];
    const rubbish = fc.oneof(fc.jsonValue(), fc.constantFrom(null, -1, 1e9, '', [], {}));
    await fc.assert(
      fc.asyncProperty(fc.constantFrom(...paths(sound)), rubbish, async (path, replacement) => {
        const damaged = structuredClone(sound);
        const holder = path
          .slice(0, -1)
          .reduce((at: unknown, key) => Reflect.get(at as object, key), damaged);
        Reflect.set(holder as object, path.at(-1)!, replacement);
        const read = await readProjectFile(file(JSON.stringify(damaged)));
        if (read.ok) return;
        for (const problem of read.problems) {
          expect(problem.message.say).not.toBe('{reason}');
          expect(speak(problem.message)).not.toMatch(/\{\w+\}|undefined|\[object/);
        }
      }),
      { seed: 7, numRuns: 300 },
    );
  });
});
