// The yardage of the open quilt, for the panel and the cloth on the large area, which ask for the same one.
import { useDeferredValue, useMemo } from 'react';
import type { CuttingScope } from '../../../../cutting/yardage/setStrips';
import { type Yardage, yardage } from '../../../../cutting/yardage/yardage';
import type { Project } from '../../../../model/project';
import { useApp } from '../../../app';

/** The list made last. */
let last: { project: Project; scope: CuttingScope; list: Yardage } | null = null;

function madeOnce(project: Project, scope: CuttingScope): Yardage {
  if (last?.project !== project || last.scope !== scope)
    last = { project, scope, list: yardage(project, scope) };
  return last.list;
}

/** The yardage of what the cutting list is for, and the state of the quilt it is of. */
export function useYardage(): { project: Project; list: Yardage } {
  const project = useDeferredValue(useApp((app) => app.project));
  const scope = useApp((app) => app.laid.scope);
  const list = useMemo(() => madeOnce(project, scope), [project, scope]);
  return { project, list };
}
