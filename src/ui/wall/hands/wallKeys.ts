// The keys of the wall: arrows go from cell to cell; R turns, Space lifts and puts down, P pins, Delete takes down, V shows the wall another way.
import type { KeyboardEvent } from 'react';
import { pinBlocks, takeDown, turnBlock, turnByOneWedge } from '../../../editing/commands/wall';
import { findBlock } from '../../../model/find';
import { whyHangingLocked } from '../../../model/freedom';
import { phrase } from '../../../model/phrase';
import type { Project } from '../../../model/project';
import { cellToward, isPlain } from '../../../model/wallCells';
import type { App } from '../../../store/app';
import { isKey } from '../../keys';
import { seeNext } from '../../seeing/ways';
import { type Gesture, type Pressed, tapped } from './gesture';
import { carryOut } from './useGestures';
import type { Hands } from './useHands';

const ARROWS: Readonly<Record<string, readonly [across: number, down: number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** The cell to which an arrow leads, past plain squares; the same cell at the edge. */
function cellAfter(cell: number, key: string, project: Project): number {
  const [across, down] = ARROWS[key] ?? [0, 0];
  const next = cellToward(cell, across, down, project);
  if (!isPlain(next, project)) return next;
  // Up and down go to a block of the next row, so that they reach every block of a checkerboard.
  const aside = down === 0 ? [] : [1, -1].map((step) => cellToward(next, step, 0, project));
  const beyond = cellToward(next, across, down, project);
  return [...aside, beyond].find((one) => !isPlain(one, project)) ?? cell;
}

interface KeyHands extends Pick<Hands<Pressed, Gesture>, 'gesture' | 'carryByKey' | 'put'> {
  readonly centreOf: (cell: number) => { x: number; y: number };
  readonly focusCell: (cell: number) => void;
}

/** Handles a key on a cell; true if the key has a meaning. */
export function wallKey(event: KeyboardEvent, cell: number, app: App, hands: KeyHands): boolean {
  const { project } = app;
  const block = project.wall.cells[cell]?.block ?? null;
  const carried = hands.gesture?.kind === 'carry' ? hands.gesture : null;
  if (isKey(event, 'walk')) {
    if (!carried) hands.focusCell(cellAfter(cell, event.key, project));
    else {
      const over = cellAfter(carried.over ?? cell, event.key, project);
      hands.carryByKey({ ...carried, over, at: hands.centreOf(over), overTable: false });
    }
    return true;
  }
  if (isKey(event, 'lift')) {
    if (carried) {
      hands.put();
      if (carried.over !== null) hands.focusCell(carried.over);
    } else if (block) lift(app, block, cell, hands);
    return true;
  }
  if (isKey(event, 'pick')) {
    const outcome = tapped({ kind: 'cell', cell, block }, app);
    const done = carryOut(app, outcome);
    // A cell and its block are different elements, so the focus must move to the block.
    if (done && outcome?.kind === 'hang') hands.focusCell(cell);
    return true;
  }
  if (isKey(event, 'see')) {
    seeNext(app, event.shiftKey ? -1 : 1);
    return true;
  }
  return block !== null && blockKey(event, block, app, () => hands.focusCell(cell));
}

function blockKey(event: KeyboardEvent, block: string, app: App, stay: () => void): boolean {
  const { project } = app;
  if (isKey(event, 'turn')) app.run(turnBlock(project, block, event.shiftKey ? -1 : 1));
  else if (isKey(event, 'wedgeOn')) app.run(turnByOneWedge(project, block, 1));
  else if (isKey(event, 'wedgeBack')) app.run(turnByOneWedge(project, block, -1));
  else if (isKey(event, 'pin')) {
    const pinned = project.wall.cells.some((cell) => cell?.block === block && cell.pinned);
    app.run(pinBlocks(project, [block], !pinned));
  } else if (isKey(event, 'takeDown')) {
    if (app.run(takeDown(project, block)).length === 0) stay();
  } else return false;
  return true;
}

function lift(app: App, block: string, cell: number, hands: KeyHands): void {
  const found = findBlock(app.project, block);
  const reason = found ? whyHangingLocked(app.project, found) : null;
  if (reason) {
    app.announce(reason);
    return;
  }
  const at = hands.centreOf(cell);
  hands.carryByKey({ kind: 'carry', block, from: cell, at, over: cell, overTable: false, byKeys: true });
  app.announce(
    phrase('Block {block} lifted. Arrows carry it, Space puts it down, Escape cancels.', {
      block: found?.number ?? 0,
    }),
  );
}
