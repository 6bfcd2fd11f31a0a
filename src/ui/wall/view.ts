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

/** Pixels that the buttons at the foot of the wall take of its height. */
const FOOT_HEIGHT = 62;
/**
 * Pixels that they cover, by the width `from` which the wall has: those of the picked block on the
 * left, of the view on the right. On a wider wall first the right ones carry their words, then all (tools.css).
 */
const FEET = [
  { from: 880, left: 530, right: 345 },
  { from: 620, left: 290, right: 320 },
  { from: 0, left: 290, right: 160 },
] as const;

/**
 * The view of the whole quilt in the middle of the window, with `margin` pixels of flannel; clear of the buttons at the foot where
 * there are any.
 */
export function fitted(quilt: Size, window: Size, margin: number, buttons = true): View {
  const view = fittedAbove(quilt, window, margin, margin);
  if (!buttons) return view;
  const right = view.at.left + quilt.width * view.scale;
  const bottom = view.at.top + quilt.height * view.scale;
  const foot = FEET.find(({ from }) => window.width >= from) ?? FEET[2];
  const aside = view.at.left < foot.left || right > window.width - foot.right;
  const covered = aside && bottom > window.height - FOOT_HEIGHT;
  return covered ? fittedAbove(quilt, window, margin, FOOT_HEIGHT + 4) : view;
}

function fittedAbove(quilt: Size, window: Size, margin: number, below: number): View {
  const across = Math.max(40, window.width - 2 * margin);
  const down = Math.max(40, window.height - margin - below);
  const scale = Math.min(across / quilt.width, down / quilt.height);
  return {
    scale,
    at: {
      left: (window.width - quilt.width * scale) / 2,
      top: margin + (down - quilt.height * scale) / 2,
    },
  };
}

/** The view zoomed by a factor about a screen point, between a fifth of the scale of `fit` and 60 pixels to the inch. */
export function zoomed(view: View, factor: number, about: { left: number; top: number }, fit: View): View {
  const scale = Math.min(Math.max(view.scale * factor, fit.scale / 5), Math.max(60, fit.scale));
  const ratio = scale / view.scale;
  return {
    scale,
    at: {
      left: about.left - (about.left - view.at.left) * ratio,
      top: about.top - (about.top - view.at.top) * ratio,
    },
  };
}

/** The view moved right and down by screen pixels. */
export function panned(view: View, across: number, down: number): View {
  return { scale: view.scale, at: { left: view.at.left + across, top: view.at.top + down } };
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
