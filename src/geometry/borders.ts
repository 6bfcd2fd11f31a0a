// The pieces of borders, from the inside out: butted (sides first, then top and bottom over the new width), mitred, with
// cornerstones, or pieced. Coordinates run from the upper left corner of the whole top.
import type { Border, Project } from '../model/project';
import type { Degrees, Inches } from '../model/units';
import type { Side } from './contact';
import { type Box, boxOutline, type Outline } from './point';
import { boxPiece, type SettingPiece } from './settingPiece';
import { finishedWidth } from './stripSet';

/** Finished widths of a border at the sides and at the ends (top and bottom). */
function borderWidths(border: Border): { side: Inches; end: Inches } {
  return { side: border.width, end: border.ends ?? border.width };
}

/** The sum of the finished border widths at one side and at one end. */
export function borderedBy(borders: readonly Border[]): { side: Inches; end: Inches } {
  const widths = borders.map(borderWidths);
  return {
    side: widths.reduce((sum, one) => sum + one.side, 0),
    end: widths.reduce((sum, one) => sum + one.end, 0),
  };
}

/** Finished lengths of a border round `inner`: its two sides, and its two ends (top and bottom). */
export function borderRuns(border: Border, inner: { readonly width: Inches; readonly height: Inches }) {
  const { side } = borderWidths(border);
  const ends = border.corners?.kind === 'cornerstones' ? inner.width : inner.width + 2 * side;
  return { sides: inner.height, ends };
}

/** The pieces of all borders round an inner part of this size. The cornerstones of each come down the left side, then down the right. */
export function borderPieces(
  project: Pick<Project, 'setting' | 'wedge'>,
  innerWidth: Inches,
  innerHeight: Inches,
): SettingPiece[] {
  const { borders } = project.setting;
  const all = borderedBy(borders);
  let inner: Box = { x: all.side, y: all.end, width: innerWidth, height: innerHeight };
  return borders.flatMap((border, index) => {
    const { side, end } = borderWidths(border);
    const outer: Box = {
      x: inner.x - side,
      y: inner.y - end,
      width: inner.width + 2 * side,
      height: inner.height + 2 * end,
    };
    const pieces = oneBorder(border, index, inner, outer, project.wedge.outerSeam);
    inner = outer;
    return pieces;
  });
}

function oneBorder(border: Border, index: number, inner: Box, outer: Box, seam: Inches): SettingPiece[] {
  if (border.corners?.kind === 'mitred') return mitred(border, index, inner, outer);
  const { side, end } = borderWidths(border);
  const stones = border.corners?.kind === 'cornerstones' ? border.corners.fabric : null;
  const from = stones === null ? outer : inner;
  const right = inner.x + inner.width;
  const below = inner.y + inner.height;
  const left: Box = { x: outer.x, y: inner.y, width: side, height: inner.height };
  const runs = [
    { box: left, way: 'up' },
    { box: { ...left, x: right }, way: 'down' },
    { box: { x: from.x, y: outer.y, width: from.width, height: end }, way: 'right' },
    { box: { x: from.x, y: below, width: from.width, height: end }, way: 'left' },
  ] as const;
  const corners =
    stones === null
      ? []
      : [outer.x, right].flatMap((x) =>
          [outer.y, below].map((y) =>
            boxPiece('cornerstone', stones, { x, y, width: side, height: end }, index),
          ),
        );
  if (border.keys) return [...keyed(border.keys, index, runs, seam), ...corners];
  return [...runs.map(({ box, way }) => strip(border, index, box, way)), ...corners];
}

type Way = 'right' | 'down' | 'left' | 'up';

const SIDE_OF: Readonly<Record<Way, Side>> = { right: 'top', down: 'right', left: 'bottom', up: 'left' };

/** The strip of one side of a border; its length runs along the side, even where the side is shorter than the border is wide. */
function strip(border: Border, index: number, box: Box, way: Way): SettingPiece {
  const level = way === 'right' || way === 'left';
  return {
    ...boxPiece('border', border.fabric, box, index),
    grain: level ? 0 : 90,
    length: level ? box.width : box.height,
    width: level ? box.height : box.width,
    side: SIDE_OF[way],
  };
}

function mitred(border: Border, index: number, inner: Box, outer: Box): SettingPiece[] {
  const [a, b, c, d] = boxOutline(outer) as [Outline[0], Outline[0], Outline[0], Outline[0]];
  const [e, f, g, h] = boxOutline(inner) as [Outline[0], Outline[0], Outline[0], Outline[0]];
  const { side, end } = borderWidths(border);
  const piece = (
    side: Side,
    outline: Outline,
    grain: Degrees,
    length: Inches,
    width: Inches,
  ): SettingPiece => {
    return { part: 'border', fabric: border.fabric, outline, grain, length, width, border: index, side };
  };
  return [
    piece('left', [a!, e!, h!, d!], 90, outer.height, side),
    piece('right', [b!, c!, g!, f!], 90, outer.height, side),
    piece('top', [a!, b!, f!, e!], 0, outer.width, end),
    piece('bottom', [d!, h!, g!, c!], 0, outer.width, end),
  ];
}

/**
 * The pieces of a pieced border, clockwise from the top left: top, right, bottom, left. Along the border each takes the
 * finished width of its strip (cut width less two seams); the last one of a side is cut short where it does not fit.
 */
function keyed(
  keys: NonNullable<Border['keys']>,
  index: number,
  runs: readonly { readonly box: Box; readonly way: Way }[],
  seam: Inches,
): SettingPiece[] {
  let next = 0;
  const round: readonly Way[] = ['right', 'down', 'left', 'up'];
  return round.flatMap((way) => {
    const { box } = runs.find((run) => run.way === way)!;
    const long = way === 'right' || way === 'left' ? box.width : box.height;
    const pieces: SettingPiece[] = [];
    let at = 0;
    while (long - at > 1e-6) {
      const key = keys[next % keys.length]!;
      next += 1;
      const size = Math.min(finishedWidth(key.width, seam), long - at);
      // A remainder of less than 1e-6 is a rounding error; the piece takes it.
      const shown = long - at - size < 1e-6 ? long - at : size;
      const piece = boxPiece('border', key.fabric, keyBox(box, way, at, shown), index);
      // The strip is cut across, so its length runs across the border.
      const level = way === 'right' || way === 'left';
      pieces.push({
        ...piece,
        side: SIDE_OF[way],
        grain: level ? 90 : 0,
        length: level ? box.height : box.width,
        width: shown,
      });
      at += shown;
    }
    return pieces;
  });
}

function keyBox(box: Box, way: Way, at: Inches, size: Inches): Box {
  switch (way) {
    case 'right':
      return { ...box, x: box.x + at, width: size };
    case 'left':
      return { ...box, x: box.x + box.width - at - size, width: size };
    case 'down':
      return { ...box, y: box.y + at, height: size };
    case 'up':
      return { ...box, y: box.y + box.height - at - size, height: size };
  }
}
