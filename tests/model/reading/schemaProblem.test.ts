// What is said of a broken document comes from the schema's issue, not from the library's English: in whatever language the
// library speaks, the words are the same and ours.
import fc from 'fast-check';
import * as v from 'valibot';
import { afterEach, expect, it } from 'vitest';
import { createProject } from '../../../src/model/create';
import { speak } from '../../../src/model/phrase';
import { projectSchema } from '../../../src/model/project';
import { readDocument } from '../../../src/model/reading/read';
import { runs } from '../../runs';
import { documents } from '../schemaWalk';

afterEach(() => v.deleteGlobalMessage());

type Container = Record<string, unknown>;

/** Every list and group of entries in a document, itself first. */
function containers(document: unknown): Container[] {
  if (typeof document !== 'object' || document === null) return [];
  return [document as Container, ...Object.values(document).flatMap(containers)];
}

/** Documents with one entry replaced, taken out or put in. */
const broken = fc
  .tuple(
    documents(['cloth-1', 'cloth-2']),
    fc.nat(),
    fc.nat(),
    fc.constantFrom<unknown>(undefined, null, -1, 1e9, 0.5, '', 'x'.repeat(30_000), true, [], {}, [1], { kind: 'other' }),
  )
  .map(([document, place, entry, rubbish]) => {
    const all = containers(document);
    const holder = all[place % all.length]!;
    const keys = [...Object.keys(holder), 'beside'];
    holder[keys[entry % keys.length]!] = rubbish;
    return JSON.parse(JSON.stringify(document)) as unknown;
  }); // biome-ignore format: short

function said(document: unknown): string[] {
  const read = readDocument(document);
  if (read.ok) return [];
  return read.problems.map((one) => speak(one.message));
}

it('is the same in whatever language the library speaks, and says what is wanted', () => {
  const kinds = new Set<string>();
  fc.assert(
    fc.property(broken, (document) => {
      const before = said(document);
      v.setGlobalMessage((issue) => `Falsch: ${issue.received}`);
      const after = said(document);
      v.deleteGlobalMessage();
      expect(after).toEqual(before);
      for (const words of before) {
        expect(words).not.toMatch(/Invalid|Expected|received|NaN|undefined|Object|should be (\.|$)|[{}]/);
        kinds.add(/missing|know this entry|should be|must be|at least|at most/.exec(words)?.[0] ?? '');
      }
    }),
    { numRuns: runs(100, 500), seed: 4193 },
  );
  expect(kinds.size).toBeGreaterThanOrEqual(6);
});

it('stays a sentence of 200 letters at most, however long the keys and values of the file are', () => {
  const long = 'y'.repeat(5_000);
  const grown = fc
    .tuple(documents(['cloth-1', 'cloth-2']), fc.nat(), fc.nat(), fc.constantFrom<unknown>(long, [long], { [long]: 1 }))
    .map(([document, place, entry, rubbish]) => {
      const all = containers(document);
      for (const named of all) if ('name' in named) named.name = long;
      const holder = all[place % all.length]!;
      const keys = [...Object.keys(holder), long];
      holder[keys[entry % keys.length]!] = rubbish;
      return JSON.parse(JSON.stringify(document)) as unknown;
    }); // biome-ignore format: short
  fc.assert(
    fc.property(grown, (document) => {
      const read = readDocument(document);
      expect(read.ok).toBe(false);
      for (const { path, message } of read.ok ? [] : read.problems) {
        expect(speak(message).length).toBeLessThanOrEqual(200);
        expect(path.length).toBeLessThanOrEqual(200);
      }
    }),
    { numRuns: runs(60, 300), seed: 771 },
  );
});

it('of a list that is too long says so before it looks at any item', () => {
  const lists: [string, (document: Container, list: unknown[]) => void][] = [
    ['wall.cells', (document, list) => Object.assign(document.wall as Container, { cells: list })],
    ['blocks', (document, list) => Object.assign(document, { blocks: list })],
    ['fabrics', (document, list) => Object.assign(document, { fabrics: list })],
    ['stripsOnHand', (document, list) => Object.assign(document, { stripsOnHand: list })],
  ];
  for (const [path, put] of lists) {
    const spoilt = structuredClone(createProject('p', 'Harbour')) as unknown as Container;
    const items = Array.from({ length: 20_000 }, () => ({ block: 1 }));
    let touched = 0;
    put(spoilt, new Proxy(items, {
      get: (list, key) => {
        const item = Reflect.get(list, key) as unknown;
        return typeof item === 'object' ? new Proxy(item as object, { get: () => (touched += 1) }) : item;
      },
    })); // biome-ignore format: short
    const parsed = v.safeParse(projectSchema, spoilt, { message: '' });
    expect(parsed.issues?.map((issue) => issue.type).filter((type) => type === 'max_length')).toHaveLength(1);
    expect([path, touched]).toEqual([path, 0]);
  }
});

it('of a number too large to be held tells no other value', () => {
  const document = JSON.parse(JSON.stringify(createProject('p', 'Quilt'))) as {
    wedge: { cutHeight: number };
  };
  document.wedge.cutHeight = JSON.parse('1e400') as number;
  expect(said(document)[0]).toBe(
    'At wedge, cut height: must be a number one can measure. Found: a number too large to read.',
  );
  document.wedge.cutHeight = 50;
  expect(said(document)).toEqual(['At wedge, cut height: must be at most 40 in. Found: 50.']);
});

it('calls an entry nobody knows by its own name', () => {
  expect(said({ ...createProject('p', 'Harbour'), extra: 1 })).toEqual([
    'At entry "extra": Wedgewall does not know this entry.',
  ]);
});
