// Keeps the page responsive while a large wall is drawn: a whole new wall is drawn between other work, and its blocks come in parts
// (parts.ts), each after the one before has been painted, so that neither drawing nor painting holds the page up.
import { startTransition, useDeferredValue, useEffect, useState } from 'react';
import type { HungBlock } from '../../../drawing/drawing';
import { isWholeNewWall } from '../../../drawing/wholeNewWall';
import type { Project } from '../../../model/project';
import { begun, isWhole, shownOf, withBlocks, withNextPart } from './parts';

/** The project to draw: what the hand changes at once; another quilt or a whole new order a moment later, when it is drawn. */
export function useDrawable(project: Project): Project {
  const late = useDeferredValue(project);
  return isWholeNewWall(late, project) ? late : project;
}

/** The blocks of a wall as they are drawn by now; of a new quilt `first` at once. */
export function useParts(blocks: readonly HungBlock[], quilt: string, first: number): readonly HungBlock[] {
  const [drawn, setDrawn] = useState(() => begun(quilt, blocks, first));
  const now = withBlocks(drawn, quilt, blocks, first);
  if (now !== drawn) setDrawn(now);
  useEffect(() => {
    if (isWhole(now)) return;
    return whenPainted(() => startTransition(() => setDrawn(withNextPart)));
  }, [now]);
  return shownOf(now);
}

/** Calls back once the page as it is now has been painted; returns what calls it off. */
export function whenPainted(then: () => void): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const frame = requestAnimationFrame(() => {
    timer = setTimeout(then);
  });
  return () => {
    cancelAnimationFrame(frame);
    clearTimeout(timer);
  };
}
