// Lists every place on the top where a fabric meets itself or its look-alike, with the shared length in inches and its marks.
// contacts.ts finds the contacts, clashRule.ts decides which count, clashFindings.ts which are worth a sentence.
import { direction } from '../../geometry/block';
import type { BoundaryPart } from '../../geometry/lattice';
import { type Point, tilted } from '../../geometry/point';
import type { BlockId, FabricId, Project } from '../../model/project';
import type { Inches } from '../../model/units';
import type { ClashKind, Mark } from '../finding';
import type { WallModel } from '../wall/wallModel';
import { isClash } from './clashRule';
import {
  type CornerContact,
  type CornersContact,
  type FacingContact,
  type SettingContact,
  visitBetween,
  visitInside,
} from './contacts';
import { isOnRim, type RadialStretch } from './wedgeSeams';

/**
 * One clash of the list. A corner triangle against sashing, border, plain square or setting triangle is none: both are chosen
 * for the whole setting, and to cut them of one cloth is a design.
 */
export interface Clash {
  /** Stable for the same blocks and places, whatever the turn. */
  readonly id: string;
  readonly kind: ClashKind;
  readonly fabrics: readonly [FabricId, FabricId];
  /** 1 for one and the same fabric, below 1 for look-alikes. */
  readonly likeness: number;
  /** Shared length along the seam (of the rims that face each other, across sashing). */
  readonly inches: Inches;
  /** Inches × likeness × sashing factor: the inches of plain clash it counts as. */
  readonly weight: Inches;
  /** One block, or the two that meet; the left or upper one first. */
  readonly blocks: readonly BlockId[];
  readonly numbers: readonly number[];
  /** Places as people count them, from 1, block by block as in `blocks` (two of the same block for rim and radial). */
  readonly places: readonly number[];
  /** Cells of the blocks, as indices into wall.cells; empty for a block on the side table. */
  readonly cells: readonly number[];
  /** For a setting clash, what the rim lies against. */
  readonly settingPart: 'corner' | BoundaryPart | null;
  readonly marks: readonly Mark[];
}

/** The rim, radial and corner clashes of one block; they depend on the block, its cell and turn alone. */
export function clashesInside(project: Project, model: WallModel, block: number): Clash[] {
  const clashes: Clash[] = [];
  visitInside(model, block, (contact) => {
    if (contact.kind === 'corner') {
      if (isClash(contact.likeness)) clashes.push(cornerClash(project, model, contact));
      return;
    }
    for (const stretch of contact.clash.stretches) {
      if (isClash(stretch.likeness)) {
        clashes.push(radialOne(project, model, block, contact.place, contact.next, stretch));
      }
    }
  });
  return clashes;
}

/** Facing clashes between hung blocks, and their sides against sashing and border, cell by cell. */
export function clashesBetween(project: Project, model: WallModel): Clash[] {
  const clashes: Clash[] = [];
  visitBetween(model, (contact) => {
    if (!isClash(contact.likeness)) return;
    if (contact.kind === 'setting') clashes.push(settingClash(project, model, contact));
    else if (contact.kind === 'facing') clashes.push(facingClash(project, model, contact));
    else clashes.push(cornersClash(project, model, contact));
  });
  return clashes;
}

function radialOne(
  project: Project,
  model: WallModel,
  block: number,
  place: number,
  next: number,
  stretch: RadialStretch,
): Clash {
  const one = project.blocks[block]!;
  const kind = isOnRim(stretch) ? 'rim' : 'radial';
  const between = place + one.cornerShift;
  return {
    id: `${kind}:${one.id}:${place + 1}:${stretch.band + 1}-${stretch.nextBand + 1}`,
    kind,
    fabrics: named(model, stretch.fabric, stretch.nextFabric),
    likeness: stretch.likeness,
    inches: stretch.length,
    weight: stretch.length * stretch.likeness,
    blocks: [one.id],
    numbers: [one.number],
    places: [place + 1, next + 1],
    cells: cellList(model, block),
    settingPart: null,
    marks: [
      {
        kind: 'seam',
        block: one.id,
        from: onSeam(between, stretch.inner, model.perBlock),
        to: onSeam(between, stretch.outer, model.perBlock),
        inches: stretch.length,
      },
    ],
  };
}

type EdgeContact = CornerContact | SettingContact | FacingContact | CornersContact;

/** What every clash along the edge of a block has of its contact. */
function edgeFigures(model: WallModel, contact: EdgeContact) {
  const { likeness, inches } = contact;
  return {
    fabrics: named(model, contact.fabric, contact.other),
    likeness,
    inches,
    weight: inches * likeness * contact.factor,
  };
}

function cornerClash(project: Project, model: WallModel, contact: CornerContact): Clash {
  const one = project.blocks[contact.block]!;
  const toward = contact.place + one.cornerShift;
  const rim = (end: number) => onSeam(toward + end, model.blockSize.height / 2, model.perBlock);
  return {
    ...edgeFigures(model, contact),
    id: `corner:${one.id}:${contact.place + 1}`,
    kind: 'setting',
    blocks: [one.id],
    numbers: [one.number],
    places: [contact.place + 1],
    cells: cellList(model, contact.block),
    settingPart: 'corner',
    marks: [{ kind: 'seam', block: one.id, from: rim(-1), to: rim(0), inches: contact.inches }],
  };
}

function settingClash(project: Project, model: WallModel, contact: SettingContact): Clash {
  const one = project.blocks[contact.block]!;
  const half = contact.inches / 2;
  return {
    ...edgeFigures(model, contact),
    id: `beside:${one.id}:${contact.place + 1}`,
    kind: 'setting',
    blocks: [one.id],
    numbers: [one.number],
    places: [contact.place + 1],
    cells: [contact.cell],
    settingPart: contact.part,
    marks: edgeMarks(model, contact.cell, contact.side, [[-half, half]]).slice(0, 1),
  };
}

function facingClash(project: Project, model: WallModel, contact: FacingContact): Clash {
  const half = contact.inches / 2;
  return {
    ...edgeFigures(model, contact),
    ...twoBlocks(project, contact, 'facing'),
    places: [contact.place + 1, contact.otherPlace + 1],
    marks: edgeMarks(model, contact.cell, contact.side, [[-half, half]]),
  };
}

function cornersClash(project: Project, model: WallModel, contact: CornersContact): Clash {
  const { cell, side, inches } = contact;
  const rim = side % 2 === 1 && !model.rimsUpright ? 0 : model.rim / 2;
  return {
    ...edgeFigures(model, contact),
    ...twoBlocks(project, contact, 'corners'),
    places: [],
    marks: edgeMarks(model, cell, side, [
      [-rim - inches / 2, -rim],
      [rim, rim + inches / 2],
    ]),
  };
}

function twoBlocks(project: Project, contact: FacingContact | CornersContact, name: string) {
  const one = project.blocks[contact.block]!;
  const two = project.blocks[contact.otherBlock]!;
  return {
    id: `${name}:${one.id}:${two.id}:${contact.side === 1 ? 'right' : 'below'}`,
    kind: 'facing' as const,
    blocks: [one.id, two.id],
    numbers: [one.number, two.number],
    cells: [contact.cell, contact.otherCell],
    settingPart: null,
  };
}

/** Marks along the edge of the block in a cell and, where sashing keeps them apart, along the edge beyond it too. */
function edgeMarks(model: WallModel, cell: number, side: number, stretches: [Inches, Inches][]): Mark[] {
  const other = model.neighbourCell[cell * 4 + side]!;
  const lines = [edgeOf(model, cell, side)];
  // A gap counts less than the whole; without one the two edges are one line.
  if (other >= 0 && model.sashingFactorAt[cell * 4 + side]! < 1)
    lines.push(edgeOf(model, other, (side + 2) % 4));
  return lines.flatMap((line) =>
    stretches.map(
      ([from, to]): Mark => ({
        kind: 'seam',
        block: null,
        from: line(from),
        to: line(to),
        inches: to - from,
      }),
    ),
  );
}

/** Points along a side of the block in a cell, by inches from its middle to the right or down (before the setting's tilt). */
function edgeOf(model: WallModel, cell: number, side: number): (along: Inches) => Point {
  const upright = side % 2 === 1;
  const away = side === 1 || side === 2 ? 1 : -1;
  const deep = (away * (upright ? model.blockSize.width : model.blockSize.height)) / 2;
  return (along) => {
    const point = tilted(upright ? { x: deep, y: along } : { x: along, y: deep }, model.tilt);
    return { x: point.x + model.cellX[cell]!, y: point.y + model.cellY[cell]! };
  };
}

function onSeam(between: number, radius: Inches, perBlock: number): Point {
  const reach = radius / Math.cos(Math.PI / perBlock);
  const unit = direction(between + 0.5, perBlock);
  return { x: unit.x * reach, y: unit.y * reach };
}

function named(model: WallModel, one: number, other: number): [FabricId, FabricId] {
  return [model.cloths.fabrics[one]!.id, model.cloths.fabrics[other]!.id];
}

function cellList(model: WallModel, block: number): number[] {
  const cell = model.cellOf[block]!;
  return cell < 0 ? [] : [cell];
}
