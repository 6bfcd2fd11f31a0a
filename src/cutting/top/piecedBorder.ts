// A pieced border from the strips that are left over: how long a border they make when cut across, whether whole pieces fit
// the runs, what spacer would make them fit, and the pieces dealt round the border. Its outlines are geometry/borders'.

import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { borderedBy, borderRuns } from '../../geometry/borders';
import { layOut } from '../../geometry/setting';
import { cutWidth, finishedWidth } from '../../geometry/stripSet';
import { downToStep, HAIR, isKeyTooNarrow, piecesIn, total, USUAL } from '../../model/lengths';
import type { Border, FabricId, Project, StripOnHand } from '../../model/project';
import { CENTIMETRES_PER_INCH, type Inches } from '../../model/units';
import { stripKey, stripsLeftBeside } from '../sets/stripsUnused';

type Key = NonNullable<Border['keys']>[number];

/** Pieces of one fabric and cut width that the strips left over give. */
export interface KeyStock {
  readonly fabric: FabricId;
  /** Cut width of the strip, and what it takes of the border's length: two seams less. */
  readonly width: Inches;
  readonly finished: Inches;
  readonly count: number;
}

export interface PiecedBorderPlan {
  readonly stock: readonly KeyStock[];
  /** Length of border the strips left over make, and length the border asks for, finished inches. */
  readonly available: Inches;
  readonly needed: Inches;
  /** Whether whole pieces fit every run. */
  readonly fits: boolean;
  /** Pieces clockwise from the top left; null where too little is left. The last of a run is cut off unless `fits`. */
  readonly keys: readonly Key[] | null;
  /** Finished widths of a plain border inside this one with which whole pieces would fit; null where they do, or none helps. */
  readonly spacer: { readonly side: Inches; readonly end: Inches } | null;
  /** The widest this border could be, in quarter inches or half centimetres, with what is left; 0 where nothing is. */
  readonly widest: Inches;
}

/** A difference of lengths that comes of adding and halving them. */
const SAME: Inches = 1e-6;
/** Nothing finer is cut: a tenth of a millimetre. */
const LEAST_UNIT: Inches = 0.01 / CENTIMETRES_PER_INCH;
const LEAST_SPACER: Inches = 0.5;
const MOST_SPACER: Inches = 4;
const WIDEST: Inches = 12;

/** What border `index` would be, pieced from what is left. The seed deals the pieces; one seed always deals the same. */
export function piecedBorder(project: Project, index: number, seed: number): PiecedBorderPlan {
  const border = project.setting.borders[index];
  if (!border) throw new Error(`piecedBorder: no border ${index}`);
  const stock = keyStock(project, index, border.width);
  const runs = runsOf(project, index, border.width);
  const needed = total(runs);
  const fits = runs.every((run) => isWhole(run, unitOf(stock)));
  return {
    stock,
    available: lengthOf(stock),
    needed,
    fits,
    keys: dealt(stock, runs, seed),
    spacer: fits ? null : spacerFor(project, index, unitOf(stock)),
    widest: widestOf(project, index),
  };
}

/** Pieces from the strips no set uses, across a border of this finished width; other pieced borders have taken theirs. */
function keyStock(project: Project, index: number, width: Inches): KeyStock[] {
  const { outerSeam: seam } = project.wedge;
  const stock = new Map<string, KeyStock>();
  for (const row of rowsLeft(project, index)) {
    const each = piecesIn(row.length, cutWidth(width, seam));
    const finished = finishedWidth(row.width, seam);
    if (each * row.count === 0 || isKeyTooNarrow(row.width, seam)) continue;
    const key = stripKey(row.fabric, row.width);
    const count = (stock.get(key)?.count ?? 0) + each * row.count;
    stock.set(key, { fabric: row.fabric, width: row.width, finished, count });
  }
  return [...stock.values()];
}

function rowsLeft(project: Project, index: number): StripOnHand[] {
  const rows = stripsLeftBeside(project.stripsOnHand, project.stripSets);
  project.setting.borders.forEach((other, at) => {
    if (at === index) return;
    for (const key of other.keys ?? []) takePiece(rows, key, cutWidth(other.width, project.wedge.outerSeam));
  });
  return rows;
}

/** Cuts one piece off a strip of the row, as a row of its own where it was whole. */
function takePiece(rows: StripOnHand[], key: Key, length: Inches): void {
  const alike = rows.filter(
    (row) =>
      row.count > 0 &&
      row.length >= length &&
      stripKey(row.fabric, row.width) === stripKey(key.fabric, key.width),
  );
  const [row] = alike.sort((one, other) => one.length - other.length);
  if (!row) return;
  row.count -= 1;
  const rest = row.length - length;
  const same = rows.find(
    (other) =>
      Math.abs(other.length - rest) < 1e-9 &&
      stripKey(other.fabric, other.width) === stripKey(row.fabric, row.width),
  );
  if (same) same.count += 1;
  else if (rest > 0) rows.push({ ...row, length: rest, count: 1 });
}

/** The four runs clockwise from the top: top, right, bottom, left. */
function runsOf(project: Project, index: number, width: Inches): [Inches, Inches, Inches, Inches] {
  const inside = insideOf(project, index);
  const { sides, ends } = borderRuns({ ...project.setting.borders[index]!, width }, inside);
  return [ends, sides, ends, sides];
}

function insideOf(project: Project, index: number): { width: Inches; height: Inches } {
  const { inner } = layOut(project);
  const within = borderedBy(project.setting.borders.slice(0, index));
  return { width: inner.width + 2 * within.side, height: inner.height + 2 * within.end };
}

function lengthOf(stock: readonly KeyStock[]): Inches {
  return stock.reduce((sum, one) => sum + one.finished * one.count, 0);
}

/** The largest length every piece is a multiple of (Euclid), whatever it was measured by; 0 without pieces or such a length. */
function unitOf(stock: readonly KeyStock[]): Inches {
  const divisor = (one: Inches, other: Inches): Inches =>
    other < SAME ? one : divisor(other, one - other * Math.floor(one / other + SAME));
  const unit = stock.reduce((found, one) => divisor(found, one.finished), 0);
  return unit < LEAST_UNIT - SAME ? 0 : unit;
}

function isWhole(length: Inches, unit: Inches): boolean {
  return unit > 0 && Math.abs(length - unit * Math.round(length / unit)) < SAME;
}

/** The narrowest spacer that makes both runs whole; of one width all round where that can be had. */
function spacerFor(project: Project, index: number, unit: Inches): PiecedBorderPlan['spacer'] {
  if (unit === 0) return null;
  const border = project.setting.borders[index]!;
  const { sides, ends } = borderRuns(border, insideOf(project, index));
  const widths = (run: Inches) => {
    const found: Inches[] = [];
    for (let units = Math.ceil((run + 2 * LEAST_SPACER) / unit - SAME); ; units += 1) {
      const width = (units * unit - run) / 2;
      if (width > MOST_SPACER + 1e-9) return found;
      found.push(width);
    }
  };
  const across = widths(ends);
  const down = widths(sides);
  const even = across.find((one) => down.some((other) => Math.abs(one - other) < SAME));
  if (even !== undefined) return { side: even, end: even };
  return across[0] === undefined || down[0] === undefined ? null : { side: across[0], end: down[0] };
}

function widestOf(project: Project, index: number): Inches {
  const step = USUAL[project.preferences.unit].widthStep;
  for (let width = downToStep(WIDEST, step); width >= 2 * step - HAIR; width -= step) {
    const needed = total(runsOf(project, index, width));
    if (lengthOf(keyStock(project, index, width)) >= needed - 1e-9) return width;
  }
  return 0;
}

/** Deals pieces run by run so that each comes out whole where it can; null where they do not reach. */
function dealt(stock: readonly KeyStock[], runs: readonly Inches[], seed: number): Key[] | null {
  const random = xoroshiro128plus(seed);
  const pile = new Pile(stock, (below) => uniformInt(random, 0, below - 1));
  const keys: Key[] = [];
  for (const run of runs) {
    const laid = pile.layRun(run);
    if (!laid) return null;
    keys.push(...laid);
  }
  return keys;
}

/** So much of a run is left to be filled exactly, in times the longest piece. */
const LAST_PIECES = 4;

class Pile {
  private readonly kinds: { readonly stock: KeyStock; left: number }[];
  private readonly below: (below: number) => number;
  private last: FabricId | null = null;

  constructor(stock: readonly KeyStock[], below: (below: number) => number) {
    this.kinds = stock.map((one) => ({ stock: one, left: one.count }));
    this.below = below;
  }

  layRun(run: Inches): Key[] | null {
    const laid: Key[] = [];
    const longest = Math.max(0, ...this.kinds.map((kind) => kind.stock.finished));
    let rest = run;
    while (rest > LAST_PIECES * longest) {
      const kind = this.draw();
      if (!kind) return null;
      laid.push(this.take(kind));
      rest -= kind.stock.finished;
    }
    const end = this.exact(rest);
    if (end) return [...laid, ...end.map((kind) => this.take(kind))];
    while (rest > 1e-6) {
      const kind = this.draw();
      if (!kind) return null;
      laid.push(this.take(kind));
      rest -= kind.stock.finished;
    }
    return laid;
  }

  private take(kind: { readonly stock: KeyStock; left: number }): Key {
    kind.left -= 1;
    this.last = kind.stock.fabric;
    return { fabric: kind.stock.fabric, width: kind.stock.width };
  }

  /** A kind by lot, the fuller ones sooner; not the fabric laid last unless nothing else is left. */
  private draw(): { readonly stock: KeyStock; left: number } | null {
    const others = this.kinds.filter((kind) => kind.left > 0 && kind.stock.fabric !== this.last);
    const from = others.length > 0 ? others : this.kinds.filter((kind) => kind.left > 0);
    let lot = from.reduce((sum, kind) => sum + kind.left, 0);
    if (lot === 0) return null;
    lot = this.below(lot);
    for (const kind of from) {
      lot -= kind.left;
      if (lot < 0) return kind;
    }
    return null;
  }

  /** Kinds that fill a short stretch exactly, or null: widths first by depth-first search, then fabrics by lot. */
  private exact(stretch: Inches): { readonly stock: KeyStock; left: number }[] | null {
    const widths = [...new Set(this.kinds.filter((kind) => kind.left > 0).map((kind) => kind.stock.width))];
    const counts = this.fill(
      stretch,
      widths.toSorted((one, other) => other - one),
      0,
    );
    if (!counts) return null;
    const taken = new Map<unknown, number>();
    const chosen: { readonly stock: KeyStock; left: number }[] = [];
    for (const width of counts) {
      const free = this.kinds.filter(
        (kind) => kind.stock.width === width && kind.left > (taken.get(kind) ?? 0),
      );
      const before = chosen.at(-1)?.stock.fabric ?? this.last;
      const others = free.filter((kind) => kind.stock.fabric !== before);
      const from = others.length > 0 ? others : free;
      const kind = from[this.below(from.length)]!;
      taken.set(kind, (taken.get(kind) ?? 0) + 1);
      chosen.push(kind);
    }
    return chosen;
  }

  /** Cut widths, largest first, whose finished widths add up to the stretch. */
  private fill(stretch: Inches, widths: readonly Inches[], from: number): Inches[] | null {
    if (Math.abs(stretch) < 1e-6) return [];
    for (let at = from; at < widths.length; at += 1) {
      const alike = this.kinds.filter((kind) => kind.stock.width === widths[at]);
      const { finished } = alike[0]!.stock;
      const left = alike.reduce((sum, kind) => sum + kind.left, 0);
      for (let count = Math.min(left, Math.floor((stretch + 1e-6) / finished)); count > 0; count -= 1) {
        const rest = this.fill(stretch - count * finished, widths, at + 1);
        if (rest) return [...Array.from({ length: count }, () => widths[at]!), ...rest];
      }
    }
    return null;
  }
}
