// A print → its tile: the figures of one repeat in inches, wrapped so that tiles join without a break. Kept apart from
// drawing so that balance can measure the same figures.

import type { Point } from '../../geometry/point';
import type { Fabric, Print, PrintMotif } from '../../model/project';
import type { Inches } from '../../model/units';
import { inksOf, type MotifMaker } from './motif';
import { generatorOf } from './scatter';
import { type PrintShape, type PrintTile, wrapped } from './shape';
import { ditsy, dots, leaves, speckle, sprig, stars } from './tossedMotifs';
import { check, crosshatch, gingham, scales, stripe, waves } from './wovenMotifs';

/** `symmetry`: turning the print by this many degrees leaves its look as it was; null where figures lie every way. */
const MOTIFS: Readonly<Record<PrintMotif, { make: MotifMaker; symmetry: number | null }>> = {
  dots: { make: dots, symmetry: null },
  sprig: { make: sprig, symmetry: null },
  stripe: { make: stripe, symmetry: 180 },
  gingham: { make: gingham, symmetry: 90 },
  check: { make: check, symmetry: 90 },
  crosshatch: { make: crosshatch, symmetry: 90 },
  leaves: { make: leaves, symmetry: null },
  scales: { make: scales, symmetry: 360 },
  ditsy: { make: ditsy, symmetry: null },
  speckle: { make: speckle, symmetry: null },
  waves: { make: waves, symmetry: 180 },
  stars: { make: stars, symmetry: null },
};

const tiles = new WeakMap<Fabric, PrintTile>();
/** The same by what is printed: a fabric that was renamed, or comes from a file or another thread, is another object. */
const alike = new Map<string, PrintTile>();
/** So many are kept by what is printed; those made first go first. */
const MOST_ALIKE = 500;

/** The tile of a printed fabric, inches, before the print's own turn; null for plain and photographed cloth. Kept for each fabric. */
export function printTile(fabric: Fabric): PrintTile | null {
  if (fabric.cloth.kind !== 'print') return null;
  let tile = tiles.get(fabric);
  if (!tile) {
    tile = tileAlike(fabric.colour, fabric.cloth.print);
    tiles.set(fabric, tile);
  }
  return tile;
}

function tileAlike(ground: string, print: Print): PrintTile {
  const key = JSON.stringify([ground, print]);
  const tile = alike.get(key) ?? makeTile(ground, print);
  alike.set(key, tile);
  if (alike.size > MOST_ALIKE) alike.delete(alike.keys().next().value!);
  return tile;
}

/**
 * How far a fabric's print must be turned to follow a strip that lies `grain` degrees clockwise: the smallest turn that
 * looks the same, 0 for plain cloth and for figures that lie every way.
 */
function printTurn(fabric: Fabric, grain: number): number {
  const symmetry = symmetryOf(fabric);
  return symmetry === null ? 0 : ((grain % symmetry) + symmetry) % symmetry;
}

/** Turning a fabric by so many degrees leaves its look as it was; null where any turn does. A photograph looks as it lay. */
function symmetryOf({ cloth }: Fabric): number | null {
  if (cloth.kind === 'photo') return 360;
  return cloth.kind === 'print' ? MOTIFS[cloth.print.motif].symmetry : null;
}

/** Degrees clockwise by which the tile of a fabric lies turned on a strip that lies `grain` degrees clockwise. */
export function clothAngle(fabric: Fabric, grain: number): number {
  const { cloth } = fabric;
  const own = cloth.kind === 'print' ? cloth.print.angle : cloth.kind === 'photo' ? cloth.photo.angle : 0;
  return own + printTurn(fabric, grain);
}

function makeTile(ground: string, print: Print): PrintTile {
  const { height, shapes } = MOTIFS[print.motif].make(inksOf(ground, print.inks), generatorOf(print.seed));
  const repeat = print.repeat;
  const scaled = shapes.map((shape) => enlarged(shape, repeat));
  return {
    width: repeat,
    height: repeat * height,
    ground,
    shapes: wrapped(scaled, repeat, repeat * height),
  };
}

function enlarged(shape: PrintShape, by: Inches): PrintShape {
  const grow = (point: Point): Point => ({ x: point.x * by, y: point.y * by });
  if (shape.kind === 'dot') {
    return { ...shape, at: grow(shape.at), across: shape.across * by, along: shape.along * by };
  }
  if (shape.kind === 'area') return { ...shape, outline: shape.outline.map(grow) };
  return { ...shape, points: shape.points.map(grow), width: shape.width * by };
}
