// Every label of a command has its words for when it is done.
import { expect, test } from 'vitest';
import { doneWords } from '../../src/editing/doneWords';
import { phrase, speak } from '../../src/model/phrase';
import { filesUnder, textOf } from '../srcFiles';

/** Sentences in the commands that begin small and are parts of other sentences, no labels. */
const PARTS = /^(it|moving|putting|sewing|trading|as|no|s|score) /;

test('a label becomes the past tense of its verb', () => {
  const words = (say: string, values = {}) => speak(doneWords(phrase(say, values)));
  expect(words('turn block {block}', { block: 4 })).toBe('Turned block 4');
  expect(words('unpin block {block}', { block: 2 })).toBe('Unpinned block 2');
  expect(
    words('{lay}, {cut}', { lay: phrase('lay 1 strip set'), cut: phrase('cut 1 strip from the cloth') }),
  ).toBe('Laid 1 strip set. Cut 1 strip from the cloth');
  expect(
    words('{change}', { change: phrase('swap blocks {first} and {second}', { first: 1, second: 2 }) }),
  ).toBe('Swapped blocks 1 and 2');
  const mends = { first: phrase('Turn block 4'), next: phrase('Swap blocks 1 and 2') };
  expect(words('{change}', { change: phrase('{first}. {next}', mends) })).toBe(
    'Turned block 4. Swapped blocks 1 and 2',
  );
  expect(words('fly')).toBe('Done: fly');
});

test('the verbs of all labels are known', () => {
  const labels = filesUnder('src/editing')
    .flatMap((file) => [...textOf(file).matchAll(/'([a-z]+ [^'\n]*)'/g)])
    .map((found) => found[1]!)
    .filter((say) => !PARTS.test(say));
  expect(labels.length).toBeGreaterThan(80);
  expect(labels.filter((say) => doneWords(phrase(say)).say.startsWith('Done: '))).toEqual([]);
});
