// Puts right what was read from the picture of a block: a band, all bands of a wedge, the turn of the whole reading, or the picture.
// What a person says is sure.
import { apothem } from '../../geometry/wedge';
import { findBlock, stepsPerTurn, turnsOf } from '../../model/find';
import { phrase } from '../../model/phrase';
import type { BlockId, FabricId, PicturedBlock, Project, ShownBand } from '../../model/project';
import type { Inches } from '../../model/units';
import { type Command, Refusal } from '../apply';
import { ownCopy, type ReadBlock } from './addPictured';

/** The part of a wedge that its rim takes where no other rim of the block says more. */
const USUAL_RIM = 0.2;

/**
 * Tells the fabric of a band (from 0, the rim) in a place (from 0); null: it is not known. The rim of a wedge of which nothing is known
 * may be told: it is as wide as the block's other rims, and the rest stays unknown.
 */
export function putBandRight(
  project: Project,
  id: BlockId,
  place: number,
  band: number,
  fabric: FabricId | null,
): Command {
  return {
    label: phrase('put right place {place} of block {block}', {
      place: place + 1,
      block: numberOf(project, id),
    }),
    change: (draft) => {
      const block = pictured(draft, id);
      const wedge = block.wedges[place];
      if (!wedge) throw new Error(`putBandRight: no place ${place}`);
      if (wedge.bands.length === 0 && band === 0) wedge.bands = bareWedge(draft, block);
      const there = wedge.bands[band];
      if (!there) throw new Error(`putBandRight: no band ${band}`);
      there.fabric = fabric;
      there.sure = 1;
    },
  };
}

/** Tells all bands of a place (from 0), from the rim in. Refused where they reach past the middle, as apply checks. */
export function putWedgeRight(
  project: Project,
  id: BlockId,
  place: number,
  bands: readonly Omit<ShownBand, 'sure'>[],
): Command {
  return {
    label: phrase('put right place {place} of block {block}', {
      place: place + 1,
      block: numberOf(project, id),
    }),
    change: (draft) => {
      const wedge = pictured(draft, id).wedges[place];
      if (!wedge) throw new Error(`putWedgeRight: no place ${place}`);
      wedge.bands = bands.map(({ fabric, width }) => ({ fabric, width, sure: 1 }));
    },
  };
}

/**
 * Turns what was read by quarter turns clockwise (half turns where the block is not square) while the picture stays: for a block that was
 * read a turn off.
 */
export function turnReading(project: Project, id: BlockId, by: number): Command {
  return {
    label: phrase('turn what was read of block {block}', { block: numberOf(project, id) }),
    change: (draft) => {
      const block = pictured(draft, id);
      const { perBlock } = draft.wedge;
      const turns = turnsOf(perBlock);
      const steps = (((by % turns) + turns) % turns) * stepsPerTurn(perBlock);
      block.wedges = block.wedges.map((_, at) => block.wedges[(at - steps + perBlock) % perBlock]!);
    },
  };
}

/** Gives a block another picture, with what was read from that one. Number, place and progress stay. */
export function replacePicture(project: Project, id: BlockId, read: ReadBlock): Command {
  return {
    label: phrase('replace the picture of block {block}', { block: numberOf(project, id) }),
    change: (draft) => {
      Object.assign(pictured(draft, id), ownCopy(read));
    },
  };
}

/** A wedge of which nothing is known: its rim, and the rest. */
function bareWedge({ wedge }: Project, block: PicturedBlock): ShownBand[] {
  const height = apothem(wedge);
  const rim = middleOf(block.wedges.flatMap(({ bands }) => bands[0]?.width ?? [])) ?? USUAL_RIM * height;
  return [
    { fabric: null, width: rim, sure: 0 },
    ...(height > rim ? [{ fabric: null, width: height - rim, sure: 0 }] : []),
  ];
}

function middleOf(widths: readonly Inches[]): Inches | undefined {
  return widths.toSorted((one, other) => one - other)[Math.floor(widths.length / 2)];
}

/** The pictured block with this id. Refused where it is pieced, and so has no picture. */
function pictured(draft: Project, id: BlockId): PicturedBlock {
  const block = findBlock(draft, id);
  if (!block) throw new Error(`putRight: no block ${id}`);
  if (block.kind === 'pictured') return block;
  throw new Refusal('no-picture', 'blocks', phrase('Block {block} has no picture.', { block: block.number }));
}

function numberOf(project: Project, id: BlockId): number {
  return findBlock(project, id)?.number ?? 0;
}
