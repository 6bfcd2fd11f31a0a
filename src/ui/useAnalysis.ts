// The balance of the project as the screen shows it: worked out beside the page, the one before in its place meanwhile.
import { useEffect, useState, useSyncExternalStore } from 'react';
import type { Phrase } from '../model/phrase';
import type { Project } from '../model/project';
import { type Balance, knownBalance } from '../store/analysis/analysis';
import { useSession } from './session';

export interface ShownBalance {
  /** Of the project, or of its state before while that is worked out; null while nothing is known of this quilt. */
  readonly balance: Balance | null;
  /** Being worked out. */
  readonly pending: boolean;
  /** Why it could not be worked out; null unless it failed. */
  readonly reason: Phrase | null;
}

/** The balance of a project. */
export function useAnalysis(project: Project): ShownBalance {
  const { analysing } = useSession();
  const known = useSyncExternalStore(analysing.subscribe, () => knownBalance(project));
  const reason = useSyncExternalStore(analysing.subscribe, () => analysing.reason(project));
  useEffect(() => analysing.want(project), [analysing, project]);
  const [before, setBefore] = useState(known);
  if (known && known !== before) setBefore(known);
  const balance = known ?? (before?.project.id === project.id ? before : null);
  return { balance, pending: known === null && reason === null, reason };
}
