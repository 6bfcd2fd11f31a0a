// Keys: every row of the list is asked for by a handler, and no two rows of a part mean the same key.
import { expect, test } from 'vitest';
import { isKey, KEY_PARTS, KEYS } from '../../src/ui/keys';
import { filesUnder, textOf } from '../srcFiles';

const none = { ctrlKey: false, metaKey: false, altKey: false };

test('every row of the list of keys is heard by a handler, or read where letters are entered', () => {
  const code = filesUnder('src/ui').map(textOf).join('\n');
  const unheard = Object.entries(KEYS)
    .filter(([name, { keys }]) => keys.length > 0 && !code.includes(`isKey(event, '${name}')`))
    .map(([name]) => name);
  expect(unheard).toEqual([]);
});

test('in one part a key has one meaning', () => {
  for (const { title, rows } of KEY_PARTS) {
    const heard = Object.values(rows).flatMap((row) => row.keys.map((key) => `${row.with ?? ''} ${key}`));
    expect(heard, title).toEqual([...new Set(heard)]);
  }
});

test('a row hears its key with the modifier it names, and no other', () => {
  expect(isKey({ ...none, key: 'R' }, 'turn')).toBe(true);
  expect(isKey({ ...none, key: 'r', ctrlKey: true }, 'turn')).toBe(false);
  expect(isKey({ ...none, key: 'z', metaKey: true }, 'undo')).toBe(true);
  expect(isKey({ ...none, key: 'z' }, 'undo')).toBe(false);
  expect(isKey({ ...none, key: 'ArrowUp', altKey: true }, 'stripUp')).toBe(true);
  expect(isKey({ ...none, key: 'ArrowUp', altKey: true }, 'stripWalk')).toBe(false);
});
