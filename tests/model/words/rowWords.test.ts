// Rows of a wall or a top in words.
import { describe, expect, it } from 'vitest';
import { speak } from '../../../src/model/phrase';
import { rowWords } from '../../../src/model/words/rowWords';
import { filesUnder, textOf } from '../../srcFiles';

describe('rows in words', () => {
  it('are one row or several', () => {
    expect(speak(rowWords({ rows: 1, columns: 4 }))).toBe('1 row of 4');
    expect(speak(rowWords({ rows: 3, columns: 1 }))).toBe('3 rows of 1');
  });

  it('are told here alone, so that nowhere there are 1 rows', () => {
    const elsewhere = filesUnder('src').filter(
      (path) => /\} rows of \{/.test(textOf(path)) && !path.endsWith('words/rowWords.ts'),
    );
    expect(elsewhere).toEqual([]);
  });
});
