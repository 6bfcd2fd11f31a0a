// The cutting table once a plan is cut: strips that came off the ruler, cloth and strips that are left. Nothing is lost: what
// a piece measured is what its strips and its rest measure together.
import { isTooNarrow } from '../../model/lengths';
import type { ClothOnHand, StripOnHand } from '../../model/project';
import type { Inches } from '../../model/units';
import { stripKey } from '../sets/stripsUnused';
import type { PieceCut, StripCut } from './largestTop';

export interface TableAfter {
  readonly clothOnHand: readonly ClothOnHand[];
  readonly stripsOnHand: readonly StripOnHand[];
  /** Strips that came off the ruler; a strip used as it lay is not among them. */
  readonly cut: number;
}

/** Cloth narrower than this is not written down as left. */
const LEAST_LEFT: Inches = 0.25;
/** Nor are ends of strips shorter than this. */
const LEAST_LENGTH: Inches = 1;

/**
 * The lists after the cuts. Rows of both lists are known by their ids; new rows take the id of the row they come
 * from and a number. A rest or an end of a strip is a strip of its own where it can be sewn, else it is scrap.
 */
export function afterCutting(
  table: { readonly clothOnHand: readonly ClothOnHand[]; readonly stripsOnHand: readonly StripOnHand[] },
  pieces: readonly PieceCut[],
  seam: Inches,
): TableAfter {
  const strips = table.stripsOnHand.map((row) => ({ ...row }));
  const cloth: ClothOnHand[] = [];
  let cut = 0;
  const lay = (from: string, strip: Omit<StripOnHand, 'id'>) => {
    if (isTooNarrow(strip.width, seam) || strip.length < LEAST_LENGTH - 1e-9) return;
    const same = strips.find(
      (one) =>
        stripKey(one.fabric, one.width) === stripKey(strip.fabric, strip.width) &&
        Math.abs(one.length - strip.length) < 1e-9,
    );
    if (same) same.count += strip.count;
    else strips.push({ ...strip, id: freshRow(from, [...table.stripsOnHand, ...strips]) });
  };
  const layAll = (from: string, fabric: string, whole: Inches, cuts: readonly StripCut[]) => {
    for (const { width, count, parts, length } of cuts) {
      cut += count * parts;
      lay(from, { fabric, width, length, count: count * parts });
      lay(from, { fabric, width, length: whole - parts * length, count });
    }
  };
  for (const row of table.clothOnHand) {
    const touched = pieces.filter((piece) => piece.of === 'cloth' && piece.row === row.id);
    const whole = row.count - touched.length;
    if (whole > 0) cloth.push({ ...row, count: whole });
    for (const piece of touched) {
      layAll(row.id, row.fabric, row.stripLength, piece.strips);
      const depth = row.depth - widthOf(piece.strips);
      if (depth >= LEAST_LEFT - 1e-9) keepRest(cloth, table.clothOnHand, row, depth);
    }
  }
  for (const { id, fabric, width, length } of table.stripsOnHand) {
    for (const piece of pieces.filter((one) => one.of === 'strips' && one.row === id)) {
      const rest = width - widthOf(piece.strips);
      if (rest < 1e-9 && asItLies(piece.strips, length)) continue;
      strips.find((one) => one.id === id)!.count -= 1;
      layAll(id, fabric, length, piece.strips);
      lay(id, { fabric, width: rest, length, count: 1 });
    }
  }
  return { clothOnHand: cloth, stripsOnHand: strips.filter((row) => row.count > 0), cut };
}

/** One strip as long as it was: nothing was cut. */
function asItLies(cuts: readonly StripCut[], length: Inches): boolean {
  const [only, ...others] = cuts;
  return (
    others.length === 0 && only?.count === 1 && only.parts === 1 && Math.abs(only.length - length) < 1e-9
  );
}

/** A rest of yardage is still yardage; of anything else it is a remnant. Rests alike are counted together. */
function keepRest(
  cloth: ClothOnHand[],
  before: readonly ClothOnHand[],
  row: ClothOnHand,
  depth: Inches,
): void {
  const kind = row.kind === 'yardage' ? 'yardage' : 'remnant';
  const same = cloth.find(
    (one) =>
      one.fabric === row.fabric &&
      one.kind === kind &&
      Math.abs(one.depth - depth) < 1e-9 &&
      Math.abs(one.stripLength - row.stripLength) < 1e-9,
  );
  if (same) cloth[cloth.indexOf(same)] = { ...same, count: same.count + 1 };
  else {
    const id = cloth.some((one) => one.id === row.id) ? freshRow(row.id, [...before, ...cloth]) : row.id;
    cloth.push({ ...row, id, kind, depth, count: 1 });
  }
}

function freshRow(from: string, rows: readonly { readonly id: string }[]): string {
  const used = new Set(rows.map((row) => row.id));
  const [root] = from.split('.');
  let next = 1;
  while (used.has(`${root}.${next}`)) next += 1;
  return `${root}.${next}`;
}

function widthOf(cuts: readonly StripCut[]): Inches {
  return cuts.reduce((sum, { width, count }) => sum + count * width, 0);
}
