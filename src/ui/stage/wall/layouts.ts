// The layouts on offer as quilts: the command that uses each, the quilt it gives, and which blocks hang otherwise in it.
import type { Alternative } from '../../../arrange/alternatives';
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

/** The layouts that can be used as the project stands. */
export function layoutsOf(project: Project, alternatives: readonly Alternative[]): Layout[] {
  return alternatives.flatMap((alternative) => {
    const command = rearrange(alternative.moves, LAYOUT_LABEL);
    const outcome = apply(project, command);
    if (!outcome.ok) return [];
    return [{ alternative, command, seen: outcome.project, ringed: ringedIn(project, outcome.project) }];
  });
}

/**
 * The blocks that hang in another cell, with another turn or with other wedges than now; where that is more than half of them, those
 * that stay, because a ring round nearly all tells nothing.
 */
export function ringedIn(now: Project, seen: Project): Ringed {
  const before = standings(now);
  const hung = [...standings(seen)];
  const differ = hung.filter(([block, stands]) => before.get(block) !== stands).map(([block]) => block);
  if (differ.length === 0) return { blocks: new Set(), words: phrase('The layout as it is now.') };
  if (2 * differ.length <= hung.length) {
    const words = counted(
      differ.length,
      'Ringed: the block that changes.',
      'Ringed: the {count} blocks that change.',
    );
    return { blocks: new Set(differ), words };
  }
  const stays = hung.filter(([block, stands]) => before.get(block) === stands).map(([block]) => block);
  const words =
    stays.length === 0
      ? phrase('Every block changes.')
      : counted(stays.length, 'All change but one block, ringed.', 'All change but {count} blocks, ringed.');
  return { blocks: new Set(stays), words };
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
  const worse = counted(behind, '1 point worse in all', '{count} points worse in all');
  const seams = phrase('{apart}% of its seams join other wedges', { apart: Math.round(100 * apart) });
  return [
    behind === 0 ? phrase('as good in all') : worse,
    ...(differences.length > 0 ? differences.slice(0, 3) : [seams]),
  ];
}
