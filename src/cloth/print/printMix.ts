// How much of a print's surface each of its colours covers, sampled from the very figures that are drawn.
import type { Fabric } from '../../model/project';
import { type Curve, curveThrough, flattened } from './curve';
import { printTile } from './printTile';
import { type PrintShape, type PrintTile, shapeBox } from './shape';

/** A colour and its share of the surface, 0 to 1. */
export interface ColourPart {
  readonly hex: string;
  readonly share: number;
}

/** Sample points along the tile's width. */
const SAMPLES = 240;

const mixes = new WeakMap<Fabric | PrintTile, readonly ColourPart[]>();

/**
 * Area shares of the ground and each ink in one repeat, largest first, summing to 1. Threads and dots mixed too fine to see
 * count by their parts. A plain fabric is its colour, a photographed one
 * has the shares that were read from its picture. Kept for each fabric; deterministic.
 */
export function printMix(fabric: Fabric): readonly ColourPart[] {
  let mix = mixes.get(fabric);
  if (!mix) {
    mix = mixOf(fabric);
    mixes.set(fabric, mix);
  }
  return mix;
}

function mixOf(fabric: Fabric): readonly ColourPart[] {
  if (fabric.cloth.kind === 'photo') return fabric.cloth.photo.colours;
  const tile = printTile(fabric);
  if (!tile) return [{ hex: fabric.colour.toLowerCase(), share: 1 }];
  const mix = mixes.get(tile) ?? measured(tile);
  mixes.set(tile, mix);
  return mix;
}

function measured(tile: PrintTile): ColourPart[] {
  const across = SAMPLES;
  const down = Math.max(1, Math.round((SAMPLES * tile.height) / tile.width));
  // For each sample point the last shape that covers it, from 1; 0 is the ground.
  const top = new Uint16Array(across * down);
  tile.shapes.forEach((shape, index) => {
    const covers = coverage(shape);
    const box = shapeBox(shape);
    const column = (x: number) => Math.floor((x / tile.width) * across);
    const row = (y: number) => Math.floor((y / tile.height) * down);
    const lastColumn = Math.min(across - 1, column(box.x + box.width));
    const lastRow = Math.min(down - 1, row(box.y + box.height));
    for (let at = Math.max(0, row(box.y)); at <= lastRow; at += 1) {
      const coversX = covers(((at + 0.5) / down) * tile.height);
      for (let along = Math.max(0, column(box.x)); along <= lastColumn; along += 1) {
        if (coversX(((along + 0.5) / across) * tile.width)) top[at * across + along] = index + 1;
      }
    }
  });
  const hits = new Float64Array(tile.shapes.length + 1);
  for (const index of top) hits[index]! += 1;
  const shares = new Map<string, number>();
  hits.forEach((hit, index) => {
    const tone = index === 0 ? [{ hex: tile.ground, share: 1 }] : tile.shapes[index - 1]!.tone;
    for (const part of tone) {
      const hex = part.hex.toLowerCase();
      shares.set(hex, (shares.get(hex) ?? 0) + (part.share * hit) / top.length);
    }
  });
  return [...shares]
    .map(([hex, share]) => ({ hex, share }))
    .filter((part) => part.share > 0)
    .sort((one, other) => other.share - one.share);
}

/** A test whether points at one height lie on a shape: what the height settles is settled once for the whole row. */
type RowTest = (y: number) => (x: number) => boolean;

function coverage(shape: PrintShape): RowTest {
  if (shape.kind === 'dot') {
    const cos = Math.cos((shape.turn * Math.PI) / 180);
    const sin = Math.sin((shape.turn * Math.PI) / 180);
    return (y) => {
      const dy = y - shape.at.y;
      return (x) => {
        const dx = x - shape.at.x;
        return ((dx * cos + dy * sin) / shape.across) ** 2 + ((dy * cos - dx * sin) / shape.along) ** 2 <= 1;
      };
    };
  }
  if (shape.kind === 'area') return insideOf(curveThrough(shape.outline, true, shape.soft));
  return nearTo(curveThrough(shape.points, false, shape.soft), shape.width / 2);
}

/** Inside by the winding number, as a non-zero fill is drawn. */
function insideOf(curve: Curve): RowTest {
  const points = flattened(curve);
  const edges = points.map((from, index) => ({ from, to: points[(index + 1) % points.length]! }));
  return (y) => {
    const crossing = edges.filter(({ from, to }) => (from.y <= y ? to.y > y : to.y <= y));
    return (x) => {
      let winding = 0;
      for (const { from, to } of crossing) {
        const side = (to.x - from.x) * (y - from.y) - (x - from.x) * (to.y - from.y);
        if (from.y <= y && side > 0) winding += 1;
        else if (from.y > y && side < 0) winding -= 1;
      }
      return winding !== 0;
    };
  };
}

/** Within `reach` of the line, ends rounded. */
function nearTo(curve: Curve, reach: number): RowTest {
  const points = flattened(curve);
  const lines = points.slice(1).map((to, index) => ({ from: points[index]!, to }));
  return (y) => {
    const beside = lines.filter(
      ({ from, to }) => Math.min(from.y, to.y) <= y + reach && Math.max(from.y, to.y) >= y - reach,
    );
    return (x) =>
      beside.some(({ from, to }) => {
        const dx = to.x - from.x;
        const dy = to.y - from.y;
        const long = dx * dx + dy * dy;
        const along =
          long === 0 ? 0 : Math.max(0, Math.min(1, ((x - from.x) * dx + (y - from.y) * dy) / long));
        return (x - from.x - along * dx) ** 2 + (y - from.y - along * dy) ** 2 <= reach * reach;
      });
  };
}
