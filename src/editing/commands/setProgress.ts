// The command on the progress of strip sets (planned, sewn, cut), for one set or many at once.
import { heightShort, setHeight } from '../../geometry/stripSet';
import { findSet } from '../../model/find';
import { counted, phrase } from '../../model/phrase';
import type { Project, StripSet, StripSetId } from '../../model/project';
import { type Command, Refusal } from '../apply';

/**
 * Marks sets as planned, sewn or cut. Refused where a set without strips would be sewn, a set that is too low would be cut, or
 * a set with wedges in a sewn block would no longer be cut.
 */
export function markSets(ids: readonly StripSetId[], progress: StripSet['progress']): Command {
  return {
    label: counted(
      ids.length,
      'update the progress of a strip set',
      'update the progress of {count} strip sets',
    ),
    change: (draft) => {
      for (const id of ids) {
        const set = findSet(draft, id);
        if (!set) throw new Error(`markSets: no set ${id}`);
        if (set.progress === progress) continue;
        refuseEarly(draft, set, progress);
        refuseBack(draft, set, progress);
        set.progress = progress;
      }
    },
  };
}

function refuseEarly(draft: Project, set: StripSet, progress: StripSet['progress']): void {
  if (progress === 'planned') return;
  if (set.strips.length === 0) {
    const message = phrase('Set {set} has no strips yet.', { set: set.label });
    throw new Refusal('set-empty', 'stripSets', message);
  }
  const short = heightShort(setHeight(set.strips, draft.wedge.seam), draft.wedge);
  if (progress === 'cut' && short > 0) {
    const message = phrase('Set {set} is {short} short; no wedge can be cut from it.', {
      set: set.label,
      short: { atLeast: short },
    });
    throw new Refusal('set-short', 'stripSets', message);
  }
}

function refuseBack(draft: Project, set: StripSet, progress: StripSet['progress']): void {
  if (progress === 'cut') return;
  const sewn = draft.blocks.find(
    (block) => block.progress !== 'planned' && block.places.some((place) => place?.set === set.id),
  );
  if (!sewn) return;
  const message = phrase('Block {block} is sewn with wedges of set {set}, so the set is cut.', {
    block: sewn.number,
    set: set.label,
  });
  throw new Refusal('set-in-sewn-block', 'stripSets', message);
}
