// Computes the clash of a random layout: the inches of same and look-alike fabric that meet when wedges and blocks are dealt out
// at random. The two clash terms are scaled by it.

import { sideRim, type WallModel } from '../wall/wallModel';
import { addCounted, type ClashSums, countsAs } from './clashRule';
import { addContact } from './clashSums';
import { visitCorners } from './contacts';

/** Clash scales are never below this part of all seam inches: a top without any repeat would have nothing to divide by. */
const LEAST_CLASH = 0.005;

/** Inches of clash by chance over the hung blocks: rims dealt to sides, wedges dealt to seams, corners as they are. */
export function clashByChance(model: WallModel, hung: readonly number[]): ClashSums {
  const sums: ClashSums = { same: 0, alike: 0 };
  let inches = 0;
  const rims = sideRims(model, hung);
  const seams = countSeams(model);
  const n = hung.length;
  const facing = model.rim * meanSashingFactor(model);
  const pairs =
    n > 1 ? ((seams.level + (model.rimsUpright ? seams.upright : 0)) * facing) / (n * (n - 1)) : 0;
  inches += (seams.level + seams.upright) * facing;
  // Two different blocks, each with a rim of its own at random: all pairs less each block with itself.
  const dealt = (one: Float64Array, factor: number) => {
    for (let f = 0; f < one.length; f++) {
      if (one[f] === 0) continue;
      for (let g = 0; g < one.length; g++) {
        addCounted(sums, f, g, factor * one[f]! * one[g]! * countsAs(model, f, g));
      }
    }
  };
  dealt(rims.all, pairs);
  for (const own of rims.each) {
    for (const [f, part] of own) {
      for (const [g, other] of own) {
        addCounted(sums, f, g, -pairs * part * other * countsAs(model, f, g));
      }
    }
  }
  settingByChance(model, rims.all, n, sums);
  for (const block of hung) visitCorners(model, block, (contact) => addContact(sums, contact));
  inches += radialByChance(model, hung, sums);
  return {
    same: Math.max(sums.same, LEAST_CLASH * inches, 1e-9),
    alike: Math.max(sums.alike, LEAST_CLASH * inches, 1e-9),
  };
}

/** What the contacts between hung blocks count on average. */
function meanSashingFactor(model: WallModel): number {
  if (model.even) return model.sashingFactor;
  let sum = 0;
  let count = 0;
  model.neighbourCell.forEach((other, at) => {
    if (other < 0 || model.blockIn[other]! < 0 || model.blockIn[at >> 2]! < 0) return;
    sum += model.sashingFactorAt[at]!;
    count += 1;
  });
  return count === 0 ? model.sashingFactor : sum / count;
}

/** Chance that a side of a block shows a fabric, when it is turned at random: of each block, and summed over all. */
function sideRims(model: WallModel, hung: readonly number[]) {
  const all = new Float64Array(model.fabricCount);
  const sides = model.rimsUpright ? [0, 1, 2, 3] : [0, 2];
  const each = hung.map((block) => {
    const own = new Map<number, number>();
    for (const side of sides) {
      const fabric = sideRim(model, block, model.orientationOf[block]!, side);
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
      const other = model.neighbourCell[cell * 4 + side]!;
      return other >= 0 && model.blockIn[other]! >= 0;
    };
    if (block < 0) return;
    if (hangs(2)) level += 1;
    if (hangs(1)) upright += 1;
  });
  return { level, upright };
}

function settingByChance(model: WallModel, rims: Float64Array, n: number, sums: ClashSums): void {
  // Blocks may hang before they have wedges: no rim, no part of one.
  if (n === 0) return;
  model.blockIn.forEach((block, cell) => {
    if (block < 0) return;
    for (const side of model.rimsUpright ? [0, 1, 2, 3] : [0, 2]) {
      const cloth = model.settingFabric[cell * 4 + side]!;
      if (cloth < 0) continue;
      rims.forEach((part, f) => {
        addCounted(sums, f, cloth, (part / n) * model.rim * countsAs(model, f, cloth));
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
  const { perBlock, fabricCount, typeAt } = model;
  const reach = model.blockSize.height / 2;
  const seam = reach / Math.cos(Math.PI / perBlock);
  const uses = [new Map<number, number>(), new Map<number, number>()];
  const counts = [0, 0];
  for (const block of hung) {
    for (let place = 0; place < perBlock; place++) {
      const type = typeAt[block * perBlock + place]!;
      counts[place % 2]! += 1;
      if (type >= 0) uses[place % 2]!.set(type, (uses[place % 2]!.get(type) ?? 0) + 1);
    }
  }
  const rings = uses.map((used, parity) => {
    const table = new Float64Array(RINGS * fabricCount);
    for (const [type, count] of used) addRings(model, type, count / counts[parity]!, reach, table);
    return table;
  });
  const part = (seam / RINGS) * hung.length * perBlock;
  for (let ring = 0; ring < RINGS; ring++) {
    for (let f = 0; f < fabricCount; f++) {
      const one = rings[0]![ring * fabricCount + f]!;
      if (one === 0) continue;
      for (let g = 0; g < fabricCount; g++) {
        addCounted(sums, f, g, part * one * rings[1]![ring * fabricCount + g]! * countsAs(model, f, g));
      }
    }
  }
  return seam * hung.length * perBlock;
}

function addRings(model: WallModel, type: number, share: number, reach: number, table: Float64Array): void {
  for (const band of model.typeBands[type]!) {
    const fabric = model.cloths.index.get(band.fabric)!;
    const from = (band.inner / reach) * RINGS;
    const to = (band.outer / reach) * RINGS;
    for (let ring = Math.floor(from); ring < Math.min(RINGS, Math.ceil(to)); ring++) {
      const covered = Math.min(to, ring + 1) - Math.max(from, ring);
      table[ring * model.fabricCount + fabric]! += share * covered;
    }
  }
}
