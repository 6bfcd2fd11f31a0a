// Whatever is wrong in a project file is told in sentences of 200 letters at most, none for more than 20 faults, in files mutated at random.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { openProject } from '../../src/editing/openProject';
import { speak } from '../../src/model/phrase';
import { demo } from '../demo';
import { runs } from '../runs';

const harbour = demo('harbour-reading-corner');
type Step = string | number;

/** Every place of a document, its groups too. */
function places(at: unknown, path: Step[] = []): Step[][] {
  if (typeof at !== 'object' || at === null) return [path];
  const inside = Object.entries(at).flatMap(([key, one]) =>
    places(one, [...path, Array.isArray(at) ? Number(key) : key]),
  );
  return path.length > 0 ? [path, ...inside] : inside;
}
const PLACES = places(harbour);

function put(document: unknown, path: readonly Step[], value: unknown): void {
  const holder = path
    .slice(0, -1)
    .reduce<unknown>((at, step) => (at as Record<Step, unknown>)?.[step], document);
  if (typeof holder === 'object' && holder !== null) Reflect.set(holder, path.at(-1)!, value);
}

const long = fc.constantFrom('x'.repeat(120), 'x'.repeat(5000), '🧵'.repeat(60), 'ab'.repeat(64), '', 'f1');
const value = fc.oneof(
  long,
  fc.double(),
  fc.integer(),
  fc.constantFrom(null, true, [], {}, [[]], -1, 1e308, 0),
);
const mutation = fc.record({ path: fc.constantFrom(...PLACES), value });
const extra = fc.record({
  path: fc.constantFrom(...PLACES),
  key: fc.constantFrom('k'.repeat(3000), 'extra'),
});

it('stays within 200 letters and 20 faults', () => {
  let refused = 0;
  fc.assert(
    fc.property(
      fc.array(mutation, { minLength: 1, maxLength: 4 }),
      fc.array(extra, { maxLength: 1 }),
      fc.nat(3),
      (changes, extras, cut) => {
        const document = structuredClone(harbour);
        for (const change of changes) put(document, change.path, change.value);
        for (const { path, key } of extras) put(document, [...path, key], 1);
        const text = JSON.stringify(document);
        const opened = openProject(cut === 3 ? text.slice(0, -1 - (text.length % 97)) : text);
        if (opened.ok) return;
        refused += 1;
        expect(opened.problems.length).toBeLessThanOrEqual(20);
        for (const { message, path } of opened.problems) {
          expect(speak(message).length, speak(message)).toBeLessThanOrEqual(200);
          expect(path.length).toBeLessThanOrEqual(200);
          expect(speak(message)).not.toMatch(/undefined|NaN|\[object/);
        }
      },
    ),
    { numRuns: runs(250, 1500), seed: 23 },
  );
  expect(refused).toBeGreaterThan(runs(120, 800));
});
