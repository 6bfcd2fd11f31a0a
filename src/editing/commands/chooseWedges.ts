// Commands that choose wedges for blocks, with words on what was proved. arrange/choose does the search.
import { composeBlocks, composingBlocks } from '../../arrange/choose/compose';
import { repair, repairing } from '../../arrange/choose/composeRepair';
import { wedgeLedger } from '../../cutting/wedges/ledger';
import { cellOf, findBlock } from '../../model/find';
import { whyPlacesLocked } from '../../model/freedom';
import { type Move, moved } from '../../model/moves';
import { counted, type Phrase, phrase } from '../../model/phrase';
import type { Block, BlockId, Project } from '../../model/project';
import { atOnce, type InParts } from '../../model/work/parts';
import { apply, type Command, type Rearrangement } from '../apply';
import { addBlocks } from './blocks';

/** The number of whole blocks that all cut wedges allow; half the wedges of a block are tip up, half tip down. */
export function blocksAllowed(project: Project): number {
  const half = project.wedge.perBlock / 2;
  let up = 0;
  let down = 0;
  for (const row of wedgeLedger(project)) {
    up += row.available.up;
    down += row.available.down;
  }
  return Math.floor(Math.min(up, down) / half);
}

/** Ids of the blocks whose wedges may be chosen: planned and not pinned. */
export function openBlocks(project: Project): BlockId[] {
  return project.blocks
    .filter((block) => whyPlacesLocked(block) === null && !cellOf(project, block.id)?.pinned)
    .map((block) => block.id);
}

export interface Choosing<C extends Command = Rearrangement> {
  readonly command: C;
  /** The result and what was proved, to show once the command is done. */
  readonly words: readonly Phrase[];
}

/** Chooses all wedges of these blocks anew, except of sewn and pinned blocks. The same seed gives the same choice. */
export function chooseWedges(project: Project, blocks: readonly BlockId[], seed: number): Choosing {
  const { moves, words } = composeBlocks(project, blocks, seed);
  const only = blocks.length === 1 ? findBlock(project, blocks[0]!) : undefined;
  const label = only
    ? phrase('choose the wedges of block {block}', { block: only.number })
    : counted(blocks.length, 'choose the wedges', 'choose the wedges of {count} blocks');
  return { command: seeded(moves, label, seed), words };
}

/**
 * Fills empty places: first those of partly filled blocks, with the fewest changes, then whole empty blocks from the wedges
 * that are left.
 */
export function fillEmpty(project: Project, seed: number): Choosing {
  return atOnce(fillingEmpty(project, seed));
}

/** The same in parts of a few milliseconds. */
export function* fillingEmpty(project: Project, seed: number): InParts<Choosing> {
  const mended = yield* repairing(project);
  const after = moved(project, mended.moves);
  const open = new Set(openBlocks(project));
  const bare = project.blocks.filter(
    (block) => open.has(block.id) && block.places.every((place) => place === null),
  );
  const composed = yield* composingBlocks(
    after,
    bare.map((block) => block.id),
    seed,
  );
  const someOpen = project.blocks.some((block) => block.places.includes(null) && !bare.includes(block));
  return {
    command: seeded([...mended.moves, ...composed.moves], phrase('fill the empty places'), seed),
    words: [...(someOpen ? mended.words : []), ...(bare.length > 0 ? composed.words : [])],
  };
}

/**
 * Adds blocks and fills them with wedges that are left, as many blocks as can be made whole; what is left then goes into one more.
 * Other blocks do not change. The same seed gives the same blocks.
 */
export function addFilledBlocks(project: Project, count: number, seed: number): Choosing<Command> {
  const adding = addBlocks(count);
  const added = apply(project, adding);
  if (!added.ok) return { command: adding, words: [] };
  const there = new Set(project.blocks.map((block) => block.id));
  const fresh = added.project.blocks.filter((block) => !there.has(block.id)).map((block) => block.id);
  const { moves, leftOut } = composeBlocks(added.project, fresh, seed);
  const whole = moved(added.project, moves);
  const filled = leftOut[0] === undefined ? whole : filledInPart(whole, leftOut[0]);
  const blocks = filled.blocks.filter((block) => !there.has(block.id));
  return {
    command: {
      label: adding.label,
      change: (draft) => {
        adding.change?.(draft);
        for (const { id, places } of blocks) {
          const block = findBlock(draft, id);
          if (block) block.places = places.map((place) => place && { ...place });
        }
        draft.preferences.seed = seed;
      },
    },
    words: [addedWords(blocks)],
  };
}

/** The project with the wedges that are left in one empty block, as far as they go; the other blocks stay as they are. */
function filledInPart(project: Project, id: BlockId): Project {
  const [most] = wedgeLedger(project)
    .flatMap(({ set, left }) => TIPS.map((tip) => ({ set: set.id, tip, left: left[tip] })))
    .filter((one) => one.left > 0)
    .toSorted((one, other) => other.left - one.left);
  if (!most) return project;
  const { set, tip } = most;
  const begun = moved(project, [{ kind: 'place', block: id, place: 0, wedge: { set, tip } }]);
  // Repair leaves sewn blocks alone: taken as sewn, the others give nothing up and stay as they are.
  const alone = begun.blocks.map(
    (block): Block => (block.id === id ? block : { ...block, progress: 'octagon' }),
  );
  return moved(begun, repair({ ...begun, blocks: alone }).moves);
}

const TIPS = ['up', 'down'] as const;

function addedWords(blocks: readonly Block[]): Phrase {
  const empty = blocks.map((block) => block.places.filter((place) => place === null).length);
  const whole = empty.filter((places) => places === 0).length;
  const bare = blocks.filter((block) => block.places.every((place) => place === null)).length;
  const part = empty.find((places, at) => places > 0 && places < blocks[at]!.places.length);
  const said = [
    whole > 0
      ? counted(whole, '1 block added and filled', '{count} blocks added and filled')
      : counted(blocks.length, '1 block added', '{count} blocks added'),
    ...(part === undefined ? [] : [holding(blocks.length, part)]),
    ...(bare === 0
      ? []
      : [blocks.length === 1 ? phrase('it is empty') : counted(bare, '1 is empty', '{count} are empty')]),
  ];
  return phrase('{said}.', {
    said: said.reduce((first, next) => phrase('{first}; {next}', { first, next })),
  });
}

function holding(blocks: number, empty: number): Phrase {
  return blocks === 1
    ? counted(empty, 'it has 1 empty place', 'it has {count} empty places')
    : counted(empty, '1 has 1 empty place', '1 has {count} empty places');
}

/** A command that carries out the moves and stores the seed that gave them. */
function seeded(moves: readonly Move[], label: Phrase, seed: number): Rearrangement {
  return {
    label,
    moves,
    change: (draft) => {
      draft.preferences.seed = seed;
    },
  };
}
