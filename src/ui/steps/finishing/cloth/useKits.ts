// The kits of the open quilt, for the panel and the kit on the large area, which ask for the same ones.
import { useDeferredValue, useMemo } from 'react';
import { type Kits, kits } from '../../../../cutting/kits/kits';
import type { Project } from '../../../../model/project';
import { useApp } from '../../../app';

/** The kits made last. */
let last: { project: Project; made: Kits } | null = null;

function madeOnce(project: Project): Kits {
  if (last?.project !== project) last = { project, made: kits(project) };
  return last.made;
}

/** The kits, and the state of the quilt they are of. */
export function useKits(): { project: Project; made: Kits } {
  const project = useDeferredValue(useApp((app) => app.project));
  return { project, made: useMemo(() => madeOnce(project), [project]) };
}
