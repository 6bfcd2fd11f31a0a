// Hangs a wall as it was photographed, as one change: blocks that were recognised move to where the photograph shows them, the others are
// added by their pictures, and blocks of the quilt that are not in the photograph wait on the side table.
import { findBlock } from '../../model/find';
import { whyHangingLocked, whyTurnLocked } from '../../model/freedom';
import { phrase } from '../../model/phrase';
import type { BlockId, Project } from '../../model/project';
import { type Command, Refusal } from '../apply';
import { addAll, type ReadBlock } from './addPictured';

/** What a photograph shows in a cell: nothing, a block of the quilt with its turn, or one that is new. */
export type PhotographedCell =
  | null
  | { readonly kind: 'known'; readonly block: BlockId; readonly turn: number }
  | { readonly kind: 'new'; readonly read: ReadBlock };

/** A wall as photographed, its cells by rows. */
export interface PhotographedWall {
  readonly rows: number;
  readonly columns: number;
  readonly cells: readonly PhotographedCell[];
}

/** What hanging a photographed wall does to the blocks of the quilt, by their ids. */
export interface WhatHappens {
  readonly added: number;
  /** Recognised, and where they hang or turned otherwise than now; and those that stay as they are. */
  readonly moved: readonly BlockId[];
  readonly stay: readonly BlockId[];
  /** They hang now and are not in the photograph. */
  readonly toTable: readonly BlockId[];
}

/**
 * Hangs the wall. Refused where the setting has no such rows (on point, or with plain squares), where a block that would move, turn or
 * come down is pinned or sewn into its row, and where the quilt would hold too many blocks.
 */
export function hangPhotographed(wall: PhotographedWall): Command {
  return {
    label: phrase('hang the wall as photographed'),
    change: (draft) => {
      refuseOtherSetting(draft);
      refuseHeld(draft, wall);
      const pinned = new Set(draft.wall.cells.flatMap((cell) => (cell?.pinned ? [cell.block] : [])));
      draft.wall.rows = wall.rows;
      draft.wall.columns = wall.columns;
      draft.wall.cells = wall.cells.map((cell) =>
        cell?.kind === 'known'
          ? { block: cell.block, turn: cell.turn, pinned: pinned.has(cell.block) }
          : null,
      );
      addAll(
        draft,
        wall.cells.flatMap((cell, at) =>
          cell?.kind === 'new' ? [{ ...cell.read, number: null, hang: { cell: at, turn: 0 } }] : [],
        ),
      );
    },
  };
}

/** What the command would do, in numbers, to say before it is done. */
export function whatHappens({ wall: now }: Pick<Project, 'wall'>, wall: PhotographedWall): WhatHappens {
  const wanted = new Map(
    wall.cells.flatMap((cell, at) =>
      cell?.kind === 'known' ? [[cell.block, placeIn(wall.columns, at, cell.turn)] as const] : [],
    ),
  );
  const hung = new Map(
    now.cells.flatMap((cell, at) =>
      cell ? [[cell.block, placeIn(now.columns, at, cell.turn)] as const] : [],
    ),
  );
  const known = [...wanted.keys()];
  const stays = (block: BlockId) => hung.get(block) === wanted.get(block);
  return {
    added: wall.cells.filter((cell) => cell?.kind === 'new').length,
    moved: known.filter((block) => !stays(block)),
    stay: known.filter(stays),
    toTable: [...hung.keys()].filter((block) => !wanted.has(block)),
  };
}

function placeIn(columns: number, cell: number, turn: number): string {
  return `${Math.floor(cell / columns)} ${cell % columns} ${turn}`;
}

function refuseOtherSetting({ setting }: Project): void {
  if (setting.layout.kind === 'onPoint') {
    const say =
      'The blocks are set on point, and the photograph shows straight rows. Set them straight first, under Setting.';
    throw new Refusal('on-point', 'setting.layout', phrase(say));
  }
  if (setting.plain) {
    const say = 'The setting has plain squares between the blocks. Remove them first, under Setting.';
    throw new Refusal('plain-squares', 'setting.plain', phrase(say));
  }
}

function refuseHeld(draft: Project, wall: PhotographedWall): void {
  const { moved, toTable } = whatHappens(draft, wall);
  for (const id of [...moved, ...toTable]) {
    const block = findBlock(draft, id);
    const reason = block && (whyHangingLocked(draft, block) ?? whyTurnLocked(draft, block));
    if (reason) throw new Refusal('held', 'wall', reason);
  }
}
