// Sews a top by its steps as a maker would: takes pieces off the cutting list at their cut sizes, lays raw edge on raw edge,
// takes a seam off both, and trims where a step says so. It knows nothing of where the pieces lie in the drawing.
//
// A line is sewn in a frame of its own: x along it, y across it towards the lines that come after.

import { sewingSteps } from '../../../src/cutting/sewing/sewingSteps';
import type { Corner, CutPiece, Joined, Line, Part, SewingStep } from '../../../src/cutting/sewing/step';
import type { NeededPiece } from '../../../src/cutting/yardage/neededPiece';
import { settingPieces } from '../../../src/cutting/yardage/settingPieces';
import type { Point } from '../../../src/geometry/point';
import type { SettingPiece } from '../../../src/geometry/settingPiece';
import { unfinishedBlock } from '../../../src/geometry/wedge';
import type { Project } from '../../../src/model/project';

/** One piece or block in the top: what shows of it, and what it is. */
export interface Sewn {
  readonly of: SettingPiece | number;
  /** Cut off at every seam, not yet at the edge of the top. */
  shows: Point[];
}

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export interface SewnTop {
  readonly parts: readonly Sewn[];
  /** Raw edges of the top. */
  readonly raw: Box;
  /** How many pieces were taken of each row of the cutting list. */
  readonly taken: ReadonlyMap<number, number>;
}

/** What a ruler shows no better: the lists are rounded up to a sixteenth or a millimetre. */
export function rulerStep(project: Project): number {
  return project.preferences.unit === 'in' ? 1 / 16 : 0.1 / 2.54;
}

/** Throws where two edges do not fit, or a row has no piece left. */
export function sew(project: Project, steps: readonly SewingStep[] = sewingSteps(project)): SewnTop {
  return new Maker(project).sewAll(steps);
}

interface SewnLine {
  readonly parts: { part: Part; sewn: Sewn; raw: Box }[];
  /** Seams across the line by their half place. */
  readonly seams: Map<number, number>;
  readonly number: number;
  readonly isRow: boolean;
  top: number;
  bottom: number;
}

class Maker {
  private readonly project: Project;
  private readonly seam: number;
  private readonly list: NeededPiece[];
  private readonly taken = new Map<number, number>();
  private readonly rows = new Map<number, SewnLine>();
  private readonly slack: number;
  private lines: SewnLine[] = [];
  private parts: Sewn[] = [];
  private raw: Box = { left: 0, top: 0, right: 0, bottom: 0 };

  constructor(project: Project) {
    this.project = project;
    this.seam = project.wedge.outerSeam;
    this.list = settingPieces(project);
    // One piece may be so much too long, and as many as lie beside one whole strip.
    this.slack = rulerStep(project) + 1e-9;
  }

  sewAll(steps: readonly SewingStep[]): SewnTop {
    if (!steps.some((step) => step.does === 'rows')) this.layRowsOfOne(steps);
    for (const step of steps) {
      if (step.does === 'rows' || step.does === 'sashing') {
        for (const line of step.lines) this.sewLine(line, step.does === 'rows');
      } else if (step.does === 'join') this.join(step.joined, step.slanted);
      else if (step.does === 'corners') {
        if (this.lines.length === 0) this.join([], true);
        for (const corner of step.corners) this.sewCorner(corner);
      } else if (step.does === 'trim') this.trim(step);
      else this.sewBorder(step);
    }
    if (this.parts.length === 0) this.finishStraight();
    return { parts: this.parts, raw: this.raw, taken: this.taken };
  }

  /** A single block, or rows of single blocks: nothing is sewn to rows. */
  private layRowsOfOne(steps: readonly SewingStep[]): void {
    if (steps.some((step) => step.does === 'join')) return;
    if (this.project.wall.cells.length !== 1) throw new Error('rows that no step sews');
    const plain = this.list.findIndex((row) => row.what.say.startsWith('Plain squares'));
    if (plain >= 0) throw new Error('a single plain square');
    this.sewLine({ number: 1, parts: [{ kind: 'block', at: 0, cell: 0 }] }, true);
  }

  private take({ row }: CutPiece): NeededPiece {
    this.taken.set(row, (this.taken.get(row) ?? 0) + 1);
    const piece = this.list[row];
    if (!piece) throw new Error(`no row ${row} in the cutting list`);
    const each = piece.shape === 'quartered' ? 4 : piece.shape === 'halved' ? 2 : 1;
    if (this.taken.get(row)! > piece.count * each) throw new Error(`too few: ${piece.what.say}`);
    return piece;
  }

  private fits(one: number, other: number, what: string, times = 1): void {
    if (Math.abs(one - other) > this.slack * times) throw new Error(`${what}: ${one} against ${other}`);
  }

  private sewLine(line: Line, isRow: boolean): SewnLine {
    const { seam } = this;
    const seams = new Map<number, number>();
    const parts: SewnLine['parts'] = [];
    line.parts.forEach((part, index) => {
      const before = parts.at(-1);
      const cut = this.cutOut(part, index === 0);
      if (!before) {
        parts.push(cut);
        return;
      }
      const at = before.raw.right - seam;
      shift(cut, at - seam - cut.raw.left, this.alongside(before, cut));
      before.sewn.shows = cutOff(before.sewn.shows, { x: 1, y: 0 }, at);
      cut.sewn.shows = cutOff(cut.sewn.shows, { x: -1, y: 0 }, -at);
      seams.set((before.part.at + part.at) / 2, at);
      parts.push(cut);
    });
    const square = parts.filter(({ part }) => part.kind !== 'triangle');
    const top = Math.min(...square.map(({ raw }) => raw.top));
    const bottom = Math.max(...square.map(({ raw }) => raw.bottom));
    // The points that stick out beside the row are cut off.
    for (const { sewn } of parts) {
      sewn.shows = cutOff(cutOff(sewn.shows, { x: 0, y: 1 }, bottom), { x: 0, y: -1 }, -top);
    }
    const made = { parts, seams, number: line.number, isRow, top, bottom };
    if (isRow) this.rows.set(line.number, made);
    else this.lines.push(made);
    return made;
  }

  /** How far down a part is laid beside the one before it: level edges match, square corners are even. */
  private alongside(before: SewnLine['parts'][number], cut: SewnLine['parts'][number]): number {
    const triangle = [cut, before].find(({ part }) => part.kind === 'triangle');
    const [here, there] = [before.raw, cut.raw];
    if (triangle?.part.kind !== 'triangle') {
      this.fits(here.bottom - here.top, there.bottom - there.top, 'sides of neighbours');
      return (here.top + here.bottom - there.top - there.bottom) / 2;
    }
    const other = triangle === cut ? here : there;
    if (triangle.raw.bottom - triangle.raw.top < other.bottom - other.top - 1e-9) {
      throw new Error('a side triangle is too small');
    }
    return triangle.part.square === 'after' ? here.bottom - there.bottom : here.top - there.top;
  }

  private cutOut(part: Part, atStart: boolean): SewnLine['parts'][number] {
    if (part.kind === 'block') {
      const { width, height } = unfinishedBlock(this.project.wedge);
      return rectangle(part, part.cell, width, height);
    }
    const { width, height, shape } = this.take(part.cut);
    const { piece } = part.cut;
    if (part.kind === 'piece') {
      if (shape !== 'rectangle') throw new Error('a triangle where a rectangle should be');
      return part.height === 'across' ? rectangle(part, piece, width, height) : rectangle(part, piece, height, width);
    }
    if (shape !== 'quartered') throw new Error('a side triangle not cut from a quartered square');
    // A square cut twice gives triangles with the square's side for their long side.
    const leg = width / Math.SQRT2;
    const y = part.square === 'after' ? leg : 0;
    const corner = { x: atStart ? leg : 0, y };
    const shows = [corner, { x: corner.x, y: leg - y }, { x: leg - corner.x, y }];
    return { part, sewn: { of: piece, shows }, raw: { left: 0, top: 0, right: leg, bottom: leg } };
  } // biome-ignore format: short lines

  private lineOf(joined: Joined): SewnLine {
    if (joined.kind === 'strip') return this.sewStrip(joined.line);
    if (joined.kind === 'row') return this.rows.get(joined.line.number) ?? this.sewLine(joined.line, true);
    const at = this.lines.findIndex((line) => line.number === joined.line.number && !line.isRow);
    return at < 0 ? this.sewStrip(joined.line) : this.lines.splice(at, 1)[0]!;
  }

  /** A line of one piece needs no sewing. */
  private sewStrip(line: Line): SewnLine {
    if (line.parts.length !== 1) throw new Error('a line that no step sews');
    this.sewLine(line, false);
    return this.lines.pop()!;
  }

  private join(joined: readonly Joined[], slanted: boolean): void {
    const order = joined.length > 0 ? joined.map((one) => this.lineOf(one)) : [...this.rows.values()];
    if (this.lines.length > 0) throw new Error('sashing left over');
    order.forEach((line, index) => {
      const before = order[index - 1];
      if (!before) return;
      const at = before.bottom - this.seam;
      shiftLine(line, this.alongLine(line, order.slice(0, index), slanted), at - this.seam - line.top);
      for (const { sewn } of before.parts) sewn.shows = cutOff(sewn.shows, { x: 0, y: 1 }, at);
      for (const { sewn } of line.parts) sewn.shows = cutOff(sewn.shows, { x: 0, y: -1 }, -at);
    });
    for (const [index, line] of order.entries()) {
      if (slanted) this.layStrip(line, order[index - 1], order[index + 1]);
    }
    this.lines = order;
  }

  /** How far a line is moved along the ones before it: seams of one place on each other, else its ends even. */
  private alongLine(line: SewnLine, before: readonly SewnLine[], slanted: boolean): number {
    const sewn = before.findLast(({ seams }) => seams.size > 0);
    const shared = [...line.seams.keys()].filter((key) => sewn?.seams.has(key));
    const moves = shared.map((key) => sewn!.seams.get(key)! - line.seams.get(key)!);
    for (const move of moves) this.fits(move, moves[0]!, 'seams that should meet', line.parts.length);
    if (slanted) {
      if (moves.length === 0 && line.seams.size > 0 && sewn) throw new Error('no seam to lay the row by');
      return moves[0] ?? 0;
    }
    const [here, there] = [endsOf(before.at(-1)!), endsOf(line)];
    const most = Math.max(line.parts.length, ...before.map(({ parts }) => parts.length));
    this.fits(here.right - here.left, there.right - there.left, 'lengths of rows', most + 1);
    return (here.left + here.right - there.left - there.right) / 2;
  }

  /** A strip on point reaches from the outermost piece of sashing to the outermost one of the rows beside it. */
  private layStrip(line: SewnLine, before: SewnLine | undefined, after: SewnLine | undefined): void {
    if (line.seams.size > 0 || line.isRow) return;
    const beside = [before, after].flatMap((row) => row?.parts ?? []);
    const sashing = beside.filter(({ part }) => part.kind === 'piece' && part.cut.piece.part === 'sashing');
    const left = Math.min(...sashing.map(({ raw }) => raw.left));
    const right = Math.max(...sashing.map(({ raw }) => raw.right));
    const ends = endsOf(line);
    this.fits(ends.right - ends.left, right - left, 'a long strip', sashing.length * 2 + 1);
    shiftLine(line, (left + right - ends.left - ends.right) / 2, 0);
  }

  private sewCorner({ cut, on }: Corner): void {
    const { width, shape } = this.take(cut);
    if (shape !== 'halved') throw new Error('a setting corner not cut from a halved square');
    // Half a square: the cut is its long side, its square corner half as far off.
    const half = width / Math.SQRT2;
    const last = on === 'last';
    if (typeof on !== 'object') {
      const line = last ? this.lines.at(-1)! : this.lines[0]!;
      const rows = this.lines.filter(({ isRow }) => isRow);
      const row = last ? rows.at(-1)! : rows[0]!;
      const { raw } = row.parts.find(({ part }) => isSquare(part))!;
      const out = last ? 1 : -1;
      const edge = last ? line.bottom : line.top;
      const at = edge - out * this.seam;
      const middle = (raw.left + raw.right) / 2;
      const base = at - out * this.seam;
      const shows = [{ x: middle - half, y: base }, { x: middle + half, y: base }, { x: middle, y: base + out * half }];
      this.cutAlong(line.parts.map(({ sewn }) => sewn), { x: 0, y: out }, at);
      this.parts.push({ of: cut.piece, shows: cutOff(shows, { x: 0, y: -out }, -out * at) });
      return;
    }
    const row = this.lines.find(({ isRow, number }) => isRow && number === on.row)!;
    const end = on.end === 'start' ? row.parts[0]! : row.parts.at(-1)!;
    if (end.part.kind === 'triangle') throw new Error('a setting corner on a side triangle');
    const out = on.end === 'start' ? -1 : 1;
    const edge = on.end === 'start' ? end.raw.left : end.raw.right;
    const at = edge - out * this.seam;
    const middle = (end.raw.top + end.raw.bottom) / 2;
    const base = at - out * this.seam;
    const beside = this.lines.flatMap(({ parts }) => parts.map(({ sewn }) => sewn)).filter(({ shows }) => {
      return shows.some(({ y }) => y > middle - half && y < middle + half);
    });
    this.cutAlong(beside, { x: out, y: 0 }, at);
    const shows = [{ x: base, y: middle - half }, { x: base, y: middle + half }, { x: base + out * half, y: middle }];
    this.parts.push({ of: cut.piece, shows: cutOff(shows, { x: -out, y: 0 }, -out * at) });
  } // biome-ignore format: triangles

  private cutAlong(parts: readonly Sewn[], away: Point, at: number): void {
    for (const sewn of parts) sewn.shows = cutOff(sewn.shows, away, away.x + away.y < 0 ? -at : at);
  }

  private finishStraight(): void {
    if (this.lines.length === 0) this.join([], false);
    this.parts = this.lines.flatMap(({ parts }) => parts.map(({ sewn }) => sewn));
    const ends = this.lines.map(endsOf);
    const middle = (values: number[]) => (Math.min(...values) + Math.max(...values)) / 2;
    this.raw = {
      left: middle(ends.map(({ left }) => left)),
      right: middle(ends.map(({ right }) => right)),
      top: this.lines[0]!.top,
      bottom: this.lines.at(-1)!.bottom,
    };
  }

  private trim({ beyond, points }: Extract<SewingStep, { does: 'trim' }>): void {
    const lines = this.lines.flatMap(({ parts }) => parts);
    this.parts.push(...lines.map(({ sewn }) => sewn));
    // The top is turned so that its slanted rows lie aslant.
    for (const sewn of this.parts) {
      sewn.shows = sewn.shows.map(({ x, y }) => ({ x: (x - y) * Math.SQRT1_2, y: (x + y) * Math.SQRT1_2 }));
    }
    const corners = lines.filter(({ part }) => isSquare(part) && (part.kind === 'block') === (points === 'blocks'));
    const all = corners.flatMap(({ sewn }) => sewn.shows);
    const [xs, ys] = [all.map(({ x }) => x), all.map(({ y }) => y)];
    this.raw = {
      left: Math.min(...xs) - beyond,
      right: Math.max(...xs) + beyond,
      top: Math.min(...ys) - beyond,
      bottom: Math.max(...ys) + beyond,
    };
    for (const sewn of this.parts) sewn.shows = cutToBox(sewn.shows, this.raw);
  } // biome-ignore format: one line

  private sewBorder(step: Extract<SewingStep, { does: 'border' }>): void {
    if (this.parts.length === 0) this.finishStraight();
    if (step.corners === 'mitred') {
      this.sewMitred(step);
      return;
    }
    for (const { side, parts } of step.runs) {
      const level = side === 'top' || side === 'bottom';
      // Clockwise: along the run from its beginning.
      const line = parts.map((cut, index): Part => {
        return { kind: 'piece', at: index, cut, height: level ? 'across' : 'along' };
      });
      const run = this.sewLine({ number: 0, parts: line }, false);
      this.lines.pop();
      this.sewOn(run, side);
    }
  }

  private sewOn(run: SewnLine, side: 'top' | 'right' | 'bottom' | 'left'): void {
    const { seam, raw } = this;
    const wide = run.bottom - run.top;
    const { left, right } = endsOf(run);
    const level = side === 'top' || side === 'bottom';
    const edge = level ? raw.right - raw.left : raw.bottom - raw.top;
    this.fits(right - left, edge, `border at the ${side}`, run.parts.length + this.across());
    const over = wide - 2 * seam;
    // From the run's own frame, its outer side up: turned about to its side, its middle on the middle.
    const along = (x: number) => x - (left + right) / 2;
    const out = (y: number) => run.bottom - y;
    const middle = { x: (raw.left + raw.right) / 2, y: (raw.top + raw.bottom) / 2 };
    const put = ({ x, y }: Point): Point => {
      const [a, o] = [along(x), out(y) - 2 * seam];
      if (side === 'top') return { x: middle.x + a, y: raw.top - o };
      if (side === 'right') return { x: raw.right + o, y: middle.y + a };
      if (side === 'bottom') return { x: middle.x - a, y: raw.bottom + o };
      return { x: raw.left - o, y: middle.y - a };
    };
    const away = AWAY[side];
    const at = { top: -raw.top - seam, bottom: raw.bottom - seam, left: -raw.left - seam, right: raw.right - seam }[side];
    for (const sewn of this.parts) sewn.shows = cutOff(sewn.shows, away, at);
    for (const { sewn } of run.parts) {
      sewn.shows = cutOff(sewn.shows.map(put), { x: -away.x, y: -away.y }, -at);
      this.parts.push(sewn);
    }
    this.raw = { ...raw, [side]: raw[side] + (away.x + away.y) * over };
  } // biome-ignore format: one table

  /** Pieces side by side from edge to edge at most. */
  private across(): number {
    const { wall, setting } = this.project;
    return 2 * (wall.rows + wall.columns + setting.borders.length) + 4;
  }

  /** All four by their middles, then each corner along the line from the inner to the outer corner. */
  private sewMitred(step: Extract<SewingStep, { does: 'border' }>): void {
    const inner = this.raw;
    const made: { sewn: Sewn; side: keyof typeof AWAY }[] = [];
    let outer = inner;
    for (const { side, parts } of step.runs) {
      const level = side === 'top' || side === 'bottom';
      const [cut] = parts;
      const { width, height } = this.take(cut!);
      const [long, wide] = level ? [width, height] : [height, width];
      const edge = level ? inner.right - inner.left : inner.bottom - inner.top;
      if (long < edge) throw new Error('a mitred strip shorter than the top');
      const middle = level ? (inner.left + inner.right) / 2 : (inner.top + inner.bottom) / 2;
      const [from, to] = [inner[side] - AWAY_SIGN[side] * 2 * this.seam, inner[side] + AWAY_SIGN[side] * (wide - 2 * this.seam)];
      const [near, far] = [middle - long / 2, middle + long / 2];
      const shows = level
        ? [{ x: near, y: from }, { x: far, y: from }, { x: far, y: to }, { x: near, y: to }]
        : [{ x: from, y: near }, { x: from, y: far }, { x: to, y: far }, { x: to, y: near }];
      made.push({ sewn: { of: cut!.piece, shows }, side });
      outer = { ...outer, [side]: to };
    }
    const { seam } = this;
    const grow = (box: Box, by: number): Box => ({ left: box.left - by, top: box.top - by, right: box.right + by, bottom: box.bottom + by });
    const [within, without] = [grow(inner, -seam), grow(outer, -seam)];
    for (const sewn of this.parts) sewn.shows = cutToBox(sewn.shows, within);
    for (const { sewn, side } of made) {
      const away = AWAY[side];
      sewn.shows = cutOff(sewn.shows, { x: -away.x, y: -away.y }, -AWAY_SIGN[side] * within[side]);
      const ends = side === 'top' || side === 'bottom' ? (['left', 'right'] as const) : (['top', 'bottom'] as const);
      for (const end of ends) {
        // The mitre: from the inner corner to the outer one; the strip keeps what lies towards its own middle.
        const across = Math.abs(without[side] - within[side]);
        const along = Math.abs(without[end] - within[end]);
        const normal = { x: AWAY[end].x * across - away.x * along, y: AWAY[end].y * across - away.y * along };
        const level = side === 'top' || side === 'bottom';
        const corner = level ? { x: within[end], y: within[side] } : { x: within[side], y: within[end] };
        sewn.shows = cutOff(sewn.shows, normal, normal.x * corner.x + normal.y * corner.y);
      }
      this.parts.push(sewn);
    }
    this.raw = outer;
  } // biome-ignore format: boxes
}

const AWAY = {
  top: { x: 0, y: -1 },
  bottom: { x: 0, y: 1 },
  left: { x: -1, y: 0 },
  right: { x: 1, y: 0 },
} as const;
const AWAY_SIGN = { top: -1, bottom: 1, left: -1, right: 1 } as const;

/** A square of the wall: a block, or a plain square in its turn. */
function isSquare(part: Part): boolean {
  return part.kind === 'block' || (part.kind === 'piece' && part.cut.piece.part === 'plain');
}

function rectangle(part: Part, of: Sewn['of'], width: number, height: number): SewnLine['parts'][number] {
  const shows = [{ x: 0, y: 0 }, { x: width, y: 0 }, { x: width, y: height }, { x: 0, y: height }];
  return { part, sewn: { of, shows }, raw: { left: 0, top: 0, right: width, bottom: height } };
} // biome-ignore format: a box

function endsOf({ parts }: SewnLine): { left: number; right: number } {
  return { left: parts[0]!.raw.left, right: parts.at(-1)!.raw.right };
}

function shift(one: SewnLine['parts'][number], right: number, down: number): void {
  const { raw, sewn } = one;
  one.raw = {
    left: raw.left + right,
    right: raw.right + right,
    top: raw.top + down,
    bottom: raw.bottom + down,
  };
  sewn.shows = sewn.shows.map(({ x, y }) => ({ x: x + right, y: y + down }));
}

function shiftLine(line: SewnLine, right: number, down: number): void {
  for (const part of line.parts) shift(part, right, down);
  for (const [key, x] of line.seams) line.seams.set(key, x + right);
  line.top += down;
  line.bottom += down;
}

/** What of a convex outline lies where away · point ≤ at. */
function cutOff(points: readonly Point[], away: Point, at: number): Point[] {
  const depth = ({ x, y }: Point) => at - (away.x * x + away.y * y);
  return points.flatMap((point, index) => {
    const next = points[(index + 1) % points.length]!;
    const [here, there] = [depth(point), depth(next)];
    const kept = here >= 0 ? [point] : [];
    if (here * there >= 0) return kept;
    const part = here / (here - there);
    return [...kept, { x: point.x + part * (next.x - point.x), y: point.y + part * (next.y - point.y) }];
  });
}

export function cutToBox(points: readonly Point[], { left, right, top, bottom }: Box): Point[] {
  const sides = [[AWAY.left, -left], [AWAY.right, right], [AWAY.top, -top], [AWAY.bottom, bottom]] as const;
  return sides.reduce<Point[]>((rest, [away, at]) => cutOff(rest, away, at), [...points]);
} // biome-ignore format: four sides
