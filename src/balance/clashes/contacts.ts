// The one visitor over everything that lies side by side on the top and counts: seams between wedges, rims and corner
// triangles against each other, and rims against the setting. The list, the sums and the offers read it; the arranger keeps
// its own figures step by step (arrange/live) and is held to it by its law test.
import { placeOnSide, SIDES, sideOfPlace } from '../../geometry/contact';
import type { BoundaryPart } from '../../geometry/lattice';
import type { Inches } from '../../model/units';
import { sideRim, type WallModel } from '../wall/wallModel';
import { countsAs } from './clashRule';
import { type RadialClash, radialClash } from './wedgeSeams';

/** The seam between two wedges of a block, places from 0, `next` clockwise of `place`. */
export interface SeamContact {
  readonly kind: 'seam';
  readonly block: number;
  readonly place: number;
  readonly next: number;
  readonly clash: RadialClash;
}

interface EdgeContact {
  readonly block: number;
  /** Fabrics on this side and beyond, and their likeness: above 0. */
  readonly fabric: number;
  readonly other: number;
  readonly likeness: number;
  readonly inches: Inches;
  /** What it counts across sashing, 0–1; 1 where the pieces touch. */
  readonly factor: number;
}

/** A rim (place from 0) against a corner triangle of its own block. */
export interface CornerContact extends EdgeContact {
  readonly kind: 'corner';
  readonly place: number;
}

/** A rim on the side of a cell against sashing, border, plain square or setting triangle. */
export interface SettingContact extends EdgeContact {
  readonly kind: 'setting';
  readonly place: number;
  readonly cell: number;
  readonly side: number;
  readonly part: BoundaryPart;
}

/** A rim on the side of a cell that faces a rim of the next block, straight or across sashing. */
export interface FacingContact extends EdgeContact {
  readonly kind: 'facing';
  readonly place: number;
  readonly cell: number;
  readonly side: number;
  readonly otherBlock: number;
  readonly otherCell: number;
  readonly otherPlace: number;
}

/** The corner triangles of two blocks along the side between them. */
export interface CornersContact extends EdgeContact {
  readonly kind: 'corners';
  readonly cell: number;
  readonly side: number;
  readonly otherBlock: number;
  readonly otherCell: number;
}

export type InsideContact = SeamContact | CornerContact;
export type OutsideContact = SettingContact | FacingContact | CornersContact;
export type Contact = InsideContact | OutsideContact;

/** Every contact of what hangs, each once. */
export function visitContacts(model: WallModel, visit: (contact: Contact) => void): void {
  for (let cell = 0; cell < model.blockIn.length; cell++) {
    const block = model.blockIn[cell]!;
    if (block < 0) continue;
    visitInside(model, block, visit);
    visitOutside(model, cell, visit);
  }
}

/** The seams of one block, and its rims against its corner triangles: they depend on the block, its cell and turn alone. */
export function visitInside(model: WallModel, block: number, visit: (contact: InsideContact) => void): void {
  const { perBlock, typeAt } = model;
  for (let place = 0; place < perBlock; place++) {
    const next = (place + 1) % perBlock;
    const type = typeAt[block * perBlock + place]!;
    const nextType = typeAt[block * perBlock + next]!;
    if (type < 0 || nextType < 0) continue;
    const clash = radialClash(model, type, nextType);
    if (clash.stretches.length > 0) visit({ kind: 'seam', block, place, next, clash });
  }
  visitCorners(model, block, visit);
}

/** The rims of a block that lie against its corner triangles: as it stands and with its own cloth, unless others are given. */
export function visitCorners(
  model: WallModel,
  block: number,
  visit: (contact: CornerContact) => void,
  stands: number = model.orientationOf[block]!,
  corner: number = model.corner[block]!,
): void {
  // Most corners are background, which counts as nothing beside any rim.
  if (model.cloths.background[corner]) return;
  for (let place = 0; place < model.perBlock; place++) {
    const type = model.typeAt[block * model.perBlock + place]!;
    if (type < 0 || sideOfPlace(place, stands, model.perBlock) >= 0) continue;
    const contact = cornerContact(model, block, place, model.typeRim[type]!, corner);
    if (contact) visit(contact);
  }
}

/**
 * What the block in a cell lies against beyond its edge: the next blocks to the right and below (so that every pair is visited
 * once), and the setting on all four sides.
 */
function visitOutside(model: WallModel, cell: number, visit: (contact: OutsideContact) => void): void {
  const block = model.blockIn[cell]!;
  const stands = model.orientationOf[block]!;
  const show = (contact: OutsideContact | null) => {
    if (contact) visit(contact);
  };
  for (const side of [1, 2]) {
    show(facingContact(model, cell, side, sideRim(model, block, stands, side)));
    show(cornersContact(model, cell, side));
  }
  for (let side = 0; side < 4; side++) {
    if (model.settingFabric[cell * 4 + side]! < 0) continue;
    show(settingContact(model, cell, side, sideRim(model, block, stands, side)));
  }
}

/** The contacts between blocks and with the setting, cell by cell. */
export function visitBetween(model: WallModel, visit: (contact: OutsideContact) => void): void {
  for (let cell = 0; cell < model.blockIn.length; cell++) {
    if (model.blockIn[cell]! >= 0) visitOutside(model, cell, visit);
  }
}

/**
 * What the rim of a hung block's place would lie against beyond its wedge if it were of this fabric, the nearest first: the
 * corner triangle; else the setting, and the next block across it. None for a block on the side table.
 */
export function contactsOfRim(
  model: WallModel,
  block: number,
  place: number,
  fabric: number,
): (CornerContact | SettingContact | FacingContact)[] {
  const cell = model.cellOf[block]!;
  if (cell < 0) return [];
  const side = sideOfPlace(place, model.orientationOf[block]!, model.perBlock);
  const found =
    side < 0
      ? [cornerContact(model, block, place, fabric, model.corner[block]!)]
      : [settingContact(model, cell, side, fabric), facingContact(model, cell, side, fabric)];
  return found.filter((contact) => contact !== null);
}

function cornerContact(
  model: WallModel,
  block: number,
  place: number,
  fabric: number,
  corner: number,
): CornerContact | null {
  const likeness = countsAs(model, fabric, corner);
  if (likeness === 0) return null;
  return { kind: 'corner', block, place, fabric, other: corner, likeness, inches: model.rim, factor: 1 };
}

function settingContact(model: WallModel, cell: number, side: number, fabric: number): SettingContact | null {
  const other = model.settingFabric[cell * 4 + side]!;
  const likeness = countsAs(model, fabric, other);
  if (likeness === 0) return null;
  const block = model.blockIn[cell]!;
  return {
    kind: 'setting',
    block,
    place: placeOf(model, block, side),
    cell,
    side,
    part: model.settingPart[cell * 4 + side]!,
    fabric,
    other,
    likeness,
    inches: model.rim,
    factor: 1,
  };
}

function facingContact(model: WallModel, cell: number, side: number, fabric: number): FacingContact | null {
  const otherCell = model.neighbourCell[cell * 4 + side]!;
  const otherBlock = otherCell < 0 ? -1 : model.blockIn[otherCell]!;
  if (otherBlock < 0) return null;
  const opposite = (side + 2) % 4;
  const other = sideRim(model, otherBlock, model.orientationOf[otherBlock]!, opposite);
  const likeness = countsAs(model, fabric, other);
  if (likeness === 0) return null;
  const block = model.blockIn[cell]!;
  return {
    kind: 'facing',
    block,
    place: placeOf(model, block, side),
    cell,
    side,
    otherBlock,
    otherCell,
    otherPlace: placeOf(model, otherBlock, opposite),
    fabric,
    other,
    likeness,
    inches: model.rim,
    factor: model.sashingFactorAt[cell * 4 + side]!,
  };
}

function cornersContact(model: WallModel, cell: number, side: number): CornersContact | null {
  const otherCell = model.neighbourCell[cell * 4 + side]!;
  const otherBlock = otherCell < 0 ? -1 : model.blockIn[otherCell]!;
  if (otherBlock < 0) return null;
  const block = model.blockIn[cell]!;
  const inches = cornersInches(model, block, otherBlock, side);
  const fabric = model.corner[block]!;
  const other = model.corner[otherBlock]!;
  const likeness = inches === 0 ? 0 : countsAs(model, fabric, other);
  if (likeness === 0) return null;
  const factor = model.sashingFactorAt[cell * 4 + side]!;
  return {
    kind: 'corners',
    block,
    cell,
    side,
    otherBlock,
    otherCell,
    fabric,
    other,
    likeness,
    inches,
    factor,
  };
}

/**
 * Inches of corner triangle of two blocks along the side between them; 0 where one has the quilt's own corners or background:
 * such corners are chosen for the whole setting, and that they form one figure is a design.
 */
export function cornersInches(model: WallModel, block: number, other: number, side: number): Inches {
  if (model.cornerByDesign[block] || model.cornerByDesign[other]) return 0;
  return side % 2 === 1 ? model.cornerStretch.upright : model.cornerStretch.level;
}

function placeOf(model: WallModel, block: number, side: number): number {
  return placeOnSide(SIDES[side]!, model.orientationOf[block]!, model.perBlock)!;
}
