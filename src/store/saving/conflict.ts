// What becomes of a quilt that two windows have changed, once the person has chosen.
import { type History, record } from '../../editing/history';
import { wholeChange } from '../../editing/wholeChange';
import { phrase } from '../../model/phrase';
import type { Project } from '../../model/project';
import { ok, type Result } from '../../model/result';
import { type AppStore, documentOf } from '../app';
import type { Loaded, StoredProject } from '../storage/storage';

/** The state that the quilt has from now on. */
export interface TakenState {
  /** What it is saved over; null where the quilt is saved anew. */
  readonly over: StoredProject | null;
  readonly project: Project;
  readonly history: History;
}

/**
 * The state of this window or that of the other, as the storage has it, with the one not taken a step back. A quilt that is gone from the
 * storage is this window's; one that cannot be read stays as it is, and the problems are returned.
 */
export function stateTaken(which: 'this' | 'other', app: AppStore, other: Loaded): Result<TakenState> {
  const mine = documentOf(app.getState());
  const { history } = app.getState();
  const gone = !other.ok && other.problems[0]?.code === 'no-such-project';
  if (!other.ok) return which === 'this' && gone ? ok({ over: null, project: mine, history }) : other;
  const { project } = other.value;
  const [from, to, steps] =
    which === 'this' ? [project, mine, other.value.history] : [mine, project, history];
  const label = which === 'this' ? 'Take the state of this window' : 'Take the state of the other window';
  const change = wholeChange(from, to, phrase(label));
  return ok({ over: other.value, project: to, history: record(steps, change) });
}
