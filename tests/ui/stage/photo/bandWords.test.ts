// How sure a reading is, in words: every band and every turn with its figure; what a person has said has none.
import { expect, it } from 'vitest';
import { speak } from '../../../../src/model/phrase';
import { bandWords, knownWords, sureWords } from '../../../../src/ui/stage/photo/bandWords';
import { scrappyTop } from '../../../balance/tops';

const project = scrappyTop({ rows: 2, columns: 2, seed: 1 });
const { id: fabric, name } = project.fabrics[0]!;
const band = (sure: number, of: string | null = fabric) => ({ fabric: of, width: 1, sure });

it.each([
  [band(0.97), '97% sure'],
  [band(0.9996), '99% sure'],
  [band(0.6), 'doubtful, 60%'],
  [band(0.95, null), 'doubtful, 95%'],
] as const)('a band that was read: %j is %s', (read, words) => {
  expect(speak(sureWords(read)!)).toBe(words);
});

it('what a person has said has no figure', () => {
  expect(sureWords(band(1))).toBeNull();
  expect(speak(bandWords(project, 1, 0, band(1)))).toBe(`Place 2, rim: ${name}`);
  expect(speak(bandWords(project, 1, 1, band(0.5)))).toBe(`Place 2, strip 2: ${name}, doubtful, 50%`);
});

it('a block that was recognised is told with its turn and how sure that is', () => {
  const known = { number: 7, quarters: 1, sure: 0.999 };
  expect(speak(knownWords({ known })!)).toBe('This looks like block 7, turned once (99% sure)');
  expect(knownWords({ known: null })).toBeNull();
});
