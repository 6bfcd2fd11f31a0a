// From a number of blocks to a top: rows and columns, finished size, and the cloth that corners, sashing, borders and binding
// take in the quilt's setting. Whether the cloth on hand is enough for them, and if not, for how large a top.
import { layOut } from '../../geometry/setting';
import { wedgeProblem } from '../../geometry/wedge';
import { sellingUnit } from '../../model/buying';
import { createBlock } from '../../model/create';
import { counted, type Phrase, phrase } from '../../model/phrase';
import type { ClothOnHand, Fabric, Project } from '../../model/project';
import type { Inches } from '../../model/units';
import { cellCount, isPlain } from '../../model/wallCells';
import { rowWords } from '../../model/words/rowWords';
import { clothText } from '../yardage/clothLength';
import { fabricYardage } from '../yardage/fabricYardage';
import { CUTTING_STEPS, type NeededPiece, STEP_NAMES } from '../yardage/neededPiece';
import { neededPieces } from '../yardage/neededPieces';
import { blocksOn } from './sizeOffers';

export interface TopSize {
  readonly rows: number;
  readonly columns: number;
  /** Blocks on it; no more than were asked for. */
  readonly blocks: number;
  /** Finished, inches. */
  readonly width: Inches;
  readonly height: Inches;
}

/** Cloth of one fabric for everything but the strip sets. */
export interface SettingCloth {
  readonly fabric: Fabric;
  /** As sold, inches: all of it, and what the cloth on hand does not give. */
  readonly needed: Inches;
  readonly short: Inches;
  /** Whether any of it is on hand. */
  readonly onHand: boolean;
  readonly words: Phrase;
}

export interface TopFit {
  readonly size: TopSize;
  readonly setting: readonly SettingCloth[];
  /** The largest top the setting's cloth on hand is enough for, where that is smaller; `size` null where it is for none. */
  readonly limit: { readonly fabric: Fabric; readonly size: TopSize | null } | null;
  readonly words: readonly Phrase[];
}

const MOST = 40;
/** A top should be no longer than this times its width; each row beyond is worth leaving a block over (our choice). */
const LONGEST = 1.5;

/**
 * The top these blocks make: rows and columns as on the wall where the number is the wall's, else as many blocks as go on a
 * top not much longer than wide, standing or lying as the wall does. Null without blocks or where the wedge makes none.
 */
export function topSize(project: Project, blocks: number): TopSize | null {
  if (blocks < 1 || wedgeProblem(project.wedge)) return null;
  const { rows, columns } = project.wall;
  if (blocksOn(project, rows, columns) === blocks) return sizeOf(project, rows, columns);
  let best: readonly [number, number] | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (let short = 1; short <= MOST; short += 1) {
    for (let long = short; long <= MOST; long += 1) {
      const shape = columns > rows ? ([short, long] as const) : ([long, short] as const);
      const there = blocksOn(project, ...shape);
      if (there < 1 || there > blocks) continue;
      const cost = blocks - there + Math.max(0, long - LONGEST * short);
      if (cost < least - 1e-9) [best, least] = [shape, cost];
    }
  }
  return best && sizeOf(project, ...best);
}

function sizeOf(project: Project, rows: number, columns: number): TopSize {
  const { width, height } = layOut(hungAt(project, rows, columns));
  return { rows, columns, blocks: blocksOn(project, rows, columns), width, height };
}

/** The quilt with all its places filled: with its own blocks, then with planned ones. Gaps of their own are evened out. */
function hungAt(project: Project, rows: number, columns: number): Project {
  const planned = { ...createBlock(project), cornerFabric: null };
  const same = rows === project.wall.rows && columns === project.wall.columns;
  const { columnGaps: _, rowGaps: __, ...sashing } = project.setting.sashing;
  const setting = same ? project.setting : { ...project.setting, sashing };
  const own = project.blocks.map((block) => block.id);
  const cells = Array.from({ length: cellCount(rows, columns, setting.layout) }, () => null);
  const hanging = { ...project, setting, wall: { rows, columns, cells } };
  return {
    ...hanging,
    blocks: [...project.blocks, planned],
    wall: {
      rows,
      columns,
      cells: cells.map((__cell, at) =>
        isPlain(at, hanging) ? null : { block: own.shift() ?? planned.id, turn: 0, pinned: false },
      ),
    },
    // Lengths off the bolt: whether fat quarters are cheaper is the yardage's affair.
    buying: { ...project.buying, fatQuarters: false },
  };
}

/**
 * Cloth for corners, sashing, setting, borders and binding of a top of these rows and columns, by fabric. `clothOnHand` is what
 * is left of the cloth once strips are cut from it.
 */
export function settingCloth(
  project: Project,
  { rows, columns }: Pick<TopSize, 'rows' | 'columns'>,
  clothOnHand: readonly ClothOnHand[],
): SettingCloth[] {
  const hung = { ...hungAt(project, rows, columns), clothOnHand: [...clothOnHand] };
  const pieces = neededPieces(hung, 'left').filter((piece) => piece.step !== 'sets');
  return project.fabrics.flatMap((fabric) => {
    const own = pieces.filter((piece) => piece.fabric === fabric.id);
    return own.length > 0 ? [clothOf(hung, fabric, own)] : [];
  });
}

function clothOf(project: Project, fabric: Fabric, pieces: readonly NeededPiece[]): SettingCloth {
  const inches = (scope: 'whole' | 'left') => {
    const { buy } = fabricYardage(project, fabric, pieces, scope);
    return buy.kind === 'length' ? buy.inches : 0;
  };
  const [needed, short] = [inches('whole'), inches('left')];
  const onHand = project.clothOnHand.some((row) => row.fabric === fabric.id);
  const unit = sellingUnit(project);
  const values = {
    fabric: fabric.name,
    parts: partWords(pieces),
    needed: clothText(needed, unit),
    short: clothText(short, unit),
  };
  const say =
    short <= 0
      ? '{fabric}, {needed} for {parts}: there is enough.'
      : onHand
        ? '{fabric}, {needed} for {parts}: {short} more to buy.'
        : '{fabric}, {needed} for {parts}: none is on hand.';
  return { fabric, needed, short, onHand, words: phrase(say, values) };
}

/** Corners of the blocks, sashing and binding. */
function partWords(pieces: readonly NeededPiece[]): Phrase {
  const names = CUTTING_STEPS.filter((step) => pieces.some((piece) => piece.step === step)).map(
    (step) => PARTS[step] ?? STEP_NAMES[step],
  );
  const last = names.at(-1)!;
  if (names.length === 1) return last;
  const first = names.slice(0, -1).reduce((said, one) => phrase('{said}, {one}', { said, one }));
  return phrase('{first} and {last}', { first, last });
}

const PARTS: Partial<Record<NeededPiece['step'], Phrase>> = {
  corners: phrase('corners'),
  setting: phrase('the setting'),
  sashing: phrase('sashing'),
  borders: phrase('borders'),
  binding: phrase('binding'),
};

/** Size and setting of the top that so many blocks make; null without blocks. */
export function topFit(project: Project, blocks: number, clothOnHand: readonly ClothOnHand[]): TopFit | null {
  const size = topSize(project, blocks);
  if (!size) return null;
  const setting = settingCloth(project, size, clothOnHand);
  // A fabric nobody has written down is to be bought; one there is too little of is a limit.
  const scarce = setting.filter((row) => row.onHand && row.short > 0).map((row) => row.fabric.id);
  const limit = scarce.length > 0 ? limitOf(project, size, clothOnHand, new Set(scarce)) : null;
  return { size, setting, limit, words: fitWords(blocks - size.blocks, size, setting, limit) };
}

/**
 * The largest smaller top for which none of these fabrics is short, by halving: fewer blocks take no more cloth, but for the
 * shape of the top. With it the fabric that is short just above it.
 */
function limitOf(
  project: Project,
  size: TopSize,
  clothOnHand: readonly ClothOnHand[],
  scarce: ReadonlySet<string>,
): TopFit['limit'] {
  const shortOf = (top: TopSize) =>
    settingCloth(project, top, clothOnHand).find((row) => scarce.has(row.fabric.id) && row.short > 0);
  let fabric = shortOf(size)!.fabric;
  let found: TopSize | null = null;
  let [low, high] = [0, size.blocks];
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    const top = topSize(project, middle);
    const short = top ? shortOf(top) : null;
    if (short) {
      fabric = short.fabric;
      high = middle;
    } else {
      if (top) found = top;
      low = middle;
    }
  }
  return { fabric, size: found };
}

function fitWords(
  over: number,
  size: TopSize,
  setting: readonly SettingCloth[],
  limit: TopFit['limit'],
): Phrase[] {
  const { width, height } = size;
  const measures = { rows: rowWords(size), width: { inches: width }, height: { inches: height } };
  const top = phrase('In this setting, a top of {rows}: {width} × {height} finished.', measures);
  const left = counted(over, '{top} 1 block is over.', '{top} {count} blocks are over.', { top });
  const words = [over > 0 ? left : top, ...setting.map((row) => row.words)];
  if (limit?.size) {
    const { fabric, size: smaller } = limit;
    const say = 'So {fabric} is the limit: what is on hand is enough for {rows}, {width} × {height}.';
    words.push(
      phrase(say, {
        fabric: fabric.name, rows: rowWords(smaller), width: { inches: smaller.width }, height: { inches: smaller.height },
      }), // biome-ignore format: short
    );
  } else if (limit) {
    words.push(phrase('So {fabric} is the limit: what is on hand is not enough for one block.', { fabric: limit.fabric.name })); // biome-ignore format: short
  }
  return words;
}
