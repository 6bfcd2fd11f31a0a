// The measures of a top in a row along its edges, as they are drawn along it: borders, sashing, blocks.
import { layOut } from '../geometry/setting';
import { type Phrase, phrase } from '../model/phrase';
import type { Project } from '../model/project';
import { formatLength, type Inches, type LengthUnit, parseLength } from '../model/units';

/** One stretch of a row of measures, in quilt inches from the left or upper edge of the finished top. */
export interface Measure {
  readonly kind: 'border' | 'block' | 'sashing' | 'inside';
  /** Number of the border from the inside, counted from 1; null for other stretches. */
  readonly border: number | null;
  readonly from: Inches;
  readonly to: Inches;
}

const NOTHING = 1e-6;

/**
 * The stretches from edge to edge of the finished top, without gaps: through the blocks of the first row and of the first column.
 * On point nothing inside the borders runs level, so it is one stretch.
 */
export function measuresOf(project: Project): { readonly across: Measure[]; readonly down: Measure[] } {
  const top = layOut(project);
  const { borders, layout } = project.setting;
  const onPoint = layout.kind === 'onPoint';
  const xs = onPoint ? [] : distinct(top.centres.map(({ x }) => x));
  const ys = onPoint ? [] : distinct(top.centres.map(({ y }) => y));
  const sides = borders.map(({ width }) => width);
  const ends = borders.map(({ width, ends: end }) => end ?? width);
  return {
    across: stretches(top.width, sides, xs, top.block.width),
    down: stretches(top.height, ends, ys, top.block.height),
  };
}

function distinct(places: readonly Inches[]): Inches[] {
  return places
    .toSorted((one, other) => one - other)
    .filter((place, at, all) => at === 0 || place - all[at - 1]! > NOTHING);
}

/** `borders`: widths from the inside out. `middles`: middles of the blocks, `block` long each. */
function stretches(
  whole: Inches,
  borders: readonly Inches[],
  middles: readonly Inches[],
  block: Inches,
): Measure[] {
  const found: Measure[] = [];
  let at = 0;
  const add = (kind: Measure['kind'], to: Inches, border: number | null = null) => {
    if (to - at <= NOTHING) return;
    found.push({ kind, border, from: at, to });
    at = to;
  };
  for (let border = borders.length; border > 0; border -= 1) add('border', at + borders[border - 1]!, border);
  const end = whole - at;
  for (const middle of middles) {
    add('sashing', middle - block / 2);
    add('block', middle + block / 2);
  }
  add(middles.length > 0 ? 'sashing' : 'inside', end);
  for (const [index, width] of borders.entries()) add('border', at + width, index + 1);
  return found;
}

/** The first stretch of each kind and length, so that each measure is written once. */
export function eachOnce(measures: readonly Measure[]): Measure[] {
  const seen = new Set<string>();
  return measures.filter(({ kind, border, from, to }) => {
    const key = `${kind} ${border ?? ''} ${(to - from).toFixed(4)}`;
    return !seen.has(key) && seen.add(key);
  });
}

/** A length as it is told, inches: what a reader who adds up has of it. */
export function asTold(inches: Inches, unit: LengthUnit): Inches {
  return parseLength(formatLength(inches, unit), unit) ?? inches;
}

/**
 * What the top would come to where its parts are added up as they are told, each rounded by itself; null where that is the size told
 * of it.
 */
export function roundedSumWords(project: Project): Phrase | null {
  const { unit } = project.preferences;
  const { width, height } = layOut(project);
  const { across, down } = measuresOf(project);
  const [wide, high] = [across, down].map((row) =>
    row.reduce((sum, { from, to }) => sum + asTold(to - from, unit), 0),
  ) as [Inches, Inches];
  const reads = (one: Inches, other: Inches) => formatLength(one, unit) === formatLength(other, unit);
  if (reads(wide, width) && reads(high, height)) return null;
  const say =
    'Each size is rounded by itself: added up from rounded parts, the top would come to {width} × {height}.';
  return phrase(say, { width: { inches: wide }, height: { inches: high } });
}
