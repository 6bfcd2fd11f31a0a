// The backing: lengths of cloth sewn side by side, with the seams upright or level, whichever takes least cloth. All lengths are
// on the ruler, what must suffice rounded up and what the cloth gives rounded down, so that sums come out as they are printed.

import type { Box } from '../../geometry/point';
import { finishedWidth, stripSpans } from '../../geometry/stripSet';
import { HAIR, isTooNarrow, joinedPieces, piecesIn } from '../../model/lengths';
import { counted, type Phrase, phrase } from '../../model/phrase';
import type { Inches, LengthUnit } from '../../model/units';
import type { CutPart } from './clothLayout';
import { onRuler, withinRuler } from './neededPiece';

export interface BackingNeed {
  /** The top as sewn, inches. */
  readonly width: Inches;
  readonly height: Inches;
  readonly overhang: Inches;
  /** Usable width of the backing cloth. */
  readonly clothWidth: Inches;
  /** Seam allowance of the backing. */
  readonly seam: Inches;
  /** One-way cloth: its length has to run down the quilt. */
  readonly oneWay: boolean;
  /** Of the ruler it is cut with. */
  readonly unit: LengthUnit;
}

export interface BackingLayout {
  /** Lengths run down the quilt (seams upright) or across it (seams level). */
  readonly run: 'down' | 'across';
  /** Full widths side by side, the last one counted even where it is trimmed or pieced. */
  readonly widths: number;
  /** Pieces the last width is joined from; 1: one length. */
  readonly sections: number;
  /** The size the backing has to have. */
  readonly size: { readonly width: Inches; readonly height: Inches };
  /** What shows of each piece, from the top left corner of the finished backing; they fill its size. */
  readonly panels: readonly Box[];
  /** What is cut from the cloth. */
  readonly cuts: readonly CutPart[];
  /** Cloth off the bolt, before straightening. */
  readonly cloth: Inches;
  readonly seams: number;
  readonly why: readonly Phrase[];
}

/** More joins than this in the last width are not worth the cloth they save (common practice, no source). */
const MOST_SECTIONS = 4;

/** Every layout in question, least cloth first; of equal ones fewer seams first. Empty for a top without a size. */
export function backingLayouts(exact: BackingNeed): BackingLayout[] {
  const need = onRulers(exact);
  if (need.width <= 0 || need.height <= 0 || isTooNarrow(need.clothWidth, need.seam)) return [];
  const runs: BackingLayout['run'][] = need.oneWay ? ['down'] : ['down', 'across'];
  return runs
    .flatMap((run) => [wholeLengths(need, run), piecedLast(need, run)])
    .filter((layout) => layout !== null)
    .toSorted((one, other) => one.cloth - other.cloth || one.seams - other.seams);
}

/** The layout that takes least cloth, with or without a pieced last width. */
export function bestBacking(need: BackingNeed, pieced: boolean): BackingLayout | null {
  return backingLayouts(need).find((layout) => pieced || layout.sections === 1) ?? null;
}

interface NeedOnRuler extends BackingNeed {
  /** Whether the top measures less than its size here. */
  readonly isRoundedUp: boolean;
}

function onRulers(exact: BackingNeed): NeedOnRuler {
  const { unit } = exact;
  const [width, height] = [onRuler(exact.width, unit), onRuler(exact.height, unit)];
  return {
    ...exact,
    width,
    height,
    isRoundedUp: width + height - exact.width - exact.height > HAIR,
    overhang: onRuler(exact.overhang, unit),
    clothWidth: withinRuler(exact.clothWidth, unit),
    // Both allowances of a seam are told in one figure.
    seam: onRuler(2 * exact.seam, unit) / 2,
  };
}

function sizes(need: BackingNeed, run: BackingLayout['run']) {
  const width = need.width + 2 * need.overhang;
  const height = need.height + 2 * need.overhang;
  // `broad` lies across the lengths, `long` along them.
  return run === 'down'
    ? { size: { width, height }, broad: width, long: height }
    : { size: { width, height }, broad: height, long: width };
}

/** Widths that give `broad` when every seam takes two allowances: n·W − (n − 1)·2s ≥ broad. */
function widthsFor(broad: Inches, need: BackingNeed): number {
  return joinedPieces(broad, need.clothWidth, 2 * need.seam);
}

function wholeLengths(need: NeedOnRuler, run: BackingLayout['run']): BackingLayout {
  const { size, broad, long } = sizes(need, run);
  const widths = widthsFor(broad, need);
  return {
    run,
    widths,
    sections: 1,
    size,
    panels: panelsOf(need, run, widths, 1),
    cuts: [{ line: 0, across: need.clothWidth, along: long, count: widths }],
    cloth: widths * long,
    seams: widths - 1,
    why: [...sizeWords(need, size), widthWords(need, run, broad, widths), clothWords(widths, long)],
  };
}

/** The last width joined from sections cut side by side out of one shorter length; null where that saves nothing. */
function piecedLast(need: NeedOnRuler, run: BackingLayout['run']): BackingLayout | null {
  const { size, broad, long } = sizes(need, run);
  const widths = widthsFor(broad, need);
  if (widths < 2) return null;
  const lost = 2 * need.seam;
  const lastWidth = broad - (widths - 1) * finishedWidth(need.clothWidth, need.seam);
  const sections = Math.min(MOST_SECTIONS, piecesIn(need.clothWidth, lastWidth));
  if (sections < 2) return null;
  const section = onRuler((long + (sections - 1) * lost) / sections, need.unit);
  const cloth = (widths - 1) * long + section;
  return {
    run,
    widths,
    sections,
    size,
    panels: panelsOf(need, run, widths, sections),
    cuts: [
      { line: 0, across: need.clothWidth, along: long, count: widths - 1 },
      { line: 0, across: lastWidth, along: section, count: sections },
    ],
    cloth,
    seams: widths - 1 + sections - 1,
    why: [
      ...sizeWords(need, size),
      widthWords(need, run, broad, widths),
      phrase(
        'The last one need only be {width} wide: {sections} pieces {long} long, cut side by side and joined.',
        {
          width: { inches: lastWidth },
          sections,
          long: { inches: section },
        },
      ),
    ],
  };
}

/** Seams split evenly between neighbours; the last width shows what is left. */
function panelsOf(need: BackingNeed, run: BackingLayout['run'], widths: number, sections: number): Box[] {
  const { broad, long } = sizes(need, run);
  const boxes: Box[] = [];
  const lay = (from: Inches, wide: Inches, start: Inches, length: Inches) =>
    boxes.push(
      run === 'down'
        ? { x: from, y: start, width: wide, height: length }
        : { x: start, y: from, width: length, height: wide },
    );
  const cloths = Array.from({ length: widths }, () => ({ width: need.clothWidth }));
  stripSpans(cloths, need.seam).forEach(({ from, to }, index) => {
    const last = index === widths - 1;
    const pieces = last ? sections : 1;
    const wide = (last ? broad : to) - from;
    for (let piece = 0; piece < pieces; piece += 1) lay(from, wide, (piece * long) / pieces, long / pieces);
  });
  return boxes;
}

function sizeWords(need: NeedOnRuler, size: { width: Inches; height: Inches }): Phrase[] {
  const values = {
    width: { inches: need.width },
    height: { inches: need.height },
    overhang: { inches: need.overhang },
    broad: { inches: size.width },
    high: { inches: size.height },
  };
  const say = need.isRoundedUp
    ? 'Rounded up, the top is {width} × {height}; with {overhang} on every side the backing is {broad} × {high}.'
    : 'The top is {width} × {height}; with {overhang} on every side the backing is {broad} × {high}.';
  return [phrase(say, values)];
}

function widthWords(need: BackingNeed, run: BackingLayout['run'], broad: Inches, widths: number): Phrase {
  const values = {
    broad: { inches: broad },
    cloth: { inches: need.clothWidth },
    lost: { inches: 2 * need.seam },
  };
  const one =
    run === 'down'
      ? 'The length runs down the quilt: one width of {cloth} covers {broad}.'
      : 'The length runs across the quilt: one width of {cloth} covers {broad}.';
  const many =
    run === 'down'
      ? 'The lengths run down the quilt: {count} widths of {cloth}, less {lost} for every seam, cover {broad}.'
      : 'The lengths run across the quilt: {count} widths of {cloth}, less {lost} for every seam, cover {broad}.';
  return counted(widths, one, many, values);
}

function clothWords(widths: number, long: Inches): Phrase {
  return counted(widths, 'Cut 1 length of {long}.', 'Cut {count} lengths of {long}.', {
    long: { inches: long },
  });
}
