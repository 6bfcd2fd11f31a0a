// What all clashes of a top add up to, in inches: the sums behind the terms clashLength and lookAlikes.
import { placeOnSide, SIDES } from '../../geometry/contact';
import type { Inches } from '../../model/units';
import { radialClash, sideRim, type WallModel } from '../wall/wallModel';

/** Inches of one fabric meeting itself, and of look-alikes, each counted by its likeness. */
export interface ClashSums {
  same: Inches;
  alike: Inches;
}

/**
 * Inches of clash of all that hangs: radial seams (radialClash of neighbouring types), rims against corner triangles, rims
 * and corners facing each other (× sashingFactorAt), rims against sashing and border. `same` counts one fabric meeting itself,
 * `alike` look-alikes by their likeness.
 */
export function clashSums(model: WallModel): ClashSums {
  const sums: ClashSums = { same: 0, alike: 0 };
  for (let cell = 0; cell < model.blockIn.length; cell++) {
    const block = model.blockIn[cell]!;
    if (block < 0) continue;
    addInside(model, block, model.orientationOf[block]!, sums);
    for (let side = 0; side < 4; side++) addSide(model, cell, side, sums);
  }
  return sums;
}

function add(model: WallModel, one: number, other: number, inches: number, sums: ClashSums): void {
  if (one < 0 || other < 0) return;
  const likeness = model.cloths.likeness[one * model.fabricCount + other]!;
  if (one === other) sums.same += likeness * inches;
  else sums.alike += likeness * inches;
}

/** Clash inside one block: its radial seams, and its rims against its own corners, which depend on the orientation. */
function addInside(model: WallModel, block: number, stands: number, sums: ClashSums): void {
  const { perBlock, typeAt } = model;
  for (let place = 0; place < perBlock; place++) {
    const type = typeAt[block * perBlock + place]!;
    const next = typeAt[block * perBlock + ((place + 1) % perBlock)]!;
    if (type < 0 || next < 0) continue;
    const clash = radialClash(model, type, next);
    sums.same += clash.same;
    sums.alike += clash.alike;
  }
  addCornerRims(model, block, stands, sums);
}

/** The rims of a block that lie against its corner triangles, of the cloth given or its own. */
export function addCornerRims(
  model: WallModel,
  block: number,
  stands: number,
  sums: ClashSums,
  corner: number = model.corner[block]!,
): void {
  const { perBlock, typeAt } = model;
  if (model.cloths.background[corner]) return;
  const onSides = SIDES.map((side) => placeOnSide(side, stands, perBlock));
  for (let place = 0; place < perBlock; place++) {
    const type = typeAt[block * perBlock + place]!;
    if (type >= 0 && !onSides.includes(place)) add(model, model.typeRim[type]!, corner, model.rim, sums);
  }
}

/** One side of a cell: against the next block (counted from the left and from above only) and against sashing or border. */
function addSide(model: WallModel, cell: number, side: number, sums: ClashSums): void {
  const block = model.blockIn[cell]!;
  const rim = sideRim(model, block, model.orientationOf[block]!, side);
  add(model, rim, model.settingFabric[cell * 4 + side]!, model.rim, sums);
  if (side === 0 || side === 3) return;
  const beyond = model.neighbourCell[cell * 4 + side]!;
  const other = beyond < 0 ? -1 : model.blockIn[beyond]!;
  if (other < 0) return;
  const facing = sideRim(model, other, model.orientationOf[other]!, (side + 2) % 4);
  const across = model.sashingFactorAt[cell * 4 + side]!;
  add(model, rim, facing, model.rim * across, sums);
  if (model.cornerByDesign[block] || model.cornerByDesign[other]) return;
  const stretch = side === 1 ? model.cornerStretch.upright : model.cornerStretch.level;
  add(model, model.corner[block]!, model.corner[other]!, stretch * across, sums);
}
