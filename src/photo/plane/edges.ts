// Edges of a picture: how steeply its colours change and in which direction, and the straight lines they lie on.
import { blankPlane, type Plane } from '../pixels/pixels';
import { blurred, sampleInto } from '../pixels/sample';

/** One edge point: where, the direction of change (unit normal), how steep. */
export interface Edges {
  readonly width: number;
  readonly height: number;
  readonly count: number;
  readonly x: Float32Array;
  readonly y: Float32Array;
  readonly nx: Float32Array;
  readonly ny: Float32Array;
  readonly strength: Float32Array;
}

/** The steepness of all channels together and its direction, by the structure tensor: channels are strength, nx, ny. */
function gradient(plane: Plane): Plane {
  const { width, height, channels, data } = plane;
  const field = blankPlane(width, height, 3);
  for (let row = 1; row < height - 1; row += 1) {
    for (let column = 1; column < width - 1; column += 1) {
      const at = (row * width + column) * channels;
      let [xx, xy, yy] = [0, 0, 0];
      for (let channel = 0; channel < channels; channel += 1) {
        const dx = data[at + channels + channel]! - data[at - channels + channel]!;
        const dy = data[at + width * channels + channel]! - data[at - width * channels + channel]!;
        xx += dx * dx;
        xy += dx * dy;
        yy += dy * dy;
      }
      const apart = Math.sqrt((xx - yy) ** 2 + 4 * xy * xy);
      const turn = 0.5 * Math.atan2(2 * xy, xx - yy);
      const to = (row * width + column) * 3;
      field.data[to] = Math.sqrt((xx + yy + apart) / 2);
      field.data[to + 1] = Math.cos(turn);
      field.data[to + 2] = Math.sin(turn);
    }
  }
  return field;
}

/** Edge points: where the change is steepest along its own direction, and steeper than `least`. */
export function edgesOf(plane: Plane, least: number): Edges {
  const { width, height } = plane;
  const { data } = gradient(plane);
  const found: number[] = [];
  const strengthAt = (x: number, y: number) => data[(Math.round(y) * width + Math.round(x)) * 3]!;
  for (let row = 2; row < height - 2; row += 1) {
    for (let column = 2; column < width - 2; column += 1) {
      const at = (row * width + column) * 3;
      const strength = data[at]!;
      if (strength < least) continue;
      const [nx, ny] = [data[at + 1]!, data[at + 2]!];
      const reach = 1 / Math.max(Math.abs(nx), Math.abs(ny));
      const before = strengthAt(column - nx * reach, row - ny * reach);
      const after = strengthAt(column + nx * reach, row + ny * reach);
      if (strength < before || strength <= after) continue;
      const bend = before - 2 * strength + after;
      const off = bend < 0 ? (0.5 * reach * (before - after)) / bend : 0;
      found.push(column + 0.5 + nx * off, row + 0.5 + ny * off, nx, ny, strength);
    }
  }
  const count = found.length / 5;
  const part = (offset: number) => Float32Array.from({ length: count }, (_, at) => found[at * 5 + offset]!);
  return { width, height, count, x: part(0), y: part(1), nx: part(2), ny: part(3), strength: part(4) };
}

/**
 * The same edges, each as strong as the colours some pixels to its two sides differ: lines drawn on a ground, as on a mat, count for
 * little, edges between two surfaces keep their strength.
 */
export function betweenSurfaces(edges: Edges, plane: Plane): Edges {
  const soft = blurred(plane, 1.6);
  const [one, other] = [new Float32Array(3), new Float32Array(3)];
  const strength = edges.strength.map((steep, point) => {
    const [x, y, nx, ny] = [edges.x[point]!, edges.y[point]!, edges.nx[point]!, edges.ny[point]!];
    sampleInto(soft, x + APART * nx, y + APART * ny, one, 0);
    sampleInto(soft, x - APART * nx, y - APART * ny, other, 0);
    return Math.min(steep, Math.hypot(one[0]! - other[0]!, one[1]! - other[1]!, one[2]! - other[2]!));
  });
  return { ...edges, strength };
}

/** The `most` strongest edge points: where all of a picture is busy, those of its ground would hide the rest. */
export function strongest(edges: Edges, most: number): Edges {
  if (edges.count <= most) return edges;
  const bar = edges.strength.toSorted()[edges.count - most]!;
  const kept = (part: Float32Array) => part.filter((_, point) => edges.strength[point]! >= bar);
  const [x, y, nx, ny, strength] = [edges.x, edges.y, edges.nx, edges.ny, edges.strength].map(kept) as [Float32Array, Float32Array, Float32Array, Float32Array, Float32Array]; // biome-ignore format: parts
  return { ...edges, count: x.length, x, y, nx, ny, strength };
}

/** Pixels to each side of an edge at which surfaces are compared. */
const APART = 4.5;

/** A line that many edge points lie on. */
export interface EdgeLine {
  readonly nx: number;
  readonly ny: number;
  readonly off: number;
  readonly votes: number;
}

const ANGLES = 180;

/**
 * The straightest long edges, strongest first, by the Hough transform with the direction of each edge point. `loose` is the
 * width in pixels over which points count for one line.
 */
export function linesOf(edges: Edges, most: number, loose = 2): EdgeLine[] {
  const reach = Math.hypot(edges.width, edges.height);
  const offs = Math.ceil((2 * reach) / loose) + 1;
  const votes = new Float32Array(ANGLES * offs);
  const cos = Float64Array.from({ length: ANGLES }, (_, at) => Math.cos((at * Math.PI) / ANGLES));
  const sin = Float64Array.from({ length: ANGLES }, (_, at) => Math.sin((at * Math.PI) / ANGLES));
  for (let point = 0; point < edges.count; point += 1) {
    const turn = Math.atan2(edges.ny[point]!, edges.nx[point]!);
    const near = Math.round((turn * ANGLES) / Math.PI);
    const weight = Math.min(1, edges.strength[point]! / 0.12);
    for (let step = -3; step <= 3; step += 1) {
      const angle = (((near + step) % ANGLES) + ANGLES) % ANGLES;
      const off = (edges.x[point]! * cos[angle]! + edges.y[point]! * sin[angle]! + reach) / loose;
      const whole = Math.floor(off);
      const part = off - whole;
      votes[angle * offs + whole]! += weight * (1 - part);
      votes[angle * offs + whole + 1]! += weight * part;
    }
  }
  return peaks(votes, offs, most).map(({ angle, off, votes: count }) => ({
    nx: cos[angle]!,
    ny: sin[angle]!,
    off: off * loose - reach,
    votes: count,
  }));
}

function peaks(
  votes: Float32Array,
  offs: number,
  most: number,
): { angle: number; off: number; votes: number }[] {
  const found: { angle: number; off: number; votes: number }[] = [];
  for (let angle = 0; angle < ANGLES; angle += 1) {
    for (let off = 2; off < offs - 2; off += 1) {
      const here = votes[angle * offs + off]!;
      if (here < 8 || !isPeak(votes, offs, angle, off, here)) continue;
      const [before, after] = [votes[angle * offs + off - 1]!, votes[angle * offs + off + 1]!];
      const bend = before - 2 * here + after;
      found.push({ angle, off: off + (bend < 0 ? (0.5 * (before - after)) / bend : 0), votes: here });
    }
  }
  return found.sort((one, other) => other.votes - one.votes).slice(0, most);
}

function isPeak(votes: Float32Array, offs: number, angle: number, off: number, here: number): boolean {
  for (let da = -3; da <= 3; da += 1) {
    const turned = angle + da;
    const other = ((turned % ANGLES) + ANGLES) % ANGLES;
    for (let step = -2; step <= 2; step += 1) {
      if (da === 0 && step === 0) continue;
      // Past 0° the same line has its offset the other way round.
      const at = other === turned ? off + step : offs - 1 - off + step;
      if (at < 0 || at >= offs) continue;
      const there = votes[other * offs + at]!;
      if (there > here || (there === here && (da < 0 || (da === 0 && step < 0)))) return false;
    }
  }
  return true;
}
