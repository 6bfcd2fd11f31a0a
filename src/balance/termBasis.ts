// What the terms are measured against: means, targets, strengths of fabrics, and what chance would give of each sum, so that
// a term is 1 by chance. Fixed while blocks are turned, exchanged or given other wedges; made anew for another project.
import { addCornerRims, type ClashSums } from './clashSums';
import { type Intent, SCATTERED, valueTarget } from './intent';
import { type Kernel, kernelOf, kernelSums, quadratic } from './kernel';
import { sideRim, type WallModel } from './wallModel';

export interface TermBasis {
  readonly intent: Intent;
  readonly kernel: Kernel;
  /** Means over the hung blocks. */
  readonly meanLightness: number;
  readonly meanA: number;
  readonly meanB: number;
  readonly meanWarmth: number;
  /** Square inches of each fabric in a hung block, on average. */
  readonly meanFabric: Float64Array;
  /** Squared contrast of each fabric with the mean of all wedges, in OKLab; 0 for background cloth. */
  readonly strength: Float64Array;
  /** Wanted deviation of value of each cell, L*. */
  readonly target: Float64Array;
  /** Offsets of each cell from the middle of the filled cells, inches. */
  readonly fromMiddleX: Float64Array;
  readonly fromMiddleY: Float64Array;
  /** What chance gives of each sum, with a floor where a top hardly varies; see the functions below. */
  readonly clashScale: number;
  readonly alikeScale: number;
  readonly valueScale: number;
  readonly colourScale: number;
  readonly fabricScale: number;
  readonly momentScale: number;
  readonly warmthScale: number;
}

/** Below these standard deviations between blocks nothing is seen: L*, OKLab, warmth, and part of a block's area. */
const LEAST = { lightness: 1, oklab: 0.003, warmth: 0.02, area: 0.005 } as const;

/** Clash scales are never below this part of all seam inches: a top without any repeat would have nothing to divide by. */
const LEAST_CLASH = 0.005;

export function termBasis(model: WallModel, intent: Intent = SCATTERED): TermBasis {
  // In the order of the document: exchanging two blocks must not change the last digit of a sum.
  const hung = model.blocks
    .map((_, block) => block)
    .filter((block) => model.cellOf[block]! >= 0 && model.area[block]! > 0);
  const filled = Uint8Array.from(model.blockIn, (block) => (block >= 0 && model.area[block]! > 0 ? 1 : 0));
  const kernel = kernelOf(model.rows, model.columns);
  const spread = (figures: Float64Array, least: number) => moments(hung, figures, least);
  const lightness = spread(model.lightness, LEAST.lightness);
  const a = spread(model.a, LEAST.oklab);
  const b = spread(model.b, LEAST.oklab);
  const warmth = spread(model.warmth, LEAST.warmth);
  const target = valueTarget(
    intent,
    { x: model.cellX, y: model.cellY, filled },
    hung.map((block) => model.lightness[block]! - lightness.mean),
  );
  const middle = fromMiddle(model, filled);
  const sums = kernelSums(kernel, filled);
  const chance = chanceOfForm(sums, hung.length);
  const fabrics = fabricFigures(model, hung);
  const clash = clashByChance(model, hung);
  return {
    intent,
    kernel,
    meanLightness: lightness.mean,
    meanA: a.mean,
    meanB: b.mean,
    meanWarmth: warmth.mean,
    meanFabric: fabrics.mean,
    strength: fabrics.strength,
    target,
    fromMiddleX: middle.x,
    fromMiddleY: middle.y,
    clashScale: clash.same,
    alikeScale: clash.alike,
    valueScale: lightness.m2 * chance + quadratic(kernel, target),
    colourScale:
      (a.m2 + b.m2) *
      (intent.colour === 'scattered'
        ? chance
        : Math.max(1e-9, (2 * sums.pairs * hung.length) / Math.max(1, hung.length - 1))),
    fabricScale: fabrics.power * chance,
    momentScale: lightness.m2 * middle.chance + momentOf(middle, target),
    warmthScale: warmth.m2 * middle.chance,
  };
}

/** Mean and m2 = Σz²/n over the hung blocks, m2 not below the square of what is seen. */
function moments(
  hung: readonly number[],
  figures: Float64Array,
  least: number,
): { mean: number; m2: number } {
  let mean = 0;
  for (const block of hung) mean += figures[block]! / hung.length;
  let m2 = 0;
  for (const block of hung) m2 += (figures[block]! - mean) ** 2 / hung.length;
  return { mean, m2: Math.max(m2, least * least) };
}

/** E[Σ K z z]/m2 when n values of sum 0 are dealt at random: E[z_c²] = m2, E[z_c z_d] = −m2/(n − 1). 1 for n < 2. */
function chanceOfForm(sums: { own: number; pairs: number }, n: number): number {
  return n < 2 ? 1 : sums.own - sums.pairs / (n - 1);
}

/** Offsets from the middle and E[|Σ z x|²]/m2 = n/(n − 1) Σ(x² + y²) when the values are dealt at random. */
function fromMiddle(model: WallModel, filled: Uint8Array) {
  const n = filled.reduce((sum, one) => sum + one, 0);
  const offsets = (places: Float64Array) => {
    const mean = places.reduce((sum, place, cell) => sum + (filled[cell] ? place : 0), 0) / Math.max(1, n);
    return places.map((place, cell) => (filled[cell] ? place - mean : 0));
  };
  const x = offsets(model.cellX);
  const y = offsets(model.cellY);
  const square = x.reduce((sum, one, cell) => sum + one * one + y[cell]! ** 2, 0);
  return { x, y, chance: n < 2 ? 1 : (square * n) / (n - 1) };
}

function momentOf(middle: { x: Float64Array; y: Float64Array }, values: Float64Array): number {
  let across = 0;
  let down = 0;
  values.forEach((value, cell) => {
    across += value * middle.x[cell]!;
    down += value * middle.y[cell]!;
  });
  return across * across + down * down;
}

/** Mean area, squared contrast, and Σ strength · m2 over the fabrics. */
function fabricFigures(model: WallModel, hung: readonly number[]) {
  const { fabricCount, cloths } = model;
  const mean = new Float64Array(fabricCount);
  const square = new Float64Array(fabricCount);
  for (const block of hung) {
    for (let f = 0; f < fabricCount; f++) {
      const size = model.fabricArea[block * fabricCount + f]!;
      mean[f]! += size / hung.length;
      square[f]! += (size * size) / hung.length;
    }
  }
  const total = mean.reduce((sum, size) => sum + size, 0);
  const middle = [cloths.oklabL, cloths.a, cloths.b].map((axis) =>
    total > 0 ? axis.reduce((sum, value, f) => sum + (value * mean[f]!) / total, 0) : 0,
  );
  const strength = Float64Array.from(mean, (size, f) =>
    cloths.background[f] || size === 0
      ? 0
      : (cloths.oklabL[f]! - middle[0]!) ** 2 +
        (cloths.a[f]! - middle[1]!) ** 2 +
        (cloths.b[f]! - middle[2]!) ** 2,
  );
  const least = (LEAST.area * model.blockSize.width * model.blockSize.height) ** 2;
  let power = 1e-9;
  strength.forEach((one, f) => {
    power += one * Math.max(least, square[f]! - mean[f]! ** 2);
  });
  return { mean, strength, power };
}

/** Inches of clash by chance: rims dealt to sides, wedges dealt to seams, corners as they are. */
function clashByChance(model: WallModel, hung: readonly number[]): ClashSums {
  const sums: ClashSums = { same: 0, alike: 0 };
  let inches = 0;
  const rims = sideRims(model, hung);
  const likeness = (f: number, g: number) => model.cloths.likeness[f * model.fabricCount + g]!;
  const seams = countSeams(model);
  const n = hung.length;
  const facing = model.rim * model.across;
  const pairs =
    n > 1 ? ((seams.level + (model.rimsUpright ? seams.upright : 0)) * facing) / (n * (n - 1)) : 0;
  inches += (seams.level + seams.upright) * facing;
  // Two different blocks, each with a rim of its own at random: all pairs less each block with itself.
  const dealt = (one: Float64Array, factor: number) => {
    for (let f = 0; f < one.length; f++) {
      if (one[f] === 0) continue;
      for (let g = 0; g < one.length; g++) {
        const part = factor * one[f]! * one[g]! * likeness(f, g);
        if (f === g) sums.same += part;
        else sums.alike += part;
      }
    }
  };
  dealt(rims.all, pairs);
  for (const own of rims.each) {
    for (const [f, part] of own) {
      for (const [g, other] of own) {
        const back = pairs * part * other * likeness(f, g);
        if (f === g) sums.same -= back;
        else sums.alike -= back;
      }
    }
  }
  surroundByChance(model, rims.all, n, sums);
  for (const block of hung) addCornerRims(model, block, model.standingOf[block]!, sums);
  inches += radialByChance(model, hung, sums);
  return {
    same: Math.max(sums.same, LEAST_CLASH * inches, 1e-9),
    alike: Math.max(sums.alike, LEAST_CLASH * inches, 1e-9),
  };
}

/** Chance that a side of a block shows a fabric, when it is turned at random: of each block, and summed over all. */
function sideRims(model: WallModel, hung: readonly number[]) {
  const all = new Float64Array(model.fabricCount);
  const sides = model.rimsUpright ? [0, 1, 2, 3] : [0, 2];
  const each = hung.map((block) => {
    const own = new Map<number, number>();
    for (const side of sides) {
      const fabric = sideRim(model, block, model.standingOf[block]!, side);
      if (fabric < 0) continue;
      own.set(fabric, (own.get(fabric) ?? 0) + 1 / sides.length);
      all[fabric]! += 1 / sides.length;
    }
    return own;
  });
  return { all, each };
}

function countSeams(model: WallModel): { level: number; upright: number } {
  let level = 0;
  let upright = 0;
  model.blockIn.forEach((block, cell) => {
    const hangs = (side: number) => {
      const other = model.beyond[cell * 4 + side]!;
      return other >= 0 && model.blockIn[other]! >= 0;
    };
    if (block < 0) return;
    if (hangs(2)) level += 1;
    if (hangs(1)) upright += 1;
  });
  return { level, upright };
}

function surroundByChance(model: WallModel, rims: Float64Array, n: number, sums: ClashSums): void {
  model.blockIn.forEach((block, cell) => {
    if (block < 0) return;
    for (const side of model.rimsUpright ? [0, 1, 2, 3] : [0, 2]) {
      const cloth = model.beside[cell * 4 + side]!;
      if (cloth < 0) continue;
      rims.forEach((part, f) => {
        const inches = (part / n) * model.rim * model.cloths.likeness[f * model.fabricCount + cloth]!;
        if (f === cloth) sums.same += inches;
        else sums.alike += inches;
      });
    }
  });
}

/** Sampled rings of a block; a strip is seldom narrower than a ring's width. */
const RINGS = 48;

/**
 * Radial clash when the wedges are dealt to the places at random, tip up and tip down in turn as they are now: at each ring
 * the chance that both sides of a seam are alike. Returns the inches of radial seam of all hung blocks.
 */
function radialByChance(model: WallModel, hung: readonly number[], sums: ClashSums): number {
  const { perBlock, fabricCount, kindAt } = model;
  const reach = model.blockSize.height / 2;
  const seam = reach / Math.cos(Math.PI / perBlock);
  const uses = [new Map<number, number>(), new Map<number, number>()];
  const counts = [0, 0];
  for (const block of hung) {
    for (let place = 0; place < perBlock; place++) {
      const kind = kindAt[block * perBlock + place]!;
      counts[place % 2]! += 1;
      if (kind >= 0) uses[place % 2]!.set(kind, (uses[place % 2]!.get(kind) ?? 0) + 1);
    }
  }
  const rings = uses.map((used, parity) => {
    const table = new Float64Array(RINGS * fabricCount);
    for (const [kind, count] of used) addRings(model, kind, count / counts[parity]!, reach, table);
    return table;
  });
  const part = (seam / RINGS) * hung.length * perBlock;
  for (let ring = 0; ring < RINGS; ring++) {
    for (let f = 0; f < fabricCount; f++) {
      const one = rings[0]![ring * fabricCount + f]!;
      if (one === 0) continue;
      for (let g = 0; g < fabricCount; g++) {
        const inches =
          part * one * rings[1]![ring * fabricCount + g]! * model.cloths.likeness[f * fabricCount + g]!;
        if (f === g) sums.same += inches;
        else sums.alike += inches;
      }
    }
  }
  return seam * hung.length * perBlock;
}

function addRings(model: WallModel, kind: number, share: number, reach: number, table: Float64Array): void {
  for (const band of model.kindBands[kind]!) {
    const fabric = model.cloths.index.get(band.fabric)!;
    const from = (band.inner / reach) * RINGS;
    const to = (band.outer / reach) * RINGS;
    for (let ring = Math.floor(from); ring < Math.min(RINGS, Math.ceil(to)); ring++) {
      const covered = Math.min(to, ring + 1) - Math.max(from, ring);
      table[ring * model.fabricCount + fabric]! += share * covered;
    }
  }
}
