// How a frame on a photograph is moved, sized and turned. It stays inside: a move slides along the edge, a size or turn that would leave
// the photograph is not made.
import type { Point } from '../../../../../geometry/point';
import type { Frame } from '../../../../../photo/pixels/frame';
import { frameCorners } from '../../../../../photo/pixels/frame';

interface Size {
  readonly width: number;
  readonly height: number;
}

/** A frame smaller than this shows no fabric (photo/fabric/readFabric.ts), pixels. */
export const LEAST_FRAME = 24;

function fits(frame: Frame, { width, height }: Size): boolean {
  const within = frameCorners(frame).every(({ x, y }) => x >= 0 && y >= 0 && x <= width && y <= height);
  return within && Math.min(frame.width, frame.height) >= LEAST_FRAME;
}

export function movedBy(frame: Frame, across: number, down: number, size: Size): Frame {
  const corners = frameCorners(frame);
  const slid = (by: number, places: readonly number[], side: number) =>
    Math.max(-Math.min(...places), Math.min(side - Math.max(...places), by));
  const x = corners.map((corner) => corner.x);
  const y = corners.map((corner) => corner.y);
  return { ...frame, x: frame.x + slid(across, x, size.width), y: frame.y + slid(down, y, size.height) };
}

export function sizedTo(frame: Frame, width: number, height: number, size: Size): Frame {
  const next = { ...frame, width, height };
  return fits(next, size) ? next : frame;
}

export function turnedTo(frame: Frame, angle: number, size: Size): Frame {
  const next = { ...frame, angle: ((((angle + 180) % 360) + 360) % 360) - 180 };
  return fits(next, size) ? next : frame;
}

/** One corner (0 top left, clockwise) drawn to a point; the corner across from it stays where it is. */
export function cornerTo(frame: Frame, corner: number, to: Point, size: Size): Frame {
  const fixed = frameCorners(frame)[(corner + 2) % 4]!;
  const turn = (frame.angle * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const [x, y] = [to.x - fixed.x, to.y - fixed.y];
  const right = corner === 1 || corner === 2 ? 1 : -1;
  const below = corner >= 2 ? 1 : -1;
  const width = Math.max(LEAST_FRAME, right * (x * cos + y * sin));
  const height = Math.max(LEAST_FRAME, below * (y * cos - x * sin));
  const [halfX, halfY] = [(right * width) / 2, (below * height) / 2];
  const next = {
    x: fixed.x + halfX * cos - halfY * sin,
    y: fixed.y + halfX * sin + halfY * cos,
    width,
    height,
    angle: frame.angle,
  };
  return fits(next, size) ? next : frame;
}

/** Turned so that its upper side faces a point. */
export function facing(frame: Frame, to: Point, size: Size): Frame {
  const angle = (Math.atan2(to.x - frame.x, frame.y - to.y) * 180) / Math.PI;
  return turnedTo(frame, Math.round(angle), size);
}
