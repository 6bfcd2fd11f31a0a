// The line under the bar tells the most urgent alone, in a sentence that is short, and nothing where all is well.
import { describe, expect, it } from 'vitest';
import { phrase, speak } from '../../../src/model/phrase';
import type { SessionState } from '../../../src/store/saving/sessionState';
import { storageProblem } from '../../../src/store/storage/storageProblem';
import { noticeOf } from '../../../src/ui/shell/notice/noticeOf';

const well: SessionState = {
  saving: 'saved',
  problem: null,
  projects: [],
  remarks: [],
  damaged: null,
  conflict: null,
  reading: null,
  toTell: [],
  lasting: null,
};
const removed = { code: 'removed-elsewhere', path: '', message: phrase('Removed.') };
const full = storageProblem(new DOMException('', 'QuotaExceededError'));
const all: SessionState = {
  ...well,
  problem: full,
  conflict: { copy: 'copy' },
  toTell: [phrase('What was left.')],
  lasting: { room: 3_500_000, removed: true },
};
const told = (state: SessionState, away = false) => {
  const notice = noticeOf(state, 'x'.repeat(120), () => away);
  return notice && { kind: notice.kind, words: notice.words.map((words) => speak(words)).join(' ') };
};

describe('the line under the bar', () => {
  it('is not there where all is well', () => {
    expect(told(well)).toBeNull();
  });

  it('tells what is not saved first, then two states, what was done, room, and the week', () => {
    const order: (string | undefined)[] = [];
    let state = all;
    for (const quiet of [
      { problem: null },
      { conflict: null },
      { toTell: [] },
      { lasting: { room: null, removed: true } },
      { lasting: null },
    ]) {
      order.push(told(state)?.kind);
      state = { ...state, ...quiet };
    }
    expect(order).toEqual(['problem', 'conflict', 'told', 'room', 'week']);
    expect(told(state)).toBeNull();
  });

  it('offers to save again what another window removed', () => {
    expect(told({ ...well, problem: removed })).toEqual({ kind: 'removed', words: 'Not saved. Removed.' });
  });

  it('says whole megabytes, rounded down', () => {
    expect(told({ ...well, lasting: { room: 3_500_000, removed: false } })?.words).toContain(
      'about 3 MB more',
    );
  });

  it('does not tell of the week again once it was put away', () => {
    const week = { ...well, lasting: { room: null, removed: true } };
    expect(told(week)?.words).toContain('seven days');
    expect(told(week, true)).toBeNull();
  });

  it('stays under 400 letters with the longest name', () => {
    for (const state of [all, { ...all, problem: null }, { ...well, lasting: { room: 1, removed: true } }])
      expect(told(state)!.words.length).toBeLessThan(400);
  });
});
