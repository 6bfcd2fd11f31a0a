// Writes printed and photographed cloth as SVG patterns in inches. cloth/print makes the figures of prints, photos.ts those of
// photographs; figures of one colour share a path here, so that
// a tile has few nodes.
import { meanColour } from '../cloth/likeness';
import { curveThrough } from '../cloth/print/curve';
import { clothAngle, printTile } from '../cloth/print/printTile';
import type { PrintShape, Tone } from '../cloth/print/shape';
import type { Point } from '../geometry/point';
import type { Fabric } from '../model/project';
import { escaped, inchText, short } from './number';
import { groundOf, type HrefOf, NO_HREFS, photoFigures, type TileSize } from './photos';

export interface Pattern {
  readonly id: string;
  /** A whole <pattern> element. */
  readonly markup: string;
}

const patterns = new WeakMap<Fabric, Pattern>();

/**
 * The pattern of a printed or photographed fabric, or null for plain cloth. Its id contains the fabric's id. Prints are cached for
 * each fabric. Who only asks for the id need not know where the pictures are.
 */
export function patternFor(fabric: Fabric, hrefOf: HrefOf = NO_HREFS): Pattern | null {
  const { cloth } = fabric;
  if (cloth.kind === 'photo')
    return patternOf(fabric, cloth.photo, photoFigures(cloth.photo, fabric.colour, hrefOf));
  const tile = printTile(fabric);
  if (!tile) return null;
  let pattern = patterns.get(fabric);
  if (!pattern) {
    pattern = patternOf(fabric, tile, `${groundOf(tile, tile.ground)}${figures(tile.shapes)}`);
    patterns.set(fabric, pattern);
  }
  return pattern;
}

function patternOf(fabric: Fabric, tile: TileSize, content: string): Pattern {
  const id = patternId(fabric);
  const size = `width="${inchText(tile.width)}" height="${inchText(tile.height)}" patternUnits="userSpaceOnUse"`;
  const turn = turnText(clothAngle(fabric, 0));
  return { id, markup: `<pattern id="${id}" ${size}${turn}>${content}</pattern>` };
}

/** The fill of a piece of cloth: a colour, or a reference to a pattern. */
export interface ClothFill {
  readonly fill: string;
  /** The pattern that a turned print needs besides patternFor's; null where it needs none. */
  readonly turned: Pattern | null;
}

/**
 * The fill of a piece whose strip lies `grain` degrees clockwise from the right. A turned print is a second, empty pattern that
 * refers to the figures of the first, so that each direction costs one node.
 */
export function clothFill(fabric: Fabric, grain: number): ClothFill {
  if (fabric.cloth.kind === 'plain') return { fill: fabric.colour, turned: null };
  const base = patternId(fabric);
  const turn = clothAngle(fabric, grain) - clothAngle(fabric, 0);
  if (turn < 1e-9) return { fill: `url(#${base})`, turned: null };
  const id = `${base}-${inchText(turn).replace('.', '_')}`;
  const transform = turnText(clothAngle(fabric, grain));
  return {
    fill: `url(#${id})`,
    turned: { id, markup: `<pattern id="${id}" href="#${base}"${transform}/>` },
  };
}

function patternId(fabric: Fabric): string {
  const safe = fabric.id.replace(/[^A-Za-z0-9-]/gu, (sign) => `_${sign.codePointAt(0)!.toString(16)}_`);
  return `print-${safe}`;
}

function turnText(degrees: number): string {
  return Math.abs(degrees % 360) < 1e-9 ? '' : ` patternTransform="rotate(${inchText(degrees)})"`;
}

/** The paths of shapes; neighbours in painting order that look alike share a path. */
function figures(shapes: readonly PrintShape[]): string {
  const runs: { look: string; paths: string[] }[] = [];
  for (const shape of shapes) {
    const look = lookOf(shape);
    const last = runs[runs.length - 1];
    if (last?.look === look) last.paths.push(shapePath(shape));
    else runs.push({ look, paths: [shapePath(shape)] });
  }
  return runs.map((run) => `<path ${run.look} d="${run.paths.join('')}"/>`).join('');
}

function lookOf(shape: PrintShape): string {
  const colour = escaped(toneColour(shape.tone));
  if (shape.kind !== 'line') return `fill="${colour}"`;
  return `fill="none" stroke="${colour}" stroke-width="${inchText(shape.width)}" stroke-linecap="round" stroke-linejoin="round"`;
}

/** The colour of a tone; threads too fine to tell apart are mixed as light. */
function toneColour(tone: Tone): string {
  return tone.length === 1 ? tone[0]!.hex : meanColour(tone);
}

function pair(point: Point): string {
  return `${short(point.x)} ${short(point.y)}`;
}

function shapePath(shape: PrintShape): string {
  if (shape.kind === 'dot') return dotPath(shape);
  if (shape.kind === 'line') return curvePath(shape.points, false, shape.soft);
  // All outlines run the same way round, because overlapping ones of opposite directions would cancel out.
  const outline = signedArea(shape.outline) < 0 ? shape.outline.toReversed() : shape.outline;
  return `${curvePath(outline, true, shape.soft)}Z`;
}

function dotPath(dot: Extract<PrintShape, { kind: 'dot' }>): string {
  const angle = (dot.turn * Math.PI) / 180;
  const reach = { x: dot.across * Math.cos(angle), y: dot.across * Math.sin(angle) };
  const radii = `${short(dot.across)} ${short(dot.along)} ${short(dot.turn)} 0 1 `;
  const back = pair({ x: dot.at.x + reach.x, y: dot.at.y + reach.y });
  return `M${pair({ x: dot.at.x - reach.x, y: dot.at.y - reach.y })}A${radii}${back}a${radii}${pair({ x: -2 * reach.x, y: -2 * reach.y })}Z`;
}

function curvePath(points: readonly Point[], closed: boolean, soft: boolean): string {
  const curve = curveThrough(points, closed, soft);
  const steps = curve.steps.map(({ control, to }) =>
    control ? `Q${pair(control)} ${pair(to)}` : `L${pair(to)}`,
  );
  return `M${pair(curve.start)}${steps.join('')}`;
}

function signedArea(points: readonly Point[]): number {
  return points.reduce((sum, point, index) => {
    const next = points[(index + 1) % points.length]!;
    return sum + point.x * next.y - next.x * point.y;
  }, 0);
}
