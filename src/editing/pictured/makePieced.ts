// Turns pictured blocks into pieced ones: their wedges come from sets that are known by what shows of them, as for sewn blocks that
// are typed in. One undo brings the pictures back.
import { growsWithUse } from '../../cutting/wedges/ledger';
import { firstUnknown, sewnStrips } from '../../geometry/asPieced';
import { findBlock } from '../../model/find';
import { counted, phrase } from '../../model/phrase';
import {
  type BlockId,
  MOST_SETS,
  type PicturedBlock,
  type Place,
  type Project,
  type Strip,
  type StripSet,
} from '../../model/project';
import type { Inches } from '../../model/units';
import { type Command, Refusal } from '../apply';
import { addSewnSet } from '../entering/sewnSets';
import { addAll, type NewPictured } from './addPictured';

/** Strips of two wedges that differ by less are taken to be of one set: less than anybody sews to. */
const SAME_WIDTH: Inches = 1 / 32;

/**
 * Makes blocks pieced; their pictures go with them as photographs. Wedges that show the same strips share a set, which is cut and has no wedge left. Pieced blocks stay as they are.
 * Refused where a band of a block is not known, or where the quilt would hold too many sets.
 */
export function makePieced(project: Project, ids: readonly BlockId[]): Command {
  const only = ids.length === 1 ? findBlock(project, ids[0]!)?.number : undefined;
  return {
    label: only
      ? phrase('make block {block} a pieced block', { block: only })
      : counted(ids.length, 'make a pieced block', 'make {count} pieced blocks'),
    change: (draft) => {
      for (const id of ids) {
        const block = findBlock(draft, id);
        if (block?.kind === 'pictured') pieceOne(draft, block);
      }
    },
  };
}

/**
 * Adds a block that was read from a picture as a pieced one, in one change, with its photograph. Refused as `addPictured` and
 * `makePieced` are.
 */
export function addAsPieced(block: NewPictured): Command {
  return {
    label: phrase('add a pieced block from its picture'),
    change: (draft) => {
      addAll(draft, [block]);
      pieceOne(draft, draft.blocks.at(-1) as PicturedBlock);
    },
  };
}

function pieceOne(draft: Project, block: PicturedBlock): void {
  const unknown = firstUnknown(block, draft.wedge);
  if (unknown !== null) {
    const say = 'Block {block}, place {place}: tell all its fabrics first, from the rim to the middle.';
    throw new Refusal('bands-unknown', 'blocks', phrase(say, { block: block.number, place: unknown }));
  }
  const places = block.wedges.map(({ bands }): Place => {
    const shown = bands.map(({ fabric, width }) => ({ fabric: fabric!, width }));
    const strips = sewnStrips(shown, draft.wedge);
    const set =
      draft.stripSets.find((one) => growsWithUse(one) && showsAs(one, strips)) ?? added(draft, shown);
    const there = set.cut ?? { up: 0, down: 0 };
    set.cut = { ...there, up: there.up + 1 };
    return { set: set.id, tip: 'up' };
  });
  const { id, number, picture, cornerFabric, cornerShift, progress } = block;
  const photo = { picture, turn: 0 };
  const at = draft.blocks.findIndex((one) => one.id === id);
  draft.blocks[at] = { id, kind: 'pieced', number, places, photo, cornerFabric, cornerShift, progress };
}

function added(draft: Project, bands: Parameters<typeof addSewnSet>[0]): StripSet {
  if (draft.stripSets.length >= MOST_SETS) {
    const say = 'The quilt would hold more than {most} strip sets. Leave some blocks as pictures.';
    throw new Refusal('too-many-sets', 'stripSets', phrase(say, { most: MOST_SETS }));
  }
  addSewnSet(bands).change?.(draft);
  return draft.stripSets.at(-1)!;
}

function showsAs({ strips }: StripSet, others: readonly Strip[]): boolean {
  return (
    strips.length === others.length &&
    strips.every((strip, at) => {
      const other = others[at]!;
      return strip.fabric === other.fabric && Math.abs(strip.width - other.width) < SAME_WIDTH;
    })
  );
}
