// Keeps the page responsive while a large wall is drawn: a whole new wall is drawn between other work, and its blocks come in parts, so
// that neither drawing nor painting holds the page up.
import { startTransition, useDeferredValue, useEffect, useState } from 'react';
import { isWholeNewWall } from '../../drawing/wholeNewWall';
import type { Project } from '../../model/project';

/** Blocks of which what is pressed is drawn and painted at once, and of which the cloth is. */
export const PART = { pressed: 60, cloth: 100 };

/** The project to draw: what the hand changes at once; another quilt or a whole new order a moment later, when it is drawn. */
export function useDrawable(project: Project): Project {
  const late = useDeferredValue(project);
  return isWholeNewWall(late, project) ? late : project;
}

/** Those of many things of a quilt that are drawn by now: by so many when the quilt is new, then all. */
export function useGrowing<T>(things: readonly T[], quilt: string, part: number): readonly T[] {
  const [drawn, setDrawn] = useState({ quilt, count: part });
  const now = drawn.quilt === quilt ? drawn : { quilt, count: part };
  if (now !== drawn) setDrawn(now);
  const { count } = now;
  const more = count < things.length;
  useEffect(() => {
    if (count === Number.POSITIVE_INFINITY) return;
    // After the page has painted what there is.
    const next = more ? count + part : Number.POSITIVE_INFINITY;
    startTransition(() => setDrawn({ quilt, count: next }));
  }, [quilt, count, more, part]);
  return more ? things.slice(0, count) : things;
}
