// Hands on the wall and the side table: gives the rules of gesture.ts their scene, and carries out the outcomes.
import { type PointerEvent, type RefObject, useCallback } from 'react';
import type { Drawing } from '../../../drawing/drawing';
import type { Rearrangement } from '../../../editing/apply';
import { hangBlock, swapCells, takeDown, turnBlock } from '../../../editing/commands/wall';
import type { Project } from '../../../model/project';
import type { App } from '../../../store/app';
import { useAppStore } from '../../app';
import type { WallView } from '../useView';
import { toQuilt } from '../view';
import { cellNear } from './cellAt';
import { type Gesture, type Outcome, type Pressed, viewChange, wallRules } from './gesture';
import type { Spot } from './hands';
import { type Hands, useHands } from './useHands';

/** The least size of what a finger hits, in pixels (WCAG 2.2, 2.5.5). */
const FINGER = 44;

interface WallHands extends Hands<Pressed, Gesture> {
  /** A press beside all blocks; a finger takes a small cell that it comes down beside. */
  readonly pressGround: (event: PointerEvent) => void;
}

/** Hands on the wall and its side table. */
export function useGestures(
  frame: RefObject<HTMLElement | null>,
  view: WallView,
  drawing: Drawing,
): WallHands {
  const store = useAppStore();
  const { now, pan, zoom, isLarger } = view;
  const inFrame = useCallback(
    ({ x, y }: Spot) => {
      const box = frame.current?.getBoundingClientRect();
      return { left: x - (box?.left ?? 0), top: y - (box?.top ?? 0) };
    },
    [frame],
  );
  const rules = useCallback(() => {
    const { project, picked, swapping } = store.getState();
    const at = (spot: Spot) => {
      const { left, top } = inFrame(spot);
      return toQuilt(now.current, left, top);
    };
    return wallRules({ project, picked, swapping, larger: isLarger(), drawing, toQuilt: at, onTable });
  }, [store, drawing, now, inFrame, isLarger]);
  const hands = useHands<Pressed, Gesture, Outcome>({
    rules,
    done: (outcome) => carryOut(store.getState(), outcome),
    moved: (gesture, before, after) => {
      const change = gesture.kind === 'view' ? viewChange(before, after) : null;
      if (!change) return;
      pan(change.across, change.down);
      if (change.zoom) zoom(change.zoom.factor, inFrame(change.zoom.about));
    },
  });
  const { press } = hands;
  const pressGround = useCallback(
    (event: PointerEvent) => {
      const { left, top } = inFrame({ x: event.clientX, y: event.clientY });
      const { scale } = now.current;
      const side = Math.min(drawing.block.width, drawing.block.height) * scale;
      const reach = event.pointerType === 'touch' ? Math.max(0, FINGER - side) / 2 / scale : 0;
      const cell = reach > 0 ? cellNear(drawing, toQuilt(now.current, left, top), reach) : null;
      const block = cell === null ? null : (store.getState().project.wall.cells[cell]?.block ?? null);
      press(event, cell === null ? { kind: 'ground' } : { kind: 'cell', cell, block });
    },
    [press, inFrame, now, drawing, store],
  );
  return { ...hands, pressGround };
}

function onTable({ x, y }: Spot): boolean {
  return document.elementFromPoint(x, y)?.closest('[data-side-table]') != null;
}

/** Carries out the outcome of a gesture, a tap or Enter. True if it was done, not refused. */
export function carryOut(app: App, outcome: Outcome | null): boolean {
  const { project } = app;
  if (outcome === null) return true;
  switch (outcome.kind) {
    case 'pick':
      app.pick(outcome.block);
      return true;
    case 'refuse':
      app.announce(outcome.why);
      return false;
    default: {
      const command = commandOf(outcome, project);
      return command === null || app.run(command).length === 0;
    }
  }
}

/** The command that an outcome is; null for one that changes nothing. */
export function commandOf(outcome: Outcome, project: Project): Rearrangement | null {
  switch (outcome.kind) {
    case 'hang':
      return hangBlock(project, outcome.block, outcome.cell);
    case 'swap':
      return swapCells(project, outcome.cell, outcome.other);
    case 'takeDown':
      return takeDown(project, outcome.block);
    case 'turn':
      return turnBlock(project, outcome.block, outcome.by);
    default:
      return null;
  }
}
