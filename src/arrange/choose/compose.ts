// Wedges chosen for blocks: tip up and tip down in turn, no more wedges than were cut, no fabric meeting itself on a rim
// whenever that is possible, and a plain statement of what was proved. Sewn and pinned blocks are left alone.
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { cellOf } from '../../model/find';
import { whyPlacesLocked } from '../../model/freedom';
import type { Move } from '../../model/moves';
import { counted, type Phrase, phrase } from '../../model/phrase';
import type { Block, BlockId, Place, Project } from '../../model/project';
import { atOnce, type InParts } from '../../model/work/parts';
import { type Deal, dealing } from './composeDeal';
import { fewestClashes, leastClashes, type RimSupply } from './composeRims';
import { layRing, type RingCosts } from './composeRing';
import { besideTable, clashInches, type WedgeType, wedgeTypeKey, wedgeTypes } from './wedgeTypes';

export interface Composition {
  /** Places to fill and to empty, for one command. */
  readonly moves: Move[];
  /** Blocks made whole, and blocks for which wedges did not suffice (their places are emptied). */
  readonly made: readonly BlockId[];
  readonly leftOut: readonly BlockId[];
  /** Seams in the blocks made at which a fabric meets itself on the rim, and the count no choice can go below. */
  readonly rimClashes: number;
  readonly atLeast: number;
  /** 'none': no fabric meets itself on a rim. 'fewest': clashes, but proved unavoidable. 'unproved': maybe fewer would do. */
  readonly proved: 'none' | 'fewest' | 'unproved';
  readonly words: Phrase[];
}

/** Search steps for the second aims (little clash, varied wedges): a few for each block, bounded for big walls. */
const STEPS_PER_BLOCK = 600;
const MOST_STEPS = 60_000;
/** Restarts while there are more clashes than the proven least. */
const STARTS = 6;

/** Composes blocks in one go. */
export function composeBlocks(...asked: Parameters<typeof composingBlocks>): Composition {
  return atOnce(composingBlocks(...asked));
}

/**
 * Composes blocks, in parts of a few milliseconds. `which`: these blocks (planned, not pinned; others are left alone), or so many: the first blocks that
 * have an empty place, by number. All places of these blocks are filled anew. The same seed gives the same blocks.
 */
export function* composingBlocks(
  project: Project,
  which: readonly BlockId[] | number,
  seed: number,
): InParts<Composition> {
  const chosen = chosenBlocks(project, which);
  const half = project.wedge.perBlock / 2;
  const types = wedgeTypes(project, chosen).filter((type) => type.count > 0 && type.rim !== null);
  const there = (tip: Place['tip']) =>
    types.reduce((sum, type) => sum + (type.wedge.tip === tip ? type.count : 0), 0);
  const enough = Math.min(Math.floor(there('up') / half), Math.floor(there('down') / half), chosen.length);
  const blocks = chosen.slice(0, enough);
  const leftOut = chosen.slice(enough);
  const filled = enough === 0 ? null : yield* filling(project, types, enough, half, seed);
  const moves = [
    ...leftOut.flatMap((block) =>
      placeMoves(
        block,
        block.places.map(() => null),
      ),
    ),
    ...blocks.flatMap((block, at) => placeMoves(block, filled!.rings[at]!)),
  ];
  const rimClashes = filled?.clashes ?? 0;
  const atLeast = filled?.atLeast ?? 0;
  const proved = rimClashes === 0 ? 'none' : rimClashes === atLeast ? 'fewest' : 'unproved';
  const made = blocks.map((block) => block.id);
  const words = [
    ...outcomeWords(made.length, rimClashes, atLeast, filled?.worst ?? null),
    ...shortWords(leftOut.length, half, there('up') - enough * half, there('down') - enough * half),
  ];
  return { moves, made, leftOut: leftOut.map((block) => block.id), rimClashes, atLeast, proved, words };
}

function chosenBlocks(project: Project, which: readonly BlockId[] | number): Block[] {
  const free = project.blocks
    .filter((block) => whyPlacesLocked(block) === null && !cellOf(project, block.id)?.pinned)
    .toSorted((one, other) => one.number - other.number);
  if (typeof which === 'number') {
    return free.filter((block) => block.places.includes(null)).slice(0, which);
  }
  const wanted = new Set(which);
  return free.filter((block) => wanted.has(block.id));
}

interface Filled {
  readonly rings: readonly Place[][];
  readonly clashes: number;
  readonly atLeast: number;
  /** Name of the fabric behind most clashes. */
  readonly worst: string | null;
}

function* filling(
  project: Project,
  types: readonly WedgeType[],
  blocks: number,
  half: number,
  seed: number,
): InParts<Filled> {
  const rims = [...new Set(types.filter((type) => !type.background).map((type) => type.rim!))];
  const rimAt = new Map(rims.map((rim, index) => [rim, index]));
  const rimOf = (type: WedgeType) => (type.background ? -1 : rimAt.get(type.rim!)!);
  const atLeast = leastClashes(supplyOf(types, rimOf, rims.length), blocks, half);
  const beside = besideTable(project);
  const deep = (up: number, down: number) => clashInches(beside(types[up]!, types[down]!));
  const sets = [...new Set(types.map((type) => type.wedge.set))];
  const input = {
    types: types.map((type) => ({
      up: type.wedge.tip === 'up',
      rim: rimOf(type),
      count: type.count,
      set: sets.indexOf(type.wedge.set),
    })),
    blocks,
    half,
    clashInches: deep,
    leastClashes: atLeast,
  };
  const random = xoroshiro128plus(seed);
  const steps = Math.min(MOST_STEPS, STEPS_PER_BLOCK * blocks);
  let best: Deal = yield* dealing(input, steps, random);
  for (let start = 1; start < STARTS && best.clashes > atLeast; start += 1) {
    const next = yield* dealing(input, steps, random);
    if (next.clashes < best.clashes) best = next;
  }
  const costs: RingCosts = { clash: (up, down) => beside(types[up]!, types[down]!).rimClash, deep };
  const rings: Place[][] = [];
  for (const { ups, downs } of best.hands) {
    yield null;
    const allowed = clashesByRim({ ups, downs }, types, half).reduce((sum, { clashes }) => sum + clashes, 0);
    rings.push(layRing(ups, downs, allowed, costs).places.map((type) => types[type]!.wedge));
  }
  return { rings, clashes: best.clashes, atLeast, worst: worstRim(project, best, types, half) };
}

function supplyOf(types: readonly WedgeType[], rimOf: (type: WedgeType) => number, rims: number): RimSupply {
  const ups = Array.from({ length: rims }, () => 0);
  const downs = Array.from({ length: rims }, () => 0);
  const harmless = { ups: 0, downs: 0 };
  for (const type of types) {
    const side = type.wedge.tip === 'up' ? 'ups' : 'downs';
    const rim = rimOf(type);
    if (rim < 0) harmless[side] += type.count;
    else (side === 'ups' ? ups : downs)[rim]! += type.count;
  }
  return { ups, downs, harmless };
}

/** Clashes the ring of these wedges cannot avoid, fabric by fabric. */
function clashesByRim(
  hand: Deal['hands'][number],
  types: readonly WedgeType[],
  half: number,
): { rim: string; clashes: number }[] {
  const rims = [...new Set(hand.ups.map((type) => types[type]!))]
    .filter((type) => !type.background)
    .map((type) => type.rim!);
  const times = (side: readonly number[], rim: string) =>
    side.reduce((sum, type) => sum + (types[type]!.rim === rim ? 1 : 0), 0);
  return [...new Set(rims)].map((rim) => ({
    rim,
    clashes: fewestClashes(times(hand.ups, rim), times(hand.downs, rim), half),
  }));
}

/** Name of the fabric behind most of the clashes that are left, or null without any. */
function worstRim(project: Project, found: Deal, types: readonly WedgeType[], half: number): string | null {
  const totals = new Map<string, number>();
  for (const { rim, clashes } of found.hands.flatMap((hand) => clashesByRim(hand, types, half))) {
    totals.set(rim, (totals.get(rim) ?? 0) + clashes);
  }
  const worst = [...totals].sort((one, other) => other[1] - one[1])[0];
  if (!worst || worst[1] === 0) return null;
  return project.fabrics.find((fabric) => fabric.id === worst[0])?.name ?? worst[0];
}

function placeMoves(block: Block, places: readonly (Place | null)[]): Move[] {
  return places.flatMap((wedge, place): Move[] => {
    const now = block.places[place] ?? null;
    const same = now === null || wedge === null ? now === wedge : wedgeTypeKey(now) === wedgeTypeKey(wedge);
    return same ? [] : [{ kind: 'place', block: block.id, place, wedge: wedge && { ...wedge } }];
  });
}

function outcomeWords(made: number, clashes: number, atLeast: number, worst: string | null): Phrase[] {
  if (made === 0) return [];
  const blocks = counted(made, '1 block filled.', '{count} blocks filled.');
  if (clashes === 0) {
    return [phrase('{blocks} No fabric meets itself on a rim.', { blocks })];
  }
  const met = counted(
    clashes,
    '1 seam has the same fabric on both rims, mostly {fabric}.',
    '{count} seams have the same fabric on both rims, mostly {fabric}.',
    { fabric: worst ?? '' },
  );
  const proof =
    clashes === atLeast
      ? phrase('These wedges allow no fewer: too many rims are of one fabric.')
      : phrase('At least {atLeast} cannot be avoided; fewer than {clashes} may be possible.', {
          atLeast,
          clashes,
        });
  return [phrase('{blocks} {met} {proof}', { blocks, met, proof })];
}

function shortWords(leftOut: number, half: number, ups: number, downs: number): Phrase[] {
  if (leftOut === 0) return [];
  const blocks = counted(leftOut, 'Not enough wedges for 1 block:', 'Not enough wedges for {count} blocks:');
  const up = Math.max(0, leftOut * half - ups);
  const down = Math.max(0, leftOut * half - downs);
  if (up === 0) return [phrase('{blocks} cut {down} more tip down.', { blocks, down })];
  if (down === 0) return [phrase('{blocks} cut {up} more tip up.', { blocks, up })];
  return [phrase('{blocks} cut {up} more tip up and {down} more tip down.', { blocks, up, down })];
}
