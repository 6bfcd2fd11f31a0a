// Every place on the top where a cloth meets itself or its look-alike, with the shared length in inches and its marks.
// Which of them are worth a sentence is decided in clashFindings; what they add up to in a score, in terms.
import { direction } from '../../geometry/block';
import { placeOnSide, SIDES } from '../../geometry/contact';
import type { Surround } from '../../geometry/lattice';
import { type Point, tilted } from '../../geometry/point';
import type { BlockId, FabricId, Project } from '../../model/project';
import type { Inches } from '../../model/units';
import type { Mark } from '../finding';
import { type RadialStretch, radialClash, sideRim, type WallModel } from '../wall/wallModel';

/**
 * rim: neighbouring wedges with the cloth on both rims · radial: further in along the seam between two wedges · facing:
 * block edge to block edge, straight or across sashing · surround: a rim against corner triangle, sashing or border.
 * A corner triangle against sashing, border, plain square or setting triangle is no clash: both are chosen for the whole
 * setting, and to cut them of one cloth is a design.
 */
export type ClashKind = 'rim' | 'radial' | 'facing' | 'surround';

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
  /** For a surround clash, what the rim lies against. */
  readonly against: 'corner' | Surround | null;
  readonly marks: readonly Mark[];
}

/** Clashes below this likeness are left out of the list: the scores still count them. */
export const LEAST_LIKENESS = 0.25;

/** The rim, radial and corner clashes of one block; they depend on the block, its cell and turn alone. */
export function clashesInside(project: Project, model: WallModel, block: number): Clash[] {
  const clashes: Clash[] = [];
  for (let place = 0; place < model.perBlock; place++) {
    const next = (place + 1) % model.perBlock;
    const type = model.typeAt[block * model.perBlock + place]!;
    const nextType = model.typeAt[block * model.perBlock + next]!;
    if (type < 0 || nextType < 0) continue;
    for (const stretch of radialClash(model, type, nextType).stretches) {
      if (stretch.likeness >= LEAST_LIKENESS) {
        clashes.push(radialOne(project, model, block, place, next, stretch));
      }
    }
  }
  cornerClashes(project, model, block, clashes);
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
  const kind = stretch.band === 0 && stretch.nextBand === 0 ? 'rim' : 'radial';
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
    against: null,
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

/** Rims that lie against the block's own corner triangles. Corners by design count only where the cloth is no background. */
function cornerClashes(project: Project, model: WallModel, block: number, clashes: Clash[]): void {
  const one = project.blocks[block]!;
  const corner = model.corner[block]!;
  if (model.cloths.background[corner]) return;
  const stands = model.orientationOf[block]!;
  const onSides = new Set(SIDES.map((side) => placeOnSide(side, stands, model.perBlock)));
  for (let place = 0; place < model.perBlock; place++) {
    const type = model.typeAt[block * model.perBlock + place]!;
    const fabric = type < 0 ? -1 : model.typeRim[type]!;
    if (fabric < 0 || onSides.has(place)) continue;
    const likeness = model.cloths.likeness[fabric * model.fabricCount + corner]!;
    if (likeness < LEAST_LIKENESS) continue;
    const toward = place + one.cornerShift;
    const rim = (end: number) => onSeam(toward + end, model.blockSize.height / 2, model.perBlock);
    clashes.push({
      id: `corner:${one.id}:${place + 1}`,
      kind: 'surround',
      fabrics: named(model, fabric, corner),
      likeness,
      inches: model.rim,
      weight: model.rim * likeness,
      blocks: [one.id],
      numbers: [one.number],
      places: [place + 1],
      cells: cellList(model, block),
      against: 'corner',
      marks: [{ kind: 'seam', block: one.id, from: rim(-1), to: rim(0), inches: model.rim }],
    });
  }
}

/** Facing clashes between hung blocks, and their sides against sashing and border, cell by cell. */
export function clashesBetween(project: Project, model: WallModel): Clash[] {
  const clashes: Clash[] = [];
  for (let cell = 0; cell < model.blockIn.length; cell++) {
    const block = model.blockIn[cell]!;
    if (block < 0) continue;
    for (const side of [1, 2]) facingClashes(project, model, cell, side, clashes);
    for (let side = 0; side < 4; side++) besideClash(project, model, cell, side, clashes);
  }
  return clashes;
}

function facingClashes(
  project: Project,
  model: WallModel,
  cell: number,
  side: number,
  clashes: Clash[],
): void {
  const other = model.neighbourCell[cell * 4 + side]!;
  const block = model.blockIn[cell]!;
  const facing = other < 0 ? -1 : model.blockIn[other]!;
  if (facing < 0) return;
  const one = project.blocks[block]!;
  const two = project.blocks[facing]!;
  const shared = {
    kind: 'facing' as const,
    blocks: [one.id, two.id],
    numbers: [one.number, two.number],
    cells: [cell, other],
    against: null,
  };
  const opposite = (side + 2) % 4;
  const fabric = sideRim(model, block, model.orientationOf[block]!, side);
  const facingFabric = sideRim(model, facing, model.orientationOf[facing]!, opposite);
  if (fabric >= 0 && facingFabric >= 0) {
    const likeness = model.cloths.likeness[fabric * model.fabricCount + facingFabric]!;
    if (likeness >= LEAST_LIKENESS) {
      const half = model.rim / 2;
      clashes.push({
        ...shared,
        id: `facing:${one.id}:${two.id}:${side === 1 ? 'right' : 'below'}`,
        fabrics: named(model, fabric, facingFabric),
        likeness,
        inches: model.rim,
        weight: model.rim * likeness * model.sashingFactorAt[cell * 4 + side]!,
        places: [sidePlace(model, block, side) + 1, sidePlace(model, facing, opposite) + 1],
        marks: edgeMarks(model, cell, side, [[-half, half]]),
      });
    }
  }
  cornersFacing(model, block, facing, cell, side, shared, clashes);
}

type FacingParts = Pick<Clash, 'kind' | 'blocks' | 'numbers' | 'cells' | 'against'>;

function cornersFacing(
  model: WallModel,
  block: number,
  facing: number,
  cell: number,
  side: number,
  shared: FacingParts,
  clashes: Clash[],
): void {
  if (model.cornerByDesign[block] || model.cornerByDesign[facing]) return;
  const corner = model.corner[block]!;
  const facingCorner = model.corner[facing]!;
  const likeness = model.cloths.likeness[corner * model.fabricCount + facingCorner]!;
  if (likeness < LEAST_LIKENESS) return;
  const upright = side % 2 === 1;
  const inches = upright ? model.cornerStretch.upright : model.cornerStretch.level;
  const rim = upright && !model.rimsUpright ? 0 : model.rim / 2;
  clashes.push({
    ...shared,
    id: `corners:${shared.blocks.join(':')}:${side === 1 ? 'right' : 'below'}`,
    fabrics: named(model, corner, facingCorner),
    likeness,
    inches,
    weight: inches * likeness * model.sashingFactorAt[cell * 4 + side]!,
    places: [],
    marks: edgeMarks(model, cell, side, [
      [-rim - inches / 2, -rim],
      [rim, rim + inches / 2],
    ]),
  });
}

function besideClash(project: Project, model: WallModel, cell: number, side: number, clashes: Clash[]): void {
  const block = model.blockIn[cell]!;
  const one = project.blocks[block]!;
  const cloth = model.settingFabric[cell * 4 + side]!;
  const fabric = cloth < 0 ? -1 : sideRim(model, block, model.orientationOf[block]!, side);
  if (fabric < 0) return;
  const likeness = model.cloths.likeness[fabric * model.fabricCount + cloth]!;
  if (likeness < LEAST_LIKENESS) return;
  const half = model.rim / 2;
  clashes.push({
    id: `beside:${one.id}:${sidePlace(model, block, side) + 1}`,
    kind: 'surround',
    fabrics: named(model, fabric, cloth),
    likeness,
    inches: model.rim,
    weight: model.rim * likeness,
    blocks: [one.id],
    numbers: [one.number],
    places: [sidePlace(model, block, side) + 1],
    cells: [cell],
    against: model.settingPart[cell * 4 + side]!,
    marks: edgeMarks(model, cell, side, [[-half, half]]).slice(0, 1),
  });
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

function sidePlace(model: WallModel, block: number, side: number): number {
  return placeOnSide(SIDES[side]!, model.orientationOf[block]!, model.perBlock)!;
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
