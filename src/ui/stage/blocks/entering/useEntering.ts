// The blocks that are being entered, as they stand: kept in the store, so that nothing typed is lost on the way to another step and back.
import { useCallback, useMemo } from 'react';
import { type EnteredBlock, supplyOf, withCounts } from '../../../../editing/entering/enterBlocks';
import { type Entry, emptyEntry, entryOf, markAt } from '../../../../editing/entering/entry';
import { findBlock, freshNumber } from '../../../../model/find';
import { whyPlacesLocked } from '../../../../model/freedom';
import type { Block, Project } from '../../../../model/project';
import type { EnteringValues } from '../../../../store/drafts';
import { useApp, useAppStore } from '../../../app';

/** A handful of sets of five strips in eight fabrics is usual in a scrappy top (common practice, no source). */
const NOTHING: EnteringValues = {
  entry: null,
  progress: 'octagon',
  counts: [],
  text: '',
  standing: { sets: 5, strips: 5, fabrics: 8 },
};

/** What is entered, and a function that changes parts of it. */
export function useEntering(): [EnteringValues, (part: Partial<EnteringValues>) => void] {
  const store = useAppStore();
  const values = useApp((app) => app.drafts.entering?.values);
  const change = useCallback(
    (part: Partial<EnteringValues>) => {
      const { drafts, keepDraft } = store.getState();
      keepDraft('entering', { open: true, values: { ...NOTHING, ...drafts.entering?.values, ...part } });
    },
    [store],
  );
  const known = useMemo(() => ({ ...NOTHING, ...values }), [values]);
  return [known, change];
}

/** The block that is entered next: the one it was opened for, else the first planned one that is empty; null for a new one. */
function nextBlock(project: Project, into: string | null): Block | null {
  const opened = into === null ? undefined : findBlock(project, into);
  if (opened && whyPlacesLocked(opened) === null) return opened;
  return (
    project.blocks
      .filter(({ progress, places }) => progress === 'planned' && places.every((wedge) => wedge === null))
      .sort((one, other) => one.number - other.number)[0] ?? null
  );
}

/** The block at hand: what it goes into, its number, what is entered, and where its wedges come from. */
export function useBlockAtHand() {
  const project = useApp((app) => app.project);
  const into = useApp((app) => app.laid.into);
  const [{ entry: kept, progress, counts }] = useEntering();
  const target = useMemo(() => nextBlock(project, into), [project, into]);
  const entry = useMemo(() => sound(kept, project) ?? begun(project, target), [kept, project, target]);
  const entered = useMemo(
    (): EnteredBlock => ({
      block: target?.id ?? null,
      number: target ? null : freshNumber(project),
      places: entry.places,
      progress,
    }),
    [project, target, entry.places, progress],
  );
  const supply = useMemo(() => supplyOf(withCounts(project, counts), [entered]), [project, counts, entered]);
  return { target, number: target?.number ?? freshNumber(project), entry, entered, supply };
}

function begun(project: Project, target: Block | null): Entry {
  if (!target) return emptyEntry(project.wedge.perBlock);
  // A block that is filled as planned is entered over, from its first place.
  return target.places.includes(null) ? entryOf(target.places) : markAt(entryOf(target.places), 0);
}

/** The entry as it was kept, without wedges of sets that are gone; null where the wedges to the block have changed. */
function sound(entry: Entry | null, project: Project): Entry | null {
  if (entry?.places.length !== project.wedge.perBlock) return null;
  const sets = new Set(project.stripSets.map(({ id }) => id));
  if (entry.places.every((wedge) => wedge === null || sets.has(wedge.set))) return entry;
  return entryOf(entry.places.map((wedge) => (wedge && sets.has(wedge.set) ? wedge : null)));
}
