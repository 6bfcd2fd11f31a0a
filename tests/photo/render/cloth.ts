// The cloth of a picture before it is photographed: a block or a wall laid flat, drawn by the tool's own drawing, with the ridges of its
// seams and creases of shadow, in linear light.
import { Resvg } from '@resvg/resvg-js';
import type { Drawing, HungBlock, Piece } from '../../../src/drawing/drawing';
import { absoluteOutline, drawProject } from '../../../src/drawing/drawProject';
import { drawingToSvg } from '../../../src/drawing/svg';
import { bandOutline } from '../../../src/geometry/block';
import type { Box, Outline, Point } from '../../../src/geometry/point';
import { apothem } from '../../../src/geometry/wedge';
import type { Project } from '../../../src/model/project';
import type { Plane } from '../../../src/photo/pixels/pixels';
import type { Dice } from './dice';
import { linearPlane } from './linearPlane';

/** Flat cloth in linear light: its picture and its size, inches. */
export interface FlatCloth {
  readonly plane: Plane;
  readonly width: number;
  readonly height: number;
  /** Where there is no cloth and the ground shows, inches. */
  readonly holes: readonly Box[];
}

/** The wall alone, without borders; empty cells are as `bare` says. */
export function wallDrawing(project: Project): Drawing {
  return { ...drawProject(project), binding: [], edge: 0 };
}

/**
 * One hanging block by itself, as it lies before it is sewn into the top: for eight wedges with the seam allowance round it, else
 * finished.
 */
export function blockDrawing(project: Project, cell: number, allowance: boolean): Drawing {
  const wall = drawProject(project);
  const hung = wall.blocks.find((one) => one.cell === cell)!;
  const more = allowance && project.wedge.perBlock === 8 ? project.wedge.outerSeam : 0;
  const { width, height } = wall.block;
  const size = { width: width + 2 * more, height: height + 2 * more };
  const alone: HungBlock = {
    ...hung,
    centre: { x: size.width / 2, y: size.height / 2 },
    pieces: more > 0 ? withAllowance(hung.pieces, project, more) : hung.pieces,
  };
  return {
    ...wall,
    ...size,
    block: size,
    blocks: [alone],
    emptyCells: [],
    setting: [],
    binding: [],
    edge: 0,
  };
}

/** Rims on the sides reach further out by the allowance, and corner triangles over them. */
function withAllowance(pieces: readonly Piece[], project: Project, more: number): Piece[] {
  const rim = apothem(project.wedge);
  const { perBlock } = project.wedge;
  const grown = pieces.map((piece): Piece => {
    if (piece.part === 'corner') return { ...piece, outline: grownCorner(piece.outline, more) };
    if (piece.band !== 1) return piece;
    const toward = Math.round(
      (Math.atan2(middle(piece.outline).x, -middle(piece.outline).y) / (2 * Math.PI)) * perBlock,
    );
    if (toward % 2 !== 0) return piece;
    const inner =
      Math.min(...piece.outline.map(({ x, y }) => Math.hypot(x, y))) * Math.cos(Math.PI / perBlock);
    return { ...piece, outline: bandOutline(toward, rim + more, inner, perBlock) };
  });
  return [
    ...grown.filter((piece) => piece.part !== 'corner'),
    ...grown.filter((piece) => piece.part === 'corner'),
  ];
}

function grownCorner(outline: Outline, more: number): Point[] {
  const right = outline.reduce((one, other) =>
    Math.hypot(other.x, other.y) > Math.hypot(one.x, one.y) ? other : one,
  );
  const [sx, sy] = [Math.sign(right.x), Math.sign(right.y)];
  const leg = Math.max(...outline.map(({ x }) => Math.abs(x - right.x)));
  const tip = { x: right.x + sx * more, y: right.y + sy * more };
  const long = leg + 2 * more;
  return [tip, { x: tip.x - sx * long, y: tip.y }, { x: tip.x, y: tip.y - sy * long }];
}

function middle(outline: Outline): Point {
  const sum = outline.reduce((all, { x, y }) => ({ x: all.x + x, y: all.y + y }), { x: 0, y: 0 });
  return { x: sum.x / outline.length, y: sum.y / outline.length };
}

/** Draws it `across` pixels wide, with ridges and creases. */
export function flatCloth(drawing: Drawing, across: number, dice: Dice): FlatCloth {
  const holes = drawing.emptyCells.map(({ box }) => box);
  const svg = drawingToSvg(drawing);
  const picture = new Resvg(svg, {
    fitTo: { mode: 'width', value: Math.round(across) },
    font: { loadSystemFonts: false },
  }).render();
  const plane = linearPlane({
    width: picture.width,
    height: picture.height,
    data: new Uint8ClampedArray(picture.pixels),
  });
  const cloth = { plane, width: drawing.width, height: drawing.height, holes };
  ridges(cloth, drawing, dice);
  creases(cloth, dice);
  return cloth;
}

/** Beside each seam one side stands up and catches light or shade. */
function ridges(cloth: FlatCloth, drawing: Drawing, dice: Dice): void {
  const strength = dice.between(0, 0.14);
  const wide = dice.between(0.03, 0.09);
  const light = dice.between(0, 2 * Math.PI);
  for (const hung of drawing.blocks) {
    for (const piece of hung.pieces) {
      const outline = absoluteOutline(hung, piece);
      outline.forEach((from, at) => {
        const to = outline[(at + 1) % outline.length]!;
        const across = Math.atan2(to.y - from.y, to.x - from.x) + Math.PI / 2;
        const shade = strength * (0.4 + 0.6 * dice.next()) * Math.cos(across - light) - strength * 0.3;
        alongLine(
          cloth,
          from,
          to,
          3 * wide,
          (off) => 1 + shade * Math.exp(-0.5 * ((off - wide) / (wide * 0.7)) ** 2),
        );
      });
    }
  }
}

/** Folds that were not pressed out: a dark line with a lighter one beside it. */
function creases(cloth: FlatCloth, dice: Dice): void {
  const { width, height } = cloth;
  const many = dice.below(4);
  for (let crease = 0; crease < many; crease += 1) {
    const turn = dice.between(0, Math.PI);
    const long = Math.hypot(width, height);
    const [x, y] = [dice.between(0.1, 0.9) * width, dice.between(0.1, 0.9) * height];
    const from = { x: x - Math.cos(turn) * long, y: y - Math.sin(turn) * long };
    const to = { x: x + Math.cos(turn) * long, y: y + Math.sin(turn) * long };
    const wide = dice.between(0.1, 0.35);
    const dark = dice.between(0.05, 0.3);
    alongLine(
      cloth,
      from,
      to,
      4 * wide,
      (off) =>
        1 -
        dark * Math.exp(-0.5 * (off / wide) ** 2) +
        0.5 * dark * Math.exp(-0.5 * ((off - 1.5 * wide) / wide) ** 2),
    );
  }
}

/** Multiplies light near a line, by its distance in inches to the left (below 0) or right of it. */
function alongLine(
  cloth: FlatCloth,
  from: Point,
  to: Point,
  reach: number,
  by: (off: number) => number,
): void {
  const { plane, width } = cloth;
  const scale = plane.width / width;
  const long = Math.hypot(to.x - from.x, to.y - from.y);
  if (long < 1e-6) return;
  const [dx, dy] = [(to.x - from.x) / long, (to.y - from.y) / long];
  const span = (one: number, other: number, most: number) => [
    Math.max(0, Math.floor((Math.min(one, other) - reach) * scale)),
    Math.min(most - 1, Math.ceil((Math.max(one, other) + reach) * scale)),
  ];
  const [left, right] = span(from.x, to.x, plane.width) as [number, number];
  const [top, bottom] = span(from.y, to.y, plane.height) as [number, number];
  for (let row = top; row <= bottom; row += 1) {
    for (let column = left; column <= right; column += 1) {
      const x = (column + 0.5) / scale - from.x;
      const y = (row + 0.5) / scale - from.y;
      const along = x * dx + y * dy;
      const off = y * dx - x * dy;
      if (along < 0 || along > long || Math.abs(off) > reach) continue;
      const factor = by(off);
      const at = (row * plane.width + column) * 3;
      for (let channel = 0; channel < 3; channel += 1) plane.data[at + channel]! *= factor;
    }
  }
}
