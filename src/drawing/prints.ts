// Writes printed cloth as SVG patterns in inches. cloth/print makes the figures; figures of one colour share a path here, so that
// a tile has few nodes.
import { meanColour } from '../cloth/likeness';
import { curveThrough } from '../cloth/print/curve';
import { printTile, printTurn } from '../cloth/print/printTile';
import type { PrintShape, Tone } from '../cloth/print/shape';
import type { Point } from '../geometry/point';
import type { Fabric } from '../model/project';
import { escaped, inchText } from './number';

export interface Pattern {
  readonly id: string;
  /** A whole <pattern> element. */
  readonly markup: string;
}

const patterns = new WeakMap<Fabric, Pattern>();

/** The pattern of a printed fabric, or null for plain cloth. Its id contains the fabric's id. Cached for each fabric. */
export function patternFor(fabric: Fabric): Pattern | null {
  const tile = printTile(fabric);
  if (!tile || fabric.cloth.kind !== 'print') return null;
  let pattern = patterns.get(fabric);
  if (!pattern) {
    const id = patternId(fabric);
    const width = inchText(tile.width);
    const height = inchText(tile.height);
    // The ground runs past the tile on all sides: a rounded edge would show as a hairline grid.
    const ground = `<path fill="${tile.ground}" d="M${short(-tile.width)} ${short(-tile.height)}h${short(3 * tile.width)}v${short(3 * tile.height)}h${short(-3 * tile.width)}z"/>`;
    const size = `width="${width}" height="${height}" patternUnits="userSpaceOnUse"`;
    const turn = turnText(fabric.cloth.print.angle);
    pattern = {
      id,
      markup: `<pattern id="${id}" ${size}${turn}>${ground}${figures(tile.shapes)}</pattern>`,
    };
    patterns.set(fabric, pattern);
  }
  return pattern;
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
  const base = patternFor(fabric);
  if (!base || fabric.cloth.kind !== 'print') return { fill: fabric.colour, turned: null };
  const turn = printTurn(fabric, grain);
  if (turn < 1e-9) return { fill: `url(#${base.id})`, turned: null };
  const id = `${base.id}-${inchText(turn).replace('.', '_')}`;
  const transform = turnText(fabric.cloth.print.angle + turn);
  return {
    fill: `url(#${id})`,
    turned: { id, markup: `<pattern id="${id}" href="#${base.id}"${transform}/>` },
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

/** A length of a print as text, to a ten-thousandth of an inch. */
function short(inches: number): string {
  return String(Math.round(inches * 1e4) / 1e4 + 0);
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
