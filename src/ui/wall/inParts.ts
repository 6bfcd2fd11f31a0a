// Keeps the page responsive while a large wall is drawn: a whole new wall is drawn between other work, and its blocks come in parts, so
// that neither drawing nor painting holds the page up.
import { startTransition, useDeferredValue, useEffect, useState } from 'react';
import { isWholeNewWall } from '../../drawing/wholeNewWall';
import type { Project } from '../../model/project';

/** Blocks that are drawn and painted at once. */
const PART = 60;

/** The project to draw: what the hand changes at once; another quilt or a whole new order a moment later, when it is drawn. */
export function useDrawable(project: Project): Project {
  const late = useDeferredValue(project);
  return isWholeNewWall(late, project) ? late : project;
}

/** Those of many things of a quilt that are drawn by now: part by part when the quilt is new, then all. */
export function useGrowing<T>(things: readonly T[], quilt: string): readonly T[] {
  const [drawn, setDrawn] = useState({ quilt, count: PART });
  const now = drawn.quilt === quilt ? drawn : { quilt, count: PART };
  if (now !== drawn) setDrawn(now);
  const { count } = now;
  const more = count < things.length;
  useEffect(() => {
    if (count === Number.POSITIVE_INFINITY) return;
    // After the page has painted what there is.
    const next = more ? count + PART : Number.POSITIVE_INFINITY;
    startTransition(() => setDrawn({ quilt, count: next }));
  }, [quilt, count, more]);
  return more ? things.slice(0, count) : things;
}
