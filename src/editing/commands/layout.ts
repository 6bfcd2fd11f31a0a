// Commands on the layout: straight or on point, setting triangles, plain squares, and the rule for corner fabrics.

import { findBlock } from '../../model/find';
import { cornersOn, whyHangingLocked } from '../../model/freedom';
import { phrase } from '../../model/phrase';
import type { Cell, FabricId, Project, Setting } from '../../model/project';
import { cellAtHalfPlace, cellCount, halfPlace, isPlain, keepCorners } from '../../model/wallCells';
import { type Command, Refusal } from '../apply';

/**
 * Sets the blocks straight or on point. Blocks keep their rows and columns; when the wall becomes straight, blocks in between
 * go to the side table. When it becomes on point, sashing between the blocks becomes sashing round every block.
 */
export function setLayout(kind: Setting['layout']['kind']): Command {
  return {
    label: kind === 'onPoint' ? phrase('set the blocks on point') : phrase('set the blocks straight'),
    change: (draft) => {
      const { setting } = draft;
      if (setting.layout.kind === kind) return;
      const fabric = setting.cornerFabric;
      changeCells(draft, () => {
        setting.layout = kind === 'onPoint' ? { kind, sides: fabric, corners: fabric } : { kind };
        if (kind === 'onPoint' && setting.sashing.where === 'between') setting.sashing.where = 'around';
      });
    },
  };
}

/** Changes the fabric of the setting triangles at the sides or in the corners of the top. */
export function changeSettingTriangles(which: 'sides' | 'corners', fabric: FabricId): Command {
  return {
    label: which === 'sides' ? phrase('change the side triangles') : phrase('change the setting corners'),
    change: (draft) => {
      if (draft.setting.layout.kind === 'onPoint') draft.setting.layout[which] = fabric;
    },
  };
}

/**
 * Lays plain squares in every other cell, or takes them out (null). Blocks of those cells move to empty cells, in order; the
 * rest go to the side table.
 */
export function layPlain(plain: Setting['plain']): Command {
  return {
    label: plain ? phrase('add plain squares') : phrase('remove the plain squares'),
    change: (draft) => {
      changeCells(draft, () => {
        draft.setting.plain = plain;
      });
    },
  };
}

/** Sets the rule for a second corner fabric; null: no rule. `quilts` is a new corner fabric of the quilt, changed with it. */
export function changeCornerRule(rule: Setting['cornerRule'], quilts?: FabricId): Command {
  return {
    label: phrase('change the rule of the corners'),
    change: (draft) => {
      keepSewnCorners(draft);
      draft.setting.cornerRule = rule;
      if (quilts !== undefined) draft.setting.cornerFabric = quilts;
    },
  };
}

/** Makes the fabric of corners that are sewn on the block's own, so that it stays when the quilt's corner fabric changes. */
export function keepSewnCorners(draft: Project): void {
  for (const block of draft.blocks) if (cornersOn(block)) keepCorners(draft, block);
}

/**
 * Runs a change of rows, columns, layout or plain squares, and hangs every block where it hung. A block whose place is gone
 * goes to the side table; a block whose cell is now a plain square goes to an empty cell. Throws a Refusal where such a block
 * is pinned or sewn in.
 */
export function changeCells(draft: Project, change: () => void): void {
  const before = draft.wall.cells.flatMap((cell, index) =>
    cell ? [{ cell, ...halfPlace(index, draft.wall) }] : [],
  );
  const locked = new Set(before.filter(({ cell }) => isLocked(draft, cell)).map(({ cell }) => cell.block));
  change();
  const count = cellCount(draft.wall.rows, draft.wall.columns, draft.setting.layout);
  draft.wall.cells = Array.from({ length: count }, () => null);
  const displaced: Cell[] = [];
  for (const { cell, down, across } of before) {
    const index = cellAtHalfPlace(down, across, draft);
    if (index >= 0 && !isPlain(index, draft)) {
      draft.wall.cells[index] = cell;
      continue;
    }
    if (locked.has(cell.block)) throw refusal(draft, cell, index);
    if (index >= 0) displaced.push(cell);
  }
  draft.wall.cells.forEach((there, index) => {
    const next = there === null && !isPlain(index, draft) ? displaced.shift() : undefined;
    if (next) draft.wall.cells[index] = next;
  });
}

function isLocked(draft: Project, cell: Cell): boolean {
  const block = findBlock(draft, cell.block);
  return block !== undefined && whyHangingLocked(draft, block) !== null;
}

function refusal(draft: Project, cell: Cell, index: number): Refusal {
  const block = findBlock(draft, cell.block)?.number ?? 0;
  const say =
    index >= 0
      ? 'Block {block} is pinned or sewn in where a plain square would lie.'
      : 'Block {block} is pinned or sewn in where the wall would end.';
  return new Refusal('held', 'wall', phrase(say, { block }));
}
