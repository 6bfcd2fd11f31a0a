// The layouts on offer as quilts: the command that uses each, the quilt it gives, and which blocks hang otherwise in it.
import type { Alternative, CutShort } from '../../../arrange/alternatives';
import { apply, type Rearrangement } from '../../../editing/apply';
import { rearrange } from '../../../editing/commands/wall';
import { counted, type Phrase, phrase } from '../../../model/phrase';
import type { BlockId, Project } from '../../../model/project';

/** The label of a layout's command; by it a preview of a layout is told from others. */
export const LAYOUT_LABEL = phrase('hang the blocks in another layout');

export interface Layout {
  readonly alternative: Alternative;
  readonly command: Rearrangement;
  readonly seen: Project;
  readonly ringed: Ringed;
}

/** Blocks to ring, and what the ring says. */
export interface Ringed {
  readonly blocks: ReadonlySet<BlockId>;
  readonly words: Phrase;
}

/** Where more than this part of the blocks changes, rings tell a layout from the first one (our choice). */
const NEARLY_ALL = 3 / 4;

const ENDED: Readonly<Record<NonNullable<CutShort>, Phrase>> = {
  time: phrase('Time ran out before all were tried: another run may find others.'),
  stop: phrase('Stopped before all were tried: another run may find others.'),
};

/** What is said of so many layouts: none is where nothing may move. That no other comes near the best is never known. */
export function foundWords(count: number, cut: CutShort): Phrase[] {
  if (count === 0) return [phrase('Nothing is free to move, so there is no other layout.')];
  const said = phrase(
    count > 1
      ? 'The best that was found, then others that differ from it and score at most 3 points worse. A random layout scores 100; lower is better. Press a picture to see it on the wall.'
      : 'The best that was found. No other that differs from it and scores at most 3 points worse was found.',
  );
  return cut ? [said, ENDED[cut]] : [said];
}

/** The layouts that can be used as the project stands. */
export function layoutsOf(project: Project, alternatives: readonly Alternative[]): Layout[] {
  const usable = alternatives.flatMap((alternative) => {
    const command = rearrange(alternative.moves, LAYOUT_LABEL);
    const outcome = apply(project, command);
    return outcome.ok ? [{ alternative, command, seen: outcome.project }] : [];
  });
  return usable.map((one) => ({ ...one, ringed: ringedIn(project, one.seen, usable[0]!.seen) }));
}

/**
 * The blocks that hang in another cell, with another turn or with other wedges than now; where that is more than half of them, those
 * that stay, because a ring round nearly all tells nothing. Where hardly any stay, those that hang otherwise than in the first layout;
 * in the first itself, those that stay, or all where none does.
 */
export function ringedIn(now: Project, seen: Project, first: Project = seen): Ringed {
  const hung = [...standings(seen).keys()];
  const differ = otherwise(now, seen);
  if (differ.size === 0) return { blocks: differ, words: phrase('The layout as it is now.') };
  if (2 * differ.size <= hung.length) {
    const words = counted(
      differ.size,
      'Ringed: the block that changes.',
      'Ringed: the {count} blocks that change.',
    );
    return { blocks: differ, words };
  }
  const unlike = otherwise(first, seen);
  if (differ.size > NEARLY_ALL * hung.length && unlike.size > 0) {
    const words = counted(
      unlike.size,
      'Nearly every block changes. Ringed: the block that differs from layout 1.',
      'Nearly every block changes. Ringed: the {count} blocks that differ from layout 1.',
    );
    return { blocks: unlike, words };
  }
  const stays = hung.filter((block) => !differ.has(block));
  if (stays.length === 0) return { blocks: differ, words: phrase('Ringed: every block changes.') };
  const words = counted(
    stays.length,
    'All change but one block, ringed.',
    'All change but {count} blocks, ringed.',
  );
  return { blocks: new Set(stays), words };
}

/** The blocks of one layout that hang otherwise than in another. */
function otherwise(than: Project, seen: Project): Set<BlockId> {
  const before = standings(than);
  const differ = [...standings(seen)].filter(([block, stands]) => before.get(block) !== stands);
  return new Set(differ.map(([block]) => block));
}

/** By block, where and how it hangs, as text to compare. */
function standings({ wall, blocks }: Project): Map<BlockId, string> {
  const byId = new Map(blocks.map((block) => [block.id, block]));
  return new Map(
    wall.cells.flatMap((cell, at) => {
      if (cell === null) return [];
      const { cornerShift, places } = byId.get(cell.block)!;
      return [[cell.block, JSON.stringify([at, cell.turn, cornerShift, places])] as const];
    }),
  );
}

/** What is better and worse in a layout than in the first, and by how many points in all. */
export function unlikeTheFirst({ differences, behind, apart }: Alternative): Phrase[] {
  const worse = counted(behind, '1 point worse overall', '{count} points worse overall');
  const seams = phrase('{apart}% of its seams join other wedges', { apart: Math.round(100 * apart) });
  return [
    behind === 0 ? phrase('as good overall') : worse,
    ...(differences.length > 0 ? differences.slice(0, 3) : [seams]),
  ];
}
