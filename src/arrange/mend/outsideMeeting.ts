// What the rim of a wedge would lie against beyond its block: the next block, sashing or border, or the block's own corner.
import type { Analysis } from '../../balance/analyse';
import { LEAST_LIKENESS } from '../../balance/clashes/clashes';
import { sideRim } from '../../balance/wall/wallModel';
import { placeOnSide, SIDES } from '../../geometry/contact';
import type { Surround } from '../../geometry/lattice';
import type { Block, FabricId } from '../../model/project';
import type { Inches } from '../../model/units';

/** The rim's cloth against the same or a look-alike. */
export interface OutsideMeeting {
  readonly fabric: FabricId;
  readonly other: FabricId;
  readonly inches: Inches;
  /** 1 for one and the same cloth; above the likeness from which the analysis lists a clash. */
  readonly likeness: number;
  readonly against: OutsidePart;
}

export type OutsidePart =
  /** The number of the next block, and whether sashing lies between. */
  | { readonly kind: 'block'; readonly block: number; readonly sashing: boolean }
  | { readonly kind: 'corner' | Surround };

/** The clash of a wedge's rim, of the type given, in a place (from 0) of a block as it hangs; null for none. */
export function outsideMeeting(
  { model, project }: Analysis,
  block: Block,
  at: number,
  type: number,
): OutsideMeeting | null {
  const index = model.blocks.indexOf(block.id);
  const cell = model.cellOf[index]!;
  const rim = model.typeRim[type]!;
  if (cell < 0 || rim < 0) return null;
  const stands = model.orientationOf[index]!;
  const side = SIDES.findIndex((one) => placeOnSide(one, stands, model.perBlock) === at);
  const found = (other: number, against: OutsidePart): OutsideMeeting | null => {
    const likeness = other < 0 ? 0 : model.cloths.likeness[rim * model.fabricCount + other]!;
    if (likeness < LEAST_LIKENESS) return null;
    const [fabric, beyond] = [rim, other].map((one) => model.cloths.fabrics[one]!.id) as [FabricId, FabricId];
    return { fabric, other: beyond, inches: model.rim, likeness, against };
  };
  if (side < 0) return found(model.corner[index]!, { kind: 'corner' });
  const part = model.settingPart[cell * 4 + side];
  const beyond = model.neighbourCell[cell * 4 + side]!;
  const next = beyond < 0 ? -1 : model.blockIn[beyond]!;
  const across =
    next < 0
      ? null
      : found(sideRim(model, next, model.orientationOf[next]!, (side + 2) % 4), {
          kind: 'block',
          block: project.blocks[next]!.number,
          sashing: model.sashingFactorAt[cell * 4 + side]! < 1,
        });
  // Sashing lies nearer than the block beyond it.
  return (part ? found(model.settingFabric[cell * 4 + side]!, { kind: part }) : null) ?? across;
}
