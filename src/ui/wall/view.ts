// The view of the wall: how many screen pixels an inch takes, and where the quilt's corner lies. Pure arithmetic.
import type { Point } from '../../geometry/point';

/** A point in pixels from the wall's upper left corner is at + point in quilt inches × scale. */
export interface View {
  readonly scale: number;
  readonly at: { readonly left: number; readonly top: number };
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** Pixels of a block's side below which its turning handle would cover its neighbours: then only buttons and keys turn it. */
export const SMALL_CELL = 60;

/** A rectangle of the wall, pixels. */
export interface Cover extends Size {
  readonly left: number;
  readonly top: number;
}

/** Pixels from the wall's edge to the far side of a row or column of buttons, for a finger. */
const ROW = 60;
/**
 * Pixels that the buttons at the foot take of the width, by the width `from` which the wall has: those of the picked block on the
 * left, of the view on the right. On a wider wall the right ones carry their words, then all (tools.css).
 */
const FEET = [
  { from: 1240, left: 660, right: 570 },
  { from: 960, left: 340, right: 570 },
  { from: 640, left: 340, right: 292 },
] as const;

/** A wall lower than the first has its buttons down its sides; lower than the second, in one more column. */
const LOW = [340, 204] as const;

/**
 * What buttons cover of a wall of this size, whether a block is picked or not, so that the top stays where it is: its foot; down its
 * sides where it is low; or where it is narrow, two rows at its foot (tools.css has the same sizes).
 */
export function buttonsOver({ width, height }: Size): readonly Cover[] {
  const narrow = width < 640;
  if (height < LOW[0] || (narrow && height <= width)) {
    const [left, right] = [height < LOW[1] ? 148 : 104, 104];
    return [
      { left: 0, top: 0, width: left, height },
      { left: width - right, top: 0, width: right, height },
    ];
  }
  if (narrow) return [{ left: 0, top: height - 2 * ROW, width, height: 2 * ROW }];
  const { left, right } = FEET.find(({ from }) => width >= from) ?? FEET[2];
  const row = { top: height - ROW, height: ROW };
  return [
    { ...row, left: 0, width: left },
    { ...row, left: width - right, width: right },
  ];
}

/** Pixels of flannel round the quilt on the large wall. */
export function marginOf({ width }: Size): number {
  return Math.min(48, Math.max(14, width * 0.04));
}

/**
 * The largest view of the whole quilt in the window, with `margin` pixels of flannel, that is clear of the buttons where there are
 * any.
 */
export function fitted(quilt: Size, window: Size, margin: number, buttons = true): View {
  const whole = fittedIn(quilt, window, margin, { left: 0, right: 0, below: 0 });
  if (!buttons) return whole;
  const boxes = buttonsOver(window);
  if (isClear(whole, quilt, boxes)) return whole;
  const [first, last] = [boxes[0], boxes.at(-1)];
  const below = first && first.top > 0 ? window.height - first.top : 0;
  const beside =
    first && last && below === 0
      ? { left: first.width, right: window.width - last.left }
      : { left: 0, right: 0 };
  return fittedIn(quilt, window, margin, { ...beside, below });
}

interface Taken {
  readonly left: number;
  readonly right: number;
  readonly below: number;
}

function fittedIn(quilt: Size, window: Size, margin: number, taken: Taken): View {
  const beside = (pixels: number) => (pixels === 0 ? margin : pixels + 4);
  const [left, above] = [beside(taken.left), taken.left === 0 ? margin : Math.min(margin, 8)];
  const across = Math.max(40, window.width - left - beside(taken.right));
  const down = Math.max(40, window.height - above - (taken.below === 0 ? above : taken.below + 4));
  const scale = Math.min(across / quilt.width, down / quilt.height);
  return {
    scale,
    at: {
      left: left + (across - quilt.width * scale) / 2,
      top: above + (down - quilt.height * scale) / 2,
    },
  };
}

function isClear({ scale, at }: View, quilt: Size, boxes: readonly Cover[]): boolean {
  return boxes.every(
    (box) =>
      at.left + quilt.width * scale <= box.left ||
      at.left >= box.left + box.width ||
      at.top + quilt.height * scale <= box.top ||
      at.top >= box.top + box.height,
  );
}

/** Whether the quilt is larger than the window that way or the other: then one finger moves the view. */
export function isLarger({ scale }: View, quilt: Size, window: Size): boolean {
  return quilt.width * scale > window.width + 0.5 || quilt.height * scale > window.height + 0.5;
}

/**
 * The view zoomed by a factor about a screen point, between a fifth of the scale of `fit` and 60 pixels to the inch; a good part of
 * the quilt stays in sight.
 */
export function zoomed(
  view: View,
  factor: number,
  about: { left: number; top: number },
  fit: View,
  quilt: Size,
  window: Size,
): View {
  const scale = Math.min(Math.max(view.scale * factor, fit.scale / 5), Math.max(60, fit.scale));
  const ratio = scale / view.scale;
  const at = {
    left: about.left - (about.left - view.at.left) * ratio,
    top: about.top - (about.top - view.at.top) * ratio,
  };
  return kept({ scale, at }, quilt, window);
}

/** The view moved right and down by screen pixels, as far as a good part of the quilt stays in sight. */
export function panned(view: View, across: number, down: number, quilt: Size, window: Size): View {
  const at = { left: view.at.left + across, top: view.at.top + down };
  return kept({ scale: view.scale, at }, quilt, window);
}

/** The view of a scale with a point of the quilt, in inches, in the middle of the window. */
export function closeTo(point: Point, scale: number, quilt: Size, window: Size): View {
  const at = { left: window.width / 2 - point.x * scale, top: window.height / 2 - point.y * scale };
  return kept({ scale, at }, quilt, window);
}

/** The view after its window has changed: what was in the middle stays there. */
export function recentred(view: View, before: Size, after: Size, quilt: Size): View {
  return panned(view, (after.width - before.width) / 2, (after.height - before.height) / 2, quilt, after);
}

/** The view moved so far that a third of the window is filled with the quilt each way, or the whole quilt is in it if it is smaller. */
export function kept({ scale, at }: View, quilt: Size, window: Size): View {
  return {
    scale,
    at: {
      left: keptAlong(at.left, quilt.width * scale, window.width),
      top: keptAlong(at.top, quilt.height * scale, window.height),
    },
  };
}

function keptAlong(start: number, size: number, frame: number): number {
  const least = Math.min(size, frame / 3);
  return Math.min(Math.max(start, least - size), frame - least);
}

/** How far the sheet with the drawing reaches beyond the window on each side, as a part of the window. */
const BEYOND = 0.5;

/** The viewBox of a sheet that reaches BEYOND a window of this size. */
export function viewBox(view: View, window: Size): string {
  const { scale, at } = view;
  const left = (-at.left - BEYOND * window.width) / scale;
  const top = (-at.top - BEYOND * window.height) / scale;
  const wide = 1 + 2 * BEYOND;
  return [left, top, (wide * window.width) / scale, (wide * window.height) / scale].join(' ');
}

/** Whether a sheet drawn for one view covers the window in another view of the same scale. */
export function covers(sheet: View, view: View, window: Size): boolean {
  return (
    sheet.scale === view.scale &&
    Math.abs(view.at.left - sheet.at.left) <= BEYOND * window.width &&
    Math.abs(view.at.top - sheet.at.top) <= BEYOND * window.height
  );
}

/** The CSS transform of a sheet drawn for `drawn` that shows `now`; it is cheap, for the duration of a gesture. */
export function between(drawn: View, now: View): string {
  const ratio = now.scale / drawn.scale;
  const left = now.at.left - drawn.at.left * ratio;
  const top = now.at.top - drawn.at.top * ratio;
  return `translate(${left}px, ${top}px) scale(${ratio})`;
}

/** The point of the quilt, in inches, at a point of the window in pixels. */
export function toQuilt(view: View, left: number, top: number): Point {
  return { x: (left - view.at.left) / view.scale, y: (top - view.at.top) / view.scale };
}
