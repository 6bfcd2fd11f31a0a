// What the line under the bar tells: the most urgent of what is known of saving.
import { type Phrase, phrase } from '../../../model/phrase';
import type { SessionState } from '../../../store/saving/sessionState';

export interface Notice {
  readonly kind: 'problem' | 'removed' | 'conflict' | 'told' | 'room' | 'week';
  /** The same for as long as the same is told. */
  readonly key: string;
  readonly words: readonly Phrase[];
  /** The hint that is put away for good when the line is closed. */
  readonly hint?: string;
}

const WEEK =
  'Safari removes what is saved here after seven days of use without a visit. Add Wedgewall to the home screen or the Dock, or save your quilts to files.';
const CONFLICT =
  'Another window has changed "{name}" too. Nothing is lost: yours is saved as a copy until you choose one.';
const ROOM = 'The browser has room for about {size} MB more. Save to a file what must not be lost.';

/** The notice for a state of the session; null where there is nothing to tell. `isAway` says whether a hint was put away. */
export function noticeOf(
  state: SessionState,
  name: string,
  isAway: (hint: string) => boolean,
): Notice | null {
  const { problem, conflict, toTell, lasting } = state;
  if (problem) {
    const removed = problem.code === 'removed-elsewhere';
    return { kind: removed ? 'removed' : 'problem', key: problem.code, words: [NOT_SAVED, problem.message] };
  }
  if (conflict) return { kind: 'conflict', key: conflict.copy, words: [phrase(CONFLICT, { name })] };
  if (toTell.length > 0) return { kind: 'told', key: `told ${toTell.length}`, words: toTell };
  if (!lasting) return null;
  if (lasting.room !== null) {
    const size = Math.floor(lasting.room / 1024 / 1024);
    return { kind: 'room', key: 'room', words: [phrase(ROOM, { size })] };
  }
  if (!lasting.removed || isAway('week')) return null;
  return { kind: 'week', key: 'week', words: [phrase(WEEK)], hint: 'week' };
}

const NOT_SAVED = phrase('Not saved.');
