// Lists the clashes of one wedge, in place or on offer: with its neighbours in the block, and of its rim beyond the block. Offers
// and the workshop use it; contacts.ts finds the contacts and clashRule.ts decides which count.
import { clothsOf } from '../../cloth/cloths';
import type { BoundaryPart } from '../../geometry/lattice';
import { findBlock } from '../../model/find';
import { type Move, moved } from '../../model/moves';
import type { Block, BlockId, FabricId, Place, Project } from '../../model/project';
import type { Inches } from '../../model/units';
import type { WallModel } from '../wall/wallModel';
import { isClash, type Judged } from './clashRule';
import { contactsOfRim } from './contacts';
import { isOnRim, radialClash, type WedgeSeams, wedgeSeams, wedgeTypeOf } from './wedgeSeams';

/** A stretch of seam where the wedge has its own cloth or a look-alike in the next place. */
export interface WedgeClash {
  /** The neighbouring place, from 1. */
  readonly place: number;
  /** Cloth of the wedge and of its neighbour. */
  readonly fabric: FabricId;
  readonly other: FabricId;
  readonly onRim: boolean;
  readonly inches: Inches;
  /** 1 for one and the same cloth. */
  readonly likeness: number;
}

/** The rim's cloth against the same or a look-alike beyond the block. */
export interface OutsideClash {
  readonly fabric: FabricId;
  readonly other: FabricId;
  /** 1 for one and the same cloth. */
  readonly likeness: number;
  readonly beyond: OutsidePart;
}

export type OutsidePart =
  /** The number of the next block, and whether sashing lies between. */
  | { readonly kind: 'block'; readonly block: number; readonly sashing: boolean }
  | { readonly kind: 'corner' | BoundaryPart };

/** The clashes a wedge would have in the places beside `at` (from 0). The seams must be of the same strip sets. */
export function wedgeClashes(
  project: Project,
  seams: WedgeSeams,
  block: Block,
  at: number,
  wedge: Place,
): WedgeClash[] {
  const type = wedgeTypeOf(project, wedge);
  const count = block.places.length;
  return [(at + count - 1) % count, (at + 1) % count].flatMap((place) => {
    const neighbour = block.places[place];
    if (!neighbour) return [];
    const { stretches } = radialClash(seams, type, wedgeTypeOf(project, neighbour));
    return stretches
      .filter((stretch) => isClash(stretch.likeness))
      .map(
        (stretch): WedgeClash => ({
          place: place + 1,
          fabric: nameOf(seams, stretch.fabric),
          other: nameOf(seams, stretch.nextFabric),
          onRim: isOnRim(stretch),
          inches: stretch.length,
          likeness: stretch.likeness,
        }),
      );
  });
}

/** The nearest clash beyond the block of a wedge's rim, of the type given, in a place (from 0) as the block hangs; or null. */
export function outsideClash(
  { model, project }: { readonly model: WallModel; readonly project: Project },
  block: Block,
  at: number,
  type: number,
): OutsideClash | null {
  const index = model.blocks.indexOf(block.id);
  const found = contactsOfRim(model, index, at, model.typeRim[type]!).find((one) => isClash(one.likeness));
  if (!found) return null;
  return {
    fabric: nameOf(model, found.fabric),
    other: nameOf(model, found.other),
    likeness: found.likeness,
    beyond:
      found.kind === 'facing'
        ? { kind: 'block', block: project.blocks[found.otherBlock]!.number, sashing: found.factor < 1 }
        : { kind: found.kind === 'corner' ? 'corner' : found.part },
  };
}

/** How many rims inside these blocks have their own cloth or a look-alike beside them, as they are and after the moves. */
export function rimClashes(
  project: Project,
  blocks: readonly BlockId[],
  moves: readonly Move[],
): { now: number; after: number } {
  const seams = wedgeSeams(project, clothsOf(project));
  const count = (one: Project) =>
    [...new Set(blocks)].reduce((sum, id) => sum + rimsOf(one, seams, findBlock(one, id)!), 0);
  return { now: count(project), after: count(moved(project, moves)) };
}

function rimsOf(project: Project, seams: WedgeSeams, block: Block): number {
  const types = block.places.map((wedge) => (wedge ? wedgeTypeOf(project, wedge) : -1));
  return types.filter((type, place) => {
    const next = types[(place + 1) % types.length]!;
    if (type < 0 || next < 0) return false;
    return radialClash(seams, type, next).stretches.some((one) => isOnRim(one) && isClash(one.likeness));
  }).length;
}

function nameOf({ cloths }: Judged, fabric: number): FabricId {
  return cloths.fabrics[fabric]!.id;
}
