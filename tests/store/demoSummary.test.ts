// What the list of examples says of each is what the example holds.
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { speak } from '../../src/model/phrase';
import { demoSummaries } from '../../src/store/demoSummary';

const demo = (name: string) => ({
  name,
  text: () => Promise.resolve(readFileSync(new URL(`../../demo-data/${name}.json`, import.meta.url), 'utf8')),
});

test('an example is listed by its own name with its blocks and size, or its cloth where nothing is sewn', async () => {
  const [harbour, kiln] = await demoSummaries([demo('harbour-reading-corner'), demo('kiln-shed')]);
  expect(harbour!.name).toBe('Harbour library, reading corner');
  expect(speak(harbour!.words!)).toBe('6 blocks, 28" × 42"');
  expect(speak(harbour!.words!, 'cm')).toBe('6 blocks, 71.1 cm × 106.7 cm');
  expect(speak(kiln!.words!)).toMatch(/^14 fabrics, \d+ strips; nothing is sewn yet$/);
});

test('an example that cannot be fetched keeps its file’s name, and the others are listed all the same', async () => {
  const gone = { name: 'Gone', text: () => Promise.reject(new Error('offline')) };
  const listed = await demoSummaries([gone, demo('kiln-shed')]);
  expect(listed.map((one) => one.words === null)).toEqual([true, false]);
  expect(listed[0]!.name).toBe('Gone');
});
