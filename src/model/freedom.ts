// Which parts of a project may still change, given its progress and its pins. Commands, proposals and the arranger ask here.
import { cellOf } from './find';
import { type Phrase, phrase } from './phrase';
import type { Block, Project, Strip, StripSet, WedgePlan } from './project';

/** Why the wedges of a block may not be traded, or null when they may. */
export function whyPlacesLocked(block: Block): Phrase | null {
  return block.progress === 'planned'
    ? null
    : phrase('Block {block} is sewn; its wedges stay as they are.', { block: block.number });
}

/** Whether the corners of a block are sewn on. */
export function cornersOn({ progress }: Pick<Block, 'progress'>): boolean {
  return progress === 'squared' || progress === 'joined';
}

/** Why the corner shift of a block may not change, or null when it may. */
export function whyCornersLocked(project: Project, block: Block): Phrase | null {
  if (cornersOn(block)) {
    return phrase('Block {block} has its corners on; it turns by quarters only.', { block: block.number });
  }
  return whyPinLocks(project, block);
}

/** Why a block may not be turned or moved on the wall, or null when it may. */
export function whyHangingLocked(project: Project, block: Block): Phrase | null {
  if (block.progress === 'joined') {
    return phrase('Block {block} is sewn into its row; it stays where it is.', { block: block.number });
  }
  return whyPinLocks(project, block);
}

/** Why a block may not be turned on the wall, or null when it may. A block on the side table may not. */
export function whyTurnLocked(project: Project, block: Block): Phrase | null {
  if (cellOf(project, block.id)) return whyHangingLocked(project, block);
  return phrase('Block {block} waits on the side table; hang it before it is turned.', {
    block: block.number,
  });
}

function whyPinLocks(project: Project, block: Block): Phrase | null {
  return cellOf(project, block.id)?.pinned
    ? phrase('Block {block} is pinned. Unpin it to move it.', { block: block.number })
    : null;
}

/** Why the strips of a set may not change, or null when they may. A set with wedges in a sewn block counts as sewn. */
export function whyStripsLocked(project: Project, set: StripSet): Phrase | null {
  return set.progress === 'planned' && !inSewnBlock(project, set)
    ? null
    : phrase('Set {set} is sewn; its strips stay as they are.', { set: set.label });
}

/** Why the strips of a set may not be sewn in this order, or null when they may. Locked strips keep their places. */
export function whyOrderLocked(project: Project, set: StripSet, strips: readonly Strip[]): Phrase | null {
  if (set.locked) return phrase('Set {set} is locked; its strips stay as they are.', { set: set.label });
  const moved = set.strips.findIndex((strip, at) => {
    const now = strips[at];
    return strip.locked && !(now?.locked && now.fabric === strip.fabric && now.width === strip.width);
  });
  return (
    whyStripsLocked(project, set) ??
    (moved < 0
      ? null
      : phrase('Strip {number} of set {set} is locked; it keeps its place.', {
          number: moved + 1,
          set: set.label,
        }))
  );
}

/** Why the length of a set and its first tip may not change, or null when they may. */
export function whyCutsLocked(project: Project, set: StripSet): Phrase | null {
  return set.progress === 'cut' || inSewnBlock(project, set)
    ? phrase('Set {set} is cut; count its wedges instead.', { set: set.label })
    : null;
}

/**
 * Why the wedge may not change to this, or null when it may. Cut wedges keep their height and their number to the block;
 * sewn strips keep their seam. The assembly seam and the outer seam may always be corrected.
 */
export function whyWedgeLocked(project: Project, to: Partial<WedgePlan>): Phrase | null {
  const { wedge } = project;
  const changes = (key: keyof WedgePlan) => to[key] !== undefined && to[key] !== wedge[key];
  const cut = project.stripSets.find((set) => whyCutsLocked(project, set) !== null);
  if (cut && changes('perBlock')) {
    const say = 'Set {set} is cut into wedges of {count} to the block.';
    return phrase(say, { set: cut.label, count: wedge.perBlock });
  }
  if (cut && changes('cutHeight')) {
    const say = 'Set {set} is cut; its wedges are {height} high.';
    return phrase(say, { set: cut.label, height: { inches: wedge.cutHeight } });
  }
  const sewn = project.stripSets.find((set) => whyStripsLocked(project, set) !== null);
  if (sewn && changes('seam')) {
    const say = 'Set {set} is sewn with a seam of {seam}.';
    return phrase(say, { set: sewn.label, seam: { seam: wedge.seam } });
  }
  return null;
}

/** Why a block may not be marked as sewn into its row, or null when it may. */
export function whyRowLocked(project: Project, block: Block): Phrase | null {
  return cellOf(project, block.id)
    ? null
    : phrase('Block {block} waits on the side table; hang it before it is sewn into its row.', {
        block: block.number,
      });
}

function inSewnBlock(project: Project, set: StripSet): boolean {
  return project.blocks.some(
    (block) => block.progress !== 'planned' && block.places.some((place) => place?.set === set.id),
  );
}
