// What a quilt lacks for a whole top, the first thing first: fabrics, height of sets, wedges (and the strips they take), blocks, their
// wedges, their cells. It counts; ui/shell has the words. Doing what is named makes it go, or the next thing takes its place.
import { finishedWidth, heightShort } from '../../geometry/stripSet';
import { HAIR, isTooNarrow } from '../../model/lengths';
import type { Block, Project, StripOnHand, WedgePlan } from '../../model/project';
import type { Inches } from '../../model/units';
import { isPlain } from '../../model/wallCells';
import { lengthClasses } from '../sets/lengthClass';
import { stripsLeftBeside } from '../sets/stripsUnused';
import { wedgeLedger } from '../wedges/ledger';
import type { WedgeCount } from '../wedges/yield';
import { planStrips, usualWidths } from './planStrips';
import { wholeBlocks } from './topGroups';

/** So many blocks more want so many wedges more. */
interface WedgesShort {
  readonly blocks: number;
  readonly wedges: number;
}

export type Lack =
  /** Fewer than two fabrics to sew with: one would lie beside itself in every set. */
  | { readonly kind: 'fabrics'; readonly there: 0 | 1 }
  /** Sets that give no wedge, because they are too low; by how much the lowest is. */
  | ({ readonly kind: 'low sets'; readonly sets: readonly string[]; readonly short: Inches } & WedgesShort)
  /** Strips on hand that are in no set yet and make another. */
  | ({ readonly kind: 'sets'; readonly strips: number } & WedgesShort)
  /** Strips to cut, as planned forwards; null where the usual widths make no set for this wedge. */
  | ({ readonly kind: 'strips'; readonly strips: number | null } & WedgesShort)
  /** Blocks to add; their wedges are there. */
  | { readonly kind: 'blocks'; readonly blocks: number }
  /** Blocks whose places are empty; their wedges are there. */
  | { readonly kind: 'places'; readonly blocks: number }
  /** Empty cells, and the blocks on the side table for them. */
  | { readonly kind: 'cells'; readonly cells: number; readonly waiting: number }
  /** Blocks that hang with empty places, while whole ones wait on the side table. */
  | { readonly kind: 'hung empty'; readonly blocks: number };

/** The first thing a sound project lacks for a whole top; null where it lacks nothing. */
export function firstLack(project: Project): Lack | null {
  const { wall, blocks } = project;
  const cells = wall.cells.filter((_, cell) => !isPlain(cell, project)).length;
  const whole = blocks.filter(isWhole);
  const open = Math.max(0, cells - whole.length);
  const short = wedgesShort(project, whole, open);
  if (short) return wedgesLack(project, short);
  if (blocks.length < cells) return { kind: 'blocks', blocks: cells - blocks.length };
  if (open > 0) return { kind: 'places', blocks: open };
  const hung = new Set(wall.cells.map((cell) => cell?.block));
  const empty = wall.cells.filter((cell, at) => cell === null && !isPlain(at, project)).length;
  if (empty > 0) return { kind: 'cells', cells: empty, waiting: blocks.length - hung.size + 1 };
  const bare = blocks.filter((block) => hung.has(block.id) && !isWhole(block)).length;
  return bare > 0 ? { kind: 'hung empty', blocks: bare } : null;
}

/** Whether every place of a block has its wedge. */
export function isWhole(block: Block): boolean {
  return !block.places.includes(null);
}

/** The wedges that so many more blocks lack, with those no whole block uses; null where they are there. */
function wedgesShort(project: Project, whole: readonly Block[], open: number): WedgesShort | null {
  const { wedge } = project;
  const there = { up: 0, down: 0 };
  for (const { available } of wedgeLedger(project)) {
    there.up += available.up;
    there.down += available.down;
  }
  for (const block of whole) for (const place of block.places) there[place!.tip] -= 1;
  const each = (open * wedge.perBlock) / 2;
  const lack = (count: WedgeCount) => Math.max(0, each - count.up) + Math.max(0, each - count.down);
  const wedges = lack(there);
  return wedges === 0 ? null : { blocks: open - Math.max(0, wholeBlocks(there, wedge)), wedges };
}

function wedgesLack(project: Project, short: WedgesShort): Lack {
  const fabrics = project.fabrics.filter((fabric) => !fabric.background);
  if (fabrics.length < 2) return { kind: 'fabrics', there: fabrics.length === 0 ? 0 : 1 };
  const low = wedgeLedger(project).filter((row) => heightShort(row.height, project.wedge) > 0);
  if (low.length > 0) {
    const shortest = Math.max(...low.map((row) => heightShort(row.height, project.wedge)));
    return { kind: 'low sets', sets: low.map((row) => row.set.label), short: shortest, ...short };
  }
  const left = stripsLeftBeside(project.stripsOnHand, project.stripSets);
  if (makesASet(left, project.wedge))
    return { kind: 'sets', strips: left.reduce((sum, row) => sum + row.count, 0), ...short };
  const strips = stripsFor(short.blocks, project);
  return { kind: 'strips', strips, ...short };
}

const planned = new Map<string, number | null>();
const MOST_KEPT = 40;

/** Strips of the usual widths that so many blocks take, as planned forwards; kept, as a plan for hundreds of blocks takes a while. */
function stripsFor(
  blocks: number,
  { wedge, preferences }: Pick<Project, 'wedge' | 'preferences'>,
): number | null {
  const { unit, usableWidth: length } = preferences;
  const key = JSON.stringify([blocks, wedge, length, unit]);
  const found = planned.get(key);
  if (found !== undefined) return found;
  if (planned.size >= MOST_KEPT) planned.clear();
  // Which fabrics they are of does not change how many they are.
  const plan = planStrips({ blocks, wedge, widths: usualWidths(unit), fabrics: [''], length });
  const strips = plan?.strips.reduce((sum, one) => sum + one.count, 0) ?? null;
  planned.set(key, strips);
  return strips;
}

/** Whether strips of about one length can be laid to a set as high as the wedge in which no fabric lies beside itself. */
export function makesASet(strips: readonly StripOnHand[], wedge: WedgePlan): boolean {
  const wide = strips.filter((row) => !isTooNarrow(row.width, wedge.seam));
  const needed = finishedWidth(wedge.cutHeight, wedge.seam);
  return lengthClasses(wide, wedge).some(({ rows }) => highest(rows, wedge.seam) >= needed - HAIR);
}

/** What the strips add to the height of one set at most: of n strips no more than ⌈n/2⌉ are of one fabric. */
function highest(rows: readonly StripOnHand[], seam: Inches): Inches {
  const byFabric = new Map<string, Inches[]>();
  for (const { fabric, width, count } of rows) {
    const gains = byFabric.get(fabric) ?? [];
    gains.push(...Array.from({ length: count }, () => finishedWidth(width, seam)));
    byFabric.set(fabric, gains);
  }
  const sorted = [...byFabric.values()].map((gains) => gains.sort((one, other) => other - one));
  const all = sorted.reduce((sum, gains) => sum + gains.length, 0);
  // Only a fabric with more strips than all others together has some left out: all but one more than the others.
  return sorted.reduce(
    (sum, gains) => sum + gains.slice(0, all - gains.length + 1).reduce((total, gain) => total + gain, 0),
    0,
  );
}
