// Gives components the balance of a project. A worker computes it; meanwhile the balance before it is shown.
import { useEffect, useState, useSyncExternalStore } from 'react';
import type { Phrase } from '../model/phrase';
import type { Project } from '../model/project';
import { type Balance, knownBalance } from '../store/analysis/analysis';
import { useSession } from './session';

export interface ShownBalance {
  /** The balance of the project, or of the state before it while the new one is computed; null while none is known. */
  readonly balance: Balance | null;
  /** Whether the balance is being computed. */
  readonly pending: boolean;
  /** Why the balance could not be computed; null unless that failed. */
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
