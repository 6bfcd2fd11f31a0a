// Commands on how the blocks are set: straight or on point, plain squares between them, by what rule their corners go.

import { cellIndexOf, findBlock } from '../../model/find';
import { cornersOn, whyHangingLocked } from '../../model/freedom';
import { phrase } from '../../model/phrase';
import type { Cell, FabricId, Project, Setting } from '../../model/project';
import { cellAtHalfPlace, cellCount, cornerFabricOf, halfPlace, isPlain } from '../../model/wallCells';
import { type Command, Refusal } from '../apply';

/**
 * Sets the blocks straight or on point. Blocks stay in their rows and columns; those in between go to the side table when
 * the wall becomes straight. Sashing between the blocks only becomes sashing round every block, as it must on point.
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

/** Changes the fabric of the side or corner setting triangles. */
export function changeSettingTriangles(which: 'sides' | 'corners', fabric: FabricId): Command {
  return {
    label: which === 'sides' ? phrase('change the side triangles') : phrase('change the setting corners'),
    change: (draft) => {
      if (draft.setting.layout.kind === 'onPoint') draft.setting.layout[which] = fabric;
    },
  };
}

/**
 * Lays plain squares in every other cell, or takes them out (null). Blocks that hang there go to empty cells, in order, the
 * rest to the side table.
 */
export function layPlain(plain: Setting['plain']): Command {
  return {
    label: plain ? phrase('lay plain squares') : phrase('take the plain squares out'),
    change: (draft) => {
      changeCells(draft, () => {
        draft.setting.plain = plain;
      });
    },
  };
}

/** Gives some blocks a second corner fabric by rule, or all the quilt's (null); `quilts` changes that one with it. */
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

/** Corners that are on keep their fabric when the quilt's corners change: it becomes the block's own. */
export function keepSewnCorners(draft: Project): void {
  for (const block of draft.blocks) {
    if (!cornersOn(block)) continue;
    block.cornerFabric = cornerFabricOf(draft, block, cellIndexOf(draft, block.id));
  }
}

/**
 * Changes what makes the cells (rows, columns, layout, plain squares) and hangs every block where it was. A block whose place
 * is gone goes to the side table, or from under a plain square to an empty cell; one that is pinned or sewn in keeps the
 * change from being made.
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
