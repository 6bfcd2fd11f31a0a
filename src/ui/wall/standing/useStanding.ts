// How the wall stands, and how it would stand if the hand let go now or the preview were accepted. A worker works it out, once for
// each cell that the hand enters.
import { useEffect, useMemo, useRef, useState } from 'react';
import { weightsOf } from '../../../balance/score/wishes';
import type { Standing } from '../../../balance/standing';
import { apply } from '../../../editing/apply';
import { type Move, moved } from '../../../model/moves';
import { phrase } from '../../../model/phrase';
import type { Project } from '../../../model/project';
import { hangsAlike, rowAndColumn } from '../../../model/wallCells';
import type { Balance } from '../../../store/analysis/analysis';
import type { Preview } from '../../../store/app';
import { useAppStore } from '../../app';
import { useSession } from '../../session';
import { useAnalysis } from '../../useAnalysis';
import { ended, type Gesture } from '../hands/gesture';
import { commandOf } from '../hands/useGestures';
import { wouldWords } from './standingWords';

/** A change that is tried and what came of it. */
interface Tried {
  readonly of: Project;
  readonly moves: readonly Move[];
  readonly after: Standing;
}

export interface ShownStanding {
  /** Null while it is not known, and while nothing hangs. */
  readonly now: Standing | null;
  /** Null where nothing is tried. */
  readonly after: Standing | null;
}

/** How a project stands, and how it would with what the hand or the preview would do. */
export function useStanding(
  project: Project,
  preview: Preview | null,
  gesture: Gesture | null,
): ShownStanding {
  const { balance, pending } = useAnalysis(project);
  const seen = useAnalysis(preview?.project ?? project).balance;
  const moves = useMoves(project, gesture);
  const tried = useTried(project, moves, gesture);
  if (!project.wall.cells.some((cell) => cell !== null)) return { now: null, after: null };
  // Between letting go and the analysis, what was tried is what there is.
  const done = pending && tried && sameHanging(moved(tried.of, tried.moves), project) ? tried.after : null;
  // That nothing clashed before says nothing of other blocks.
  const other = balance?.project.blocks !== project.blocks && balance?.clashes.length === 0;
  const now = done ?? (balance && !other ? standingOf(balance) : null);
  if (preview) {
    const after = seen?.project === preview.project ? standingOf(seen) : null;
    return { now, after };
  }
  const live = moves !== null && tried?.of === project && tried.moves === moves;
  return { now, after: live ? tried.after : null };
}

/** What letting go now would do; null where it would do nothing or be refused. The same list while the hand stays over a cell. */
function useMoves(project: Project, gesture: Gesture | null): readonly Move[] | null {
  const outcome = gesture && ended(gesture, project);
  const key = outcome && JSON.stringify(commandOf(outcome, project)?.moves ?? null);
  return useMemo(() => {
    const moves = key ? (JSON.parse(key) as readonly Move[] | null) : null;
    return moves && apply(project, { label: phrase(''), moves }).ok ? moves : null;
  }, [key, project]);
}

/** The last change that was tried. Carried by keys, it is told where the block is and what letting go would do, once for a cell. */
function useTried(project: Project, moves: readonly Move[] | null, gesture: Gesture | null): Tried | null {
  const store = useAppStore();
  const { analysing } = useSession();
  const { balance } = useAnalysis(project);
  const [tried, setTried] = useState<Tried | null>(null);
  const over = gesture?.kind === 'carry' && gesture.byKeys ? gesture.over : null;
  const now = balance?.project === project ? balance : null;
  const lastOver = useRef(over);
  useEffect(() => {
    let wanted = true;
    // That it was lifted has been told already, with the keys that carry it.
    const lifted = lastOver.current === null;
    lastOver.current = over;
    const tell = (after: Standing | null) => {
      if (over === null || lifted) return;
      const where = phrase('Over row {row}, column {column}', { ...rowAndColumn(over, project) });
      const would = now && after ? wouldWords(standingOf(now), after, weightsOf(project.preferences)) : null;
      store.getState().announce(would ? phrase('{where}: {would}', { where, would }) : where);
    };
    if (moves === null || now === null) {
      tell(null);
      return;
    }
    void analysing
      .standing(project, moves, () => wanted)
      .then((after) => {
        if (!wanted) return;
        if (after) setTried({ of: project, moves, after });
        tell(after);
      });
    return () => {
      wanted = false;
    };
  }, [analysing, store, project, now, moves, over]);
  return tried;
}

function standingOf({ clashes, terms }: Balance): Standing {
  return { clashes: clashes.length, terms };
}

function sameHanging(one: Project, other: Project): boolean {
  const [cells, others] = [one.wall.cells, other.wall.cells];
  return (
    one.blocks === other.blocks &&
    cells.length === others.length &&
    cells.every((cell, at) => hangsAlike(cell, others[at]))
  );
}
