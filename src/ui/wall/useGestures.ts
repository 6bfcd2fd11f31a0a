// Pointers on the wall: carry a block to another cell or the side table, turn it by its handle or two fingers, pan, pinch.
// One gesture ends in one command, or in none when Escape is pressed.
import {
  type PointerEvent as ReactPointerEvent,
  type RefObject,
  useCallback,
  useEffect,
  useRef,
  useState,
} from 'react';
import type { Drawing } from '../../drawing/drawing';
import { hangBlock, swapCells, takeDown, turnBlock } from '../../editing/commands/wall';
import type { Point } from '../../geometry/point';
import { cellIndexOf, findBlock, turnsOf } from '../../model/find';
import { whyHangingLocked } from '../../model/freedom';
import type { BlockId } from '../../model/project';
import type { App } from '../../store/app';
import { useAppStore } from '../app';
import { bearing, type Gesture, turnsIn } from './gesture';
import type { WallView } from './useView';
import { toQuilt } from './view';

const SLIP = 5;

interface Hand {
  id: number;
  startX: number;
  startY: number;
  x: number;
  y: number;
}

/** What was pressed, before it is known whether it becomes a gesture. */
type Pressed =
  | { kind: 'cell'; cell: number; block: BlockId | null }
  | { kind: 'table'; block: BlockId }
  | { kind: 'handle'; block: BlockId }
  | { kind: 'ground' };

function cellAt(drawing: Drawing, point: Point): number | null {
  const { width, height } = drawing.block;
  const inside = (x: number, y: number) => {
    // Brought back by the tilt: on point a block covers a square that stands on its corner.
    const across = point.x - x;
    const down = point.y - y;
    const own =
      drawing.tilt === 0
        ? { x: across, y: down }
        : { x: (across + down) * Math.SQRT1_2, y: (down - across) * Math.SQRT1_2 };
    return Math.abs(own.x) <= width / 2 && Math.abs(own.y) <= height / 2;
  };
  const hung = drawing.blocks.find((one) => inside(one.centre.x, one.centre.y));
  if (hung) return hung.cell;
  return (
    drawing.emptyCells.find(({ box }) => inside(box.x + box.width / 2, box.y + box.height / 2))?.cell ?? null
  );
}

export function useGestures(frame: RefObject<HTMLElement | null>, view: WallView, drawing: Drawing) {
  const store = useAppStore();
  const [gesture, setGesture] = useState<Gesture | null>(null);
  const live = useRef<Gesture | null>(null);
  const hands = useRef<Hand[]>([]);
  const pressed = useRef<Pressed | null>(null);
  const latest = useRef({ view, drawing });
  latest.current = { view, drawing };

  const show = useCallback((next: Gesture | null) => {
    live.current = next;
    setGesture(next);
  }, []);

  const quiltPoint = useCallback(
    (x: number, y: number): Point => {
      const box = frame.current?.getBoundingClientRect();
      return toQuilt(latest.current.view.now.current, x - (box?.left ?? 0), y - (box?.top ?? 0));
    },
    [frame],
  );

  useEffect(() => {
    const move = (event: PointerEvent) => {
      const hand = hands.current.find((one) => one.id === event.pointerId);
      if (!hand || !pressed.current) return;
      const before = hands.current.map((one) => ({ ...one }));
      hand.x = event.clientX;
      hand.y = event.clientY;
      if (hands.current.length >= 2) return twoHands(before);
      const gone = Math.hypot(hand.x - hand.startX, hand.y - hand.startY);
      if (live.current === null && gone < SLIP) return;
      oneHand(pressed.current, hand, event);
    };
    const oneHand = (held: Pressed, hand: Hand, event: PointerEvent) => {
      const { drawing, view } = latest.current;
      const state = store.getState();
      const point = quiltPoint(hand.x, hand.y);
      if (held.kind === 'handle') {
        const middle = drawing.blocks.find((one) => one.block === held.block)?.centre;
        if (!middle) return;
        const start = bearing(middle, quiltPoint(hand.startX, hand.startY));
        const degrees = ((bearing(middle, point) - start + 540) % 360) - 180;
        return show({ kind: 'twist', block: held.block, degrees });
      }
      const block = held.kind === 'ground' ? null : held.block;
      if (block === null) {
        if (live.current === null) show({ kind: 'view' });
        return view.pan(event.movementX, event.movementY);
      }
      const found = findBlock(state.project, block);
      if (!found) return;
      if (live.current === null) {
        const reason = whyHangingLocked(state.project, found);
        if (reason) {
          pressed.current = null;
          return state.say(reason);
        }
      }
      const from = held.kind === 'cell' ? held.cell : null;
      const middle = from === null ? null : drawing.blocks.find((one) => one.cell === from)?.centre;
      const start = quiltPoint(hand.startX, hand.startY);
      const hold = middle ? { x: start.x - middle.x, y: start.y - middle.y } : { x: 0, y: 0 };
      const overTable = document.elementFromPoint(hand.x, hand.y)?.closest('[data-side-table]') != null;
      const over = overTable ? null : cellAt(drawing, point);
      show({
        kind: 'carry',
        block,
        from,
        at: { x: point.x - hold.x, y: point.y - hold.y },
        hold,
        over,
        overTable,
      });
    };
    const twoHands = (before: Hand[]) => {
      const [first, second] = hands.current as [Hand, Hand];
      const [firstBefore, secondBefore] = before as [Hand, Hand];
      const box = frame.current?.getBoundingClientRect();
      const { view, drawing } = latest.current;
      const picked = store.getState().picked;
      const middle = drawing.blocks.find((one) => one.block === picked);
      const onPicked = (hand: Hand) =>
        middle !== undefined && cellAt(drawing, quiltPoint(hand.startX, hand.startY)) === middle.cell;
      if (picked !== null && onPicked(first) && onPicked(second)) {
        const angle = (one: Hand, other: Hand, start: boolean) =>
          start
            ? bearing({ x: one.startX, y: one.startY }, { x: other.startX, y: other.startY })
            : bearing({ x: one.x, y: one.y }, { x: other.x, y: other.y });
        const degrees = ((angle(first, second, false) - angle(first, second, true) + 540) % 360) - 180;
        return show({ kind: 'twist', block: picked, degrees });
      }
      if (live.current?.kind !== 'view') show({ kind: 'view' });
      const gap = Math.hypot(first.x - second.x, first.y - second.y);
      const gapBefore = Math.hypot(firstBefore.x - secondBefore.x, firstBefore.y - secondBefore.y);
      const about = {
        left: (first.x + second.x) / 2 - (box?.left ?? 0),
        top: (first.y + second.y) / 2 - (box?.top ?? 0),
      };
      view.pan(
        (first.x + second.x - firstBefore.x - secondBefore.x) / 2,
        (first.y + second.y - firstBefore.y - secondBefore.y) / 2,
      );
      if (gapBefore > 0) view.zoom(gap / gapBefore, about);
    };
    const finish = (event: PointerEvent) => {
      if (!hands.current.some((one) => one.id === event.pointerId)) return;
      hands.current = hands.current.filter((one) => one.id !== event.pointerId);
      if (hands.current.length > 0) return;
      const done = live.current;
      const held = pressed.current;
      pressed.current = null;
      show(null);
      if (event.type === 'pointercancel') return;
      if (done) end(store.getState(), done);
      else if (held) tap(store.getState(), held);
    };
    const drop = (event: KeyboardEvent) => {
      if (event.key !== 'Escape' || live.current === null) return;
      event.stopPropagation();
      pressed.current = null;
      hands.current = [];
      show(null);
    };
    globalThis.addEventListener('pointermove', move);
    globalThis.addEventListener('pointerup', finish);
    globalThis.addEventListener('pointercancel', finish);
    globalThis.addEventListener('keydown', drop, true);
    return () => {
      globalThis.removeEventListener('pointermove', move);
      globalThis.removeEventListener('pointerup', finish);
      globalThis.removeEventListener('pointercancel', finish);
      globalThis.removeEventListener('keydown', drop, true);
    };
  }, [store, frame, quiltPoint, show]);

  const press = useCallback((event: ReactPointerEvent, what: Pressed) => {
    if (event.button !== 0) return;
    if (hands.current.length === 0) pressed.current = what;
    if (hands.current.length < 2) {
      const { pointerId, clientX, clientY } = event;
      hands.current.push({ id: pointerId, startX: clientX, startY: clientY, x: clientX, y: clientY });
    }
  }, []);

  return { gesture, show, press };
}

function tap(app: App, held: Pressed): void {
  if (held.kind === 'ground') app.pick(null);
  if (held.kind === 'table') app.pick(app.picked === held.block ? null : held.block);
  if (held.kind === 'cell') {
    const waiting = app.picked !== null && cellIndexOf(app.project, app.picked) < 0;
    if (held.block === null && waiting && app.picked) app.run(hangBlock(app.project, app.picked, held.cell));
    else app.pick(held.block === app.picked ? null : held.block);
  }
}

/** Ends a gesture in its command. */
export function end(app: App, gesture: Gesture): void {
  const { project } = app;
  if (gesture.kind === 'twist') {
    const by = turnsIn(gesture.degrees, turnsOf(project.wedge.perBlock));
    if (by !== 0) app.run(turnBlock(project, gesture.block, by));
  }
  if (gesture.kind !== 'carry') return;
  const { block, from, over, overTable } = gesture;
  if (overTable && from !== null) app.run(takeDown(project, block));
  else if (over !== null && from !== null && over !== from) app.run(swapCells(project, from, over));
  else if (over !== null && from === null) app.run(hangBlock(project, block, over));
}
