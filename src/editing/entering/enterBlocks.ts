// Enters blocks that are sewn already, or planned elsewhere. A sewn block is a fact: where the sets have too few wedges for it, blocks that
// are only planned give theirs up, and counts of wedges may be corrected in the same command.
import { growsWithUse, wedgeLedger } from '../../cutting/wedges/ledger';
import { createBlock } from '../../model/create';
import { cellIndexOf, findBlock, findSet } from '../../model/find';
import { whyCornersLocked, whyPlacesLocked } from '../../model/freedom';
import { counted, phrase } from '../../model/phrase';
import {
  type Block,
  type BlockId,
  MOST_BLOCKS,
  type Place,
  type Project,
  type StripSet,
  type StripSetId,
} from '../../model/project';
import { type Command, Refusal } from '../apply';
import { hangInEmptyCell, setBlockProgress } from '../commands/blocks';
import { openBlocks } from '../commands/chooseWedges';
import { countedAs } from '../commands/wedgeCount';

/** A block as it was typed in. */
export interface EnteredBlock {
  /** The block it goes into; null: a new block. */
  readonly block: BlockId | null;
  /** The number of a new block; null: the lowest that is free. */
  readonly number: number | null;
  readonly places: readonly (Place | null)[];
  readonly progress: Block['progress'];
}

/** So many wedges of a set and tip that were really cut. */
export interface WedgesCounted extends Place {
  readonly count: number;
}

/** Wedges of one set and tip of which entered blocks use more than there are. */
export interface ShortWedges extends Place {
  /** Wedges that are there, and wedges that sewn, pinned and entered blocks use. */
  readonly there: number;
  readonly needed: number;
}

/** A wedge that a planned block gives up: its block, and its place from 0. */
export interface GivenWedge {
  readonly block: BlockId;
  readonly place: number;
}

export interface Supply {
  readonly given: readonly GivenWedge[];
  readonly short: readonly ShortWedges[];
  /** What the count of a set known only from sewn wedges becomes. */
  readonly grown: readonly WedgesCounted[];
}

/**
 * Where the wedges of entered blocks come from: first what is left over, then planned blocks that are not pinned, from the last number
 * back. What lacks after that is short; a set that is known only from sewn wedges grows by it instead.
 */
export function supplyOf(project: Project, entered: readonly EnteredBlock[]): Supply {
  const into = new Set(entered.map(({ block }) => block));
  const others = project.blocks.filter(({ id }) => !into.has(id));
  const open = new Set(openBlocks(project));
  const givers = others
    .filter(({ id }) => open.has(id))
    .sort((one, other) => other.number - one.number)
    .flatMap(({ id, places }) => places.map((wedge, place) => ({ block: id, place, wedge })));
  const given: GivenWedge[] = [];
  const short: ShortWedges[] = [];
  const grown: WedgesCounted[] = [];
  const after = { ...project, blocks: [...others, ...entered.map(asBlock)] };
  for (const { set, left, available } of wedgeLedger(after)) {
    for (const tip of ['up', 'down'] as const) {
      if (left[tip] >= 0) continue;
      const yielded = givers
        .filter(({ wedge }) => wedge?.set === set.id && wedge.tip === tip)
        .slice(0, -left[tip]);
      given.push(...yielded.map(({ block, place }) => ({ block, place })));
      const over = -left[tip] - yielded.length;
      const there = available[tip];
      if (over <= 0) continue;
      if (growsWithUse(set)) grown.push({ set: set.id, tip, count: there + over });
      else short.push({ set: set.id, tip, there, needed: there + over });
    }
  }
  return { given, short, grown };
}

function asBlock({ places, progress }: EnteredBlock): Block {
  const rest = { id: '', kind: 'pieced', number: 1, cornerFabric: null, cornerShift: 0 } as const;
  return { ...rest, places: [...places], progress };
}

/** The entered wedges for which there is no wedge: for each block the places from 0. The last ones of a type lack. */
export function shortPlaces(
  entered: readonly EnteredBlock[],
  short: readonly ShortWedges[],
): readonly ReadonlySet<number>[] {
  const lacking = new Map(short.map((one) => [`${one.set} ${one.tip}`, one.needed - one.there]));
  const found = entered.map(() => new Set<number>());
  for (let at = entered.length - 1; at >= 0; at -= 1) {
    const { places } = entered[at]!;
    for (let place = places.length - 1; place >= 0; place -= 1) {
      const wedge = places[place];
      const type = wedge ? `${wedge.set} ${wedge.tip}` : '';
      const lacks = lacking.get(type) ?? 0;
      if (lacks === 0) continue;
      found[at]!.add(place);
      lacking.set(type, lacks - 1);
    }
  }
  return found;
}

/** The project with these wedges counted; the same project without any. */
export function withCounts(project: Project, counts: readonly WedgesCounted[]): Project {
  return counts.reduce(
    (now, { set: id, tip, count: there }) =>
      withSet(now, id, (set) => ({ ...set, cut: countedAs(set, tip, there, project.wedge) })),
    project,
  );
}

function withSet(project: Project, id: StripSetId, change: (set: StripSet) => StripSet): Project {
  const stripSets = project.stripSets.map((set) => (set.id === id ? change(set) : set));
  return Object.assign({}, project, { stripSets });
}

/**
 * Enters the blocks with their wedges and their progress, in one change. New blocks hang in the first empty cells. A block that was empty
 * is turned so that place 1 lies at the top, unless it is pinned. Refused where a sewn block would get other wedges, where wedges lack,
 * and as setBlockProgress refuses.
 */
export function enterBlocks(
  project: Project,
  entered: readonly EnteredBlock[],
  counts: readonly WedgesCounted[] = [],
): Command {
  const only = entered.length === 1 ? entered[0] : undefined;
  const known = only?.block ? findBlock(project, only.block)?.number : only?.number;
  const { given, grown } = supplyOf(withCounts(project, counts), entered);
  return {
    label: known
      ? phrase('enter block {block}', { block: known })
      : counted(entered.length, 'enter a block', 'enter {count} blocks'),
    change: (draft) => {
      for (const { block, place } of given) findBlock(draft, block)!.places[place] = null;
      for (const one of [...counts, ...grown]) count(draft, one);
      for (const one of entered) {
        const block = one.block === null ? added(draft, one) : findBlock(draft, one.block);
        if (!block) throw new Error(`enterBlocks: no block ${one.block}`);
        write(draft, block, one.places);
        if (block.progress !== one.progress) setBlockProgress([block.id], one.progress).change?.(draft);
      }
    },
  };
}

function count(draft: Project, { set, tip, count: there }: WedgesCounted): void {
  const found = findSet(draft, set);
  if (!found) throw new Error(`enterBlocks: no set ${set}`);
  found.cut = countedAs(found, tip, there, draft.wedge);
}

function added(draft: Project, { number }: EnteredBlock): Block {
  if (draft.blocks.length >= MOST_BLOCKS)
    throw new Refusal(
      'too-many-blocks',
      'blocks',
      phrase('A quilt holds {most} blocks at most.', { most: MOST_BLOCKS }),
    );
  const block = { ...createBlock(draft), ...(number === null ? {} : { number }) };
  draft.blocks.push(block);
  hangInEmptyCell(draft, block.id);
  return draft.blocks.at(-1)!;
}

function write(draft: Project, block: Block, places: readonly (Place | null)[]): void {
  if (samePlaces(block.places, places)) return;
  const reason = whyPlacesLocked(block);
  if (reason) throw new Refusal('block-held', 'blocks', reason);
  if (block.places.every((place) => place === null) && !whyCornersLocked(draft, block)) {
    block.cornerShift = 0;
    const cell = draft.wall.cells[cellIndexOf(draft, block.id)];
    if (cell) cell.turn = 0;
  }
  block.places = [...places];
}

/** Whether two blocks have the same wedges in the same places. */
export function samePlaces(one: readonly (Place | null)[], other: readonly (Place | null)[]): boolean {
  return (
    one.length === other.length &&
    one.every((wedge, at) => wedge?.set === other[at]?.set && wedge?.tip === other[at]?.tip)
  );
}
