// How heavy and how thick the top becomes: seams in a block, layers where its points meet, weight of the cloth with its
// seam allowances. Advice is common practice.

import { cutOutline } from '../../geometry/allowance';
import { asPieced } from '../../geometry/asPieced';
import { cornerOutlines } from '../../geometry/block';
import { area } from '../../geometry/point';
import { layOut } from '../../geometry/setting';
import { setHeight, stripSpans } from '../../geometry/stripSet';
import { cutWedge, slope } from '../../geometry/wedge';
import { findSet } from '../../model/find';
import { type Phrase, phrase } from '../../model/phrase';
import type { Block, Project, StripSet, Tip, WedgePlan } from '../../model/project';
import type { Inches, LengthUnit } from '../../model/units';
import { figureOf } from '../../model/words/figure';

export interface BlockBulk {
  /** Seams sewn for one block: between its strips (each strip seam counts in each wedge), its wedges, and its corners. */
  readonly stripSeams: number;
  readonly wedgeSeams: number;
  readonly cornerSeams: number;
  /** Layers of cloth where the points meet. */
  readonly layersAtMiddle: number;
  /** Cloth in the block, allowances included, square inches. */
  readonly cloth: number;
}

export interface TopBulk {
  /** Finished top, square inches. */
  readonly top: number;
  /** Cloth in it, all allowances included, square inches. */
  readonly cloth: number;
  /** Cloth for each part of top: layers on average. */
  readonly layers: number;
  /** Weight in grams for the light and the heavy end of quilting cotton. */
  readonly grams: { readonly light: number; readonly heavy: number };
}

export interface BulkReport {
  /** The block with most seams; null without a whole block. */
  readonly block: BlockBulk | null;
  /** The top as it is set, and the same blocks without any sashing. Borders are in both. */
  readonly asSet: TopBulk;
  readonly withoutSashing: TopBulk;
  readonly advice: readonly Phrase[];
}

const GRAMS_PER_OUNCE = 28.349523125;

/** Quilting cotton, grams per square metre: from memory, check before relying on it. */
const COTTON_GRAMS: { readonly light: number; readonly heavy: number } = { light: 135, heavy: 150 };
const SQUARE_METRES_PER_SQUARE_INCH = 0.00064516;
/** From so many layers on average a top wants light quilting (common practice, no source; half a layer is allowances). */
const MANY_LAYERS = 1.5;

/**
 * Layers of cloth beside the very middle: each of the N seams lays its two allowances to one side, so they cover half the
 * directions, and a point near the middle lies under half of the seams: N/2 · 2, and the cloth of the top itself.
 */
export function layersAtMiddle(perBlock: number): number {
  return perBlock + 1;
}

/** Cloth in one cut wedge, square inches: its outline, and twice the folded allowances of each strip seam inside it. */
export function clothInWedge(set: Pick<StripSet, 'strips' | 'pressing'>, tip: Tip, wedge: WedgePlan): number {
  const { base, tip: tipWidth } = cutWedge(wedge);
  const k = slope(wedge.perBlock);
  const height = setHeight(set.strips, wedge.seam);
  /** Area of the wedge between two heights above its base. */
  const between = (from: Inches, to: Inches) => {
    const low = Math.max(0, Math.min(wedge.cutHeight, from));
    const high = Math.max(0, Math.min(wedge.cutHeight, to));
    return Math.max(0, high - low) * (base - k * (low + high));
  };
  let cloth = ((base + tipWidth) / 2) * Math.min(wedge.cutHeight, Math.max(0, height));
  if (height < wedge.cutHeight) cloth = between(0, height);
  stripSpans(set.strips, wedge.seam)
    .slice(0, -1)
    .forEach(({ to: seamAt }) => {
      const fromBase = tip === 'up' ? seamAt : height - seamAt;
      const outwards = (set.pressing === 'last') === (tip === 'up');
      cloth +=
        2 * (outwards ? between(fromBase, fromBase + wedge.seam) : between(fromBase - wedge.seam, fromBase));
    });
  return cloth;
}

/** Seams and cloth of a block; its empty places count nothing. */
export function blockBulk(project: Project, block: Block): BlockBulk {
  const { wedge } = project;
  let stripSeams = 0;
  let cloth = cornerOutlines(wedge).reduce(
    (sum, outline) => sum + area(cutOutline(outline, wedge.outerSeam)),
    0,
  );
  for (const place of block.places) {
    const set = place && findSet(project, place.set);
    if (!set) continue;
    cloth += clothInWedge(set, place.tip, wedge);
    stripSeams += Math.max(0, set.strips.length - 1);
  }
  return {
    stripSeams,
    wedgeSeams: wedge.perBlock,
    cornerSeams: 4,
    layersAtMiddle: layersAtMiddle(wedge.perBlock),
    cloth,
  };
}

/** The whole top: hung blocks, sashing and borders. An empty cell weighs nothing, nor what a picture does not tell of its block. */
export function bulkReport(given: Project): BulkReport {
  const project = asPieced(given);
  const hung = project.wall.cells.flatMap((cell) => {
    const block = cell && project.blocks.find((one) => one.id === cell.block);
    return block ? [blockBulk(project, block)] : [];
  });
  const most = hung.reduce<BlockBulk | null>(
    (best, one) => (best && best.stripSeams >= one.stripSeams ? best : one),
    null,
  );
  const blocks = hung.reduce((sum, one) => sum + one.cloth, 0);
  const sashing = { ...project.setting.sashing, where: 'none' as const };
  const bare: Project = { ...project, setting: { ...project.setting, sashing } };
  const asSet = topBulk(project, blocks);
  return {
    block: most,
    asSet,
    withoutSashing: topBulk(bare, blocks),
    advice: adviceFor(project, most, asSet),
  };
}

function topBulk(project: Project, blocks: number): TopBulk {
  const layout = layOut(project);
  const { outerSeam } = project.wedge;
  const cloth = layout.pieces.reduce(
    (sum, piece) => sum + area(cutOutline(piece.outline, outerSeam)),
    blocks,
  );
  const top = layout.width * layout.height;
  const weight = (grams: number) => cloth * SQUARE_METRES_PER_SQUARE_INCH * grams;
  return {
    top,
    cloth,
    layers: cloth / top,
    grams: { light: weight(COTTON_GRAMS.light), heavy: weight(COTTON_GRAMS.heavy) },
  };
}

function adviceFor(project: Project, block: BlockBulk | null, asSet: TopBulk): Phrase[] {
  if (!block) return [];
  const advice = [
    phrase(
      'Where the points of a block meet there are {layers} layers of fabric. Press that seam open or fan it, and quilt round the middle, not through it.',
      { layers: block.layersAtMiddle },
    ),
  ];
  if (asSet.layers >= MANY_LAYERS) {
    const say =
      'With its seam allowances the top has {layers} layers of fabric on average. Choose light quilting and thin batting.';
    advice.push(phrase(say, { layers: figureOf(asSet.layers, 1) }));
  }
  if (project.setting.sashing.where === 'none') {
    advice.push(
      phrase(
        'Without sashing the seams of the blocks meet; nest them, and let sashing part them if it gets too thick.',
      ),
    );
  }
  return advice;
}

/** A weight in words: grams rounded to ten where lengths are in centimetres, ounces where they are in inches. */
export function weightWords(grams: TopBulk['grams'], unit: LengthUnit): Phrase {
  const [step, amount, range] =
    unit === 'cm'
      ? [10, 'about {light} g', 'about {light} to {heavy} g']
      : [GRAMS_PER_OUNCE, 'about {light} oz', 'about {light} to {heavy} oz'];
  const shown = (weight: number) => Math.round(weight / step) * (unit === 'cm' ? step : 1);
  const values = { light: shown(grams.light), heavy: shown(grams.heavy) };
  return phrase(values.light === values.heavy ? amount : range, values);
}
