// What is said of a broken document comes from the schema's issue, not from the library's English: in whatever language the
// library speaks, the words are the same and ours.
import fc from 'fast-check';
import * as v from 'valibot';
import { afterEach, expect, it } from 'vitest';
import { speak } from '../../../src/model/phrase';
import { readDocument } from '../../../src/model/reading/read';
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
    { numRuns: 500, seed: 4193 },
  );
  expect(kinds.size).toBeGreaterThanOrEqual(6);
});
