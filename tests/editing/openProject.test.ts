// A project's text is read by one rule, wherever it comes from: a file on the page, a quilt kept in the browser, a file
// named on the command line, an example. The byte-order mark is accepted (RFC 8259, section 8.1, lets readers ignore it).
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import { MOST_MEGABYTES, openFile } from '../../src/editing/openFile';
import { openProject } from '../../src/editing/openProject';
import { createProject } from '../../src/model/create';
import { speak } from '../../src/model/phrase';
import type { Project } from '../../src/model/project';
import { writeProject } from '../../src/model/reading/read';
import type { Result } from '../../src/model/result';
import { NO_NOTES } from '../../src/store/storage/leaving';
import { createMemoryShelf } from '../../src/store/storage/memory';
import { SILENT_NEWS } from '../../src/store/storage/news';
import { createStorage, type ShelfRecord } from '../../src/store/storage/storage';
import { runSheet } from '../cli/runSheet';
import { demo } from '../demo';
import { runs } from '../runs';

const folder = mkdtempSync(join(tmpdir(), 'reading-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** What is said: nothing where the project opens. */
function said(opened: Result<unknown>): string[] {
  if (opened.ok) return [];
  return opened.problems.map((one) =>
    [one.path, speak(one.message)].filter((part) => part !== '').join(': '),
  );
}

/** As the page opens a chosen file. */
const onThePage = async (bytes: Uint8Array<ArrayBuffer>) => said(await openFile(new Blob([bytes])));

/** As the command line opens it; throws where it is neither opened nor refused with status 2 and nothing written. */
async function onTheCommandLine(bytes: Uint8Array): Promise<string[]> {
  const file = join(folder, 'given.json');
  const out = join(folder, 'out');
  writeFileSync(file, bytes);
  const run = await runSheet(folder, file, '--out', out, '--width', '16');
  const written = readdirSync(folder).includes('out');
  rmSync(out, { recursive: true, force: true });
  expect([run.status, written]).toEqual(run.error === '' ? [0, true] : [2, false]);
  return run.error
    .split('\n')
    .slice(0, -1)
    .map((line) => line.replace(`${file}: `, ''));
}

/** As the storage opens a kept document. */
async function fromStorage(document: unknown): Promise<string[]> {
  const shelf = createMemoryShelf();
  const storage = createStorage(shelf, { news: SILENT_NEWS, notes: NO_NOTES, now: () => 0 });
  await shelf.change('kept', () => ({ summary: {}, document }) as unknown as ShelfRecord);
  return said(await storage.load('kept'));
}

const utf8 = (text: string) => new TextEncoder().encode(text);
const utf16 = (text: string, little: boolean) =>
  Uint8Array.from(
    Array.from({ length: text.length * 2 }, (_, at) => {
      const unit = text.charCodeAt(at >> 1);
      return (at % 2 === 0) === little ? unit & 0xff : unit >> 8;
    }),
  );

const small = createProject('river', 'Größe 夏 🧵');
const sewn = demo('harbour-reading-corner');
const paths = (at: unknown, path: string[] = []): string[][] =>
  typeof at === 'object' && at !== null
    ? Object.entries(at).flatMap(([key, one]) => [[...path, key], ...paths(one, [...path, key])])
    : [];
const PATHS = new Map<Project, string[][]>([small, sewn].map((one) => [one, paths(one)]));

/** A project with one entry replaced or gone, as a plain document. */
function damaged(project: Project, path: readonly string[], replacement: unknown): unknown {
  const document = structuredClone(project);
  const holder = path.slice(0, -1).reduce((at: unknown, key) => Reflect.get(at as object, key), document);
  if (replacement === undefined) Reflect.deleteProperty(holder as object, path.at(-1)!);
  else Reflect.set(holder as object, path.at(-1)!, replacement);
  return document;
}

const rubbish = fc.oneof(
  fc.jsonValue(),
  fc.constantFrom(undefined, null, -1, 0.5, 1e9, '', 'x', [], {}, 's99'),
);
const documents: fc.Arbitrary<unknown> = fc.oneof(
  fc.constantFrom(small, sewn, { ...small, version: 7 }, { ...small, version: undefined }, {}, [], null),
  fc.jsonValue(),
  fc
    .constantFrom(small, sewn)
    .chain((project) =>
      fc
        .tuple(fc.constantFrom(...PATHS.get(project)!), rubbish)
        .map(([path, by]) => damaged(project, path, by)),
    ),
);
const texts: fc.Arbitrary<string> = fc.oneof(
  documents.map((document) => JSON.stringify(document, null, 1)),
  fc
    .tuple(
      fc.constantFrom(writeProject(small), writeProject(sewn)),
      fc.double({ min: 0, max: 1, noNaN: true }),
    )
    .map(([text, share]) => text.slice(0, Math.floor(text.length * share))),
  fc.constantFrom('', ' \n', '\uFEFF', '<svg/>', '{', '{"a": 1,,}', `\uFEFF${writeProject(small)}`),
  fc.string({ unit: 'binary', maxLength: 40 }),
);
const files: fc.Arbitrary<Uint8Array<ArrayBuffer>> = fc.oneof(
  texts.map(utf8),
  texts.map((text) => utf8(`\uFEFF${text}`)),
  fc
    .tuple(texts, fc.boolean(), fc.boolean())
    .map(([text, mark, little]) => utf16(mark ? `\uFEFF${text}` : text, little)),
  texts.map((text) => Uint8Array.from(text, (sign) => sign.charCodeAt(0))),
  fc.uint8Array({ maxLength: 40 }).map((bytes) => Uint8Array.from(bytes)),
);

describe('a project from outside', () => {
  it('is opened or refused alike on the page and on the command line, whatever the bytes', async () => {
    await fc.assert(
      fc.asyncProperty(files, async (bytes) => {
        expect(await onTheCommandLine(bytes)).toEqual(await onThePage(bytes));
      }),
      { seed: 11, numRuns: runs(65, 400), examples: [[utf8('')], [utf8(`\uFEFF${writeProject(sewn)}`)]] },
    );
  });

  it('is opened or refused alike out of the storage, in the same sentences', async () => {
    await fc.assert(
      fc.asyncProperty(documents, async (document) => {
        const text = JSON.stringify(document);
        const wanted = await onThePage(utf8(text));
        expect(await fromStorage(JSON.parse(text))).toEqual(wanted);
        expect(said(openProject(text))).toEqual(wanted);
      }),
      { seed: 12, numRuns: runs(78, 400) },
    );
  });
});

const wrong = (text: string) => said(openProject(text));

describe('opening a project', () => {
  it('gives the project that was written, with or without a byte-order mark', async () => {
    for (const text of [writeProject(small), `\uFEFF${writeProject(small)}`]) {
      expect(openProject(text)).toEqual({ ok: true, value: small, pictures: new Map(), remarks: [] });
      expect(await openFile(new Blob([text]))).toEqual({
        ok: true,
        value: small,
        pictures: new Map(),
        remarks: [],
      });
      expect(await onTheCommandLine(utf8(text))).toEqual([]);
    }
  });

  it('does not open a file that is too large to be a project', async () => {
    const arrayBuffer = () => Promise.reject(new Error('was opened'));
    expect(said(await openFile({ size: (MOST_MEGABYTES + 0.5) * 1024 ** 2, arrayBuffer }))).toEqual([
      'The file is 81 MB; a quilt file is at most 80 MB. Was another file chosen by mistake?',
    ]);
  });

  it('says so when the file cannot be read any more', async () => {
    const gone = await openFile({ size: 9, arrayBuffer: () => Promise.reject(new Error('not found')) });
    expect(said(gone)).toEqual([
      'The file could not be read (not found). It may have been moved or renamed.',
    ]);
  });

  it('asks for UTF-8 where a file is in another encoding', async () => {
    const text = writeProject(small);
    const latin = Uint8Array.from(JSON.stringify({ ...small, name: 'Größe' }), (sign) => sign.charCodeAt(0));
    const files = [
      utf16(`\uFEFF${text}`, true),
      utf16(`\uFEFF${text}`, false),
      utf16('{}', true),
      utf16('{}', false),
      latin,
    ];
    for (const bytes of files) {
      expect(await onThePage(bytes)).toEqual([
        'The file is not written in UTF-8, as quilt files are. Save it as UTF-8 where it was changed, or try an earlier copy.',
      ]);
    }
  });

  it.each([
    ['', 'The file is empty.'],
    [
      '<svg/>',
      'This is not a quilt file: it does not begin with a brace. Was another file chosen by mistake?',
    ],
  ])('tells a file of another kind (%j) apart', (text, expected) => {
    expect(wrong(text)).toEqual([expected]);
  });

  it('names the line a file breaks at', () => {
    const [said] = wrong('{\n "format": "wedgewall-project",\n "version": 1,,\n}');
    expect(said).toMatch(
      /^line 3: It cannot be read from line 3, character 15 on: the name of an entry should/,
    );
  });

  it('says so when a file breaks off before its end', async () => {
    expect(wrong(writeProject(small).slice(0, 300))[0]).toMatch(/breaks off/);
  });

  it('refuses readable JSON that is no project', async () => {
    expect(wrong('{"format": "letter"}')[0]).toMatch(/not a Wedgewall quilt file/);
  });

  // biome-ignore format: a table
  const damages: [string, (project: Project & Record<string, unknown>) => void, string][] = [
    ['a length out of range', (one) => { one.wedge.cutHeight = 500; },
      'wedge.cutHeight: At wedge, cut height: must be at most 40 in. Found: 500.'],
    ['words for a number', (one) => { Object.assign(one.wedge, { seam: 'quarter' }); },
      'wedge.seam: At wedge, seam allowance: should be a number. Found: "quarter".'],
    ['too many rows', (one) => { one.wall.rows = 100; },
      'wall.rows: At wall, rows: must be at most 40. Found: 100.'],
    ['a broken colour', (one) => { one.fabrics[0]!.colour = 'red'; },
      'fabrics[0].colour: At fabric Background, colour: a colour is written #rrggbb. Found: "red".'],
    ['a turn too far', (one) => { one.wall.cells[3] = { block: 'b1', turn: 7, pinned: false }; },
      'wall.cells[3].turn: At wall, row 2, column 2, turn: must be at most 3. Found: 7.'],
    ['an unknown choice', (one) => { Object.assign(one.preferences, { unit: 'mm' }); },
      'preferences.unit: At preferences, unit of length: should be "in" or "cm". Found: "mm".'],
    ['an entry that is missing', (one) => { Reflect.deleteProperty(one, 'name'); },
      'name: At name: missing.'],
    ['an entry nobody knows', (one) => { Object.assign(one, { constructor: { deep: 1 } }); },
      'constructor: At entry "constructor": Wedgewall does not know this entry.'],
    ['a list that is none', (one) => { Object.assign(one, { blocks: 'six' }); },
      'blocks: At blocks: should be a list. Found: "six".'],
    ['a border of a fabric that is not there', (one) => { one.setting.borders = [{ fabric: 'f9', width: 3 }]; },
      'setting.borders[0].fabric: At setting, border 1 from the inside, fabric: There is no fabric with the id f9.'],
    ['a strip of no use', (one) => { one.stripsOnHand = [{ id: 'h1', fabric: 'f1', width: 0.5, length: 40, count: 2 }]; },
      'stripsOnHand[0].width: At strips on hand, row 1, width: A strip cut 1/2" wide vanishes in its two seams; it must be wider than 1/2".'],
  ];
  it.each(damages)('names the place and the reason of %s', async (_what, damage, expected) => {
    const damaged = structuredClone(small) as Project & Record<string, unknown>;
    damage(damaged);
    expect(wrong(JSON.stringify(damaged))).toEqual([expected]);
  });

  it('calls blocks and strip sets by their number and letter, or by their position when these are broken', async () => {
    const damaged = {
      ...small,
      stripSets: [{ label: 'C' }, { label: null }],
      blocks: [{ kind: 'pieced', number: 12, places: [{ set: '', tip: 'up' }] }],
    };
    const said = wrong(JSON.stringify(damaged)).join('\n');
    expect(said).toContain('At strip set C, id: missing.');
    expect(said).toContain('At strip set 2 in the list, letter: should be text. Found: null.');
    expect(said).toContain('At block 12, place 1, strip set: an id cannot be empty. Found: "".');
  });

  it('has an answer for every document with one entry replaced by rubbish', () => {
    fc.assert(
      fc.property(fc.constantFrom(...PATHS.get(small)!), rubbish, (path, replacement) => {
        const opened = openProject(JSON.stringify(damaged(small, path, replacement)));
        if (opened.ok) return;
        for (const problem of opened.problems) {
          expect(problem.message.say).not.toBe('{reason}');
          expect(speak(problem.message)).not.toMatch(/\{\w+\}|undefined|\[object/);
        }
      }),
      { seed: 7, numRuns: runs(75, 300) },
    );
  });
});
