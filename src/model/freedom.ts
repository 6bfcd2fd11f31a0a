// What may still change, given how far the work is and what is pinned. Used by commands, proposals and the arranger alike.
import { cellOf } from './find';
import { type Phrase, phrase } from './phrase';
import type { Block, Project, StripSet } from './project';

/** Why the wedges of a block may not be traded, or null when they may. */
export function placesHeld(block: Block): Phrase | null {
  return block.progress === 'planned'
    ? null
    : phrase('Block {block} is sewn; its wedges stay as they are.', { block: block.number });
}

/** Why the corners of a block may not go on other places, or null when they may. */
export function cornersHeld(project: Project, block: Block): Phrase | null {
  if (block.progress === 'squared' || block.progress === 'joined') {
    return phrase('Block {block} has its corners on; it turns by quarters only.', { block: block.number });
  }
  return pinHolds(project, block);
}

/** Why a block may not be turned or moved on the wall, or null when it may. */
export function hangingHeld(project: Project, block: Block): Phrase | null {
  if (block.progress === 'joined') {
    return phrase('Block {block} is sewn into its row; it stays where it is.', { block: block.number });
  }
  return pinHolds(project, block);
}

function pinHolds(project: Project, block: Block): Phrase | null {
  return cellOf(project, block.id)?.pinned
    ? phrase('Block {block} is pinned. Take the pin out to move it.', { block: block.number })
    : null;
}

/** Why the strips of a set may not change, or null when they may. */
export function stripsHeld(set: StripSet): Phrase | null {
  return set.progress === 'planned'
    ? null
    : phrase('Set {set} is sewn; its strips stay as they are.', { set: set.label });
}
