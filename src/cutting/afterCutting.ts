// The cutting table once a plan is cut: strips that came off the ruler, cloth and strips that are left. Nothing is lost: what
// a piece measured is what its strips and its rest measure together.
import type { ClothOnHand, StripOnHand } from '../model/project';
import type { Inches } from '../model/units';
import type { PieceCut } from './largestTop';
import { stripKey } from './stripsUnused';

export interface TableAfter {
  readonly clothOnHand: readonly ClothOnHand[];
  readonly stripsOnHand: readonly StripOnHand[];
  /** Strips that came off the ruler; a strip used as it lay is not among them. */
  readonly cut: number;
}

/** Cloth narrower than this is not written down as left. */
const LEAST_LEFT: Inches = 0.25;

/**
 * The lists after the cuts. Rows of both lists are known by their ids; new rows take the id of the row they come
 * from and a number. A rest of a strip is a strip of its own where it is wide enough for two seams, else it is scrap.
 */
export function afterCutting(
  table: { readonly clothOnHand: readonly ClothOnHand[]; readonly stripsOnHand: readonly StripOnHand[] },
  pieces: readonly PieceCut[],
  widths: readonly Inches[],
  seam: Inches,
): TableAfter {
  const strips = table.stripsOnHand.map((row) => ({ ...row }));
  const cloth: ClothOnHand[] = [];
  let cut = 0;
  const lay = (from: string, strip: Omit<StripOnHand, 'id'>) => {
    const same = strips.find(
      (one) =>
        stripKey(one.fabric, one.width) === stripKey(strip.fabric, strip.width) &&
        Math.abs(one.length - strip.length) < 1e-9,
    );
    if (same) same.count += strip.count;
    else strips.push({ ...strip, id: freshRow(from, [...table.stripsOnHand, ...strips]) });
  };
  const layAll = (from: string, fabric: string, length: Inches, counts: readonly number[]) => {
    counts.forEach((count, at) => {
      if (count === 0) return;
      cut += count;
      lay(from, { fabric, width: widths[at]!, length, count });
    });
  };
  for (const row of table.clothOnHand) {
    const touched = pieces.filter((piece) => piece.of === 'cloth' && piece.row === row.id);
    const whole = row.count - touched.length;
    if (whole > 0) cloth.push({ ...row, count: whole });
    for (const { counts } of touched) {
      layAll(row.id, row.fabric, row.stripLength, counts);
      const depth = row.depth - widthOf(counts, widths);
      if (depth >= LEAST_LEFT - 1e-9) keepRest(cloth, table.clothOnHand, row, depth);
    }
  }
  for (const { id, fabric, width, length } of table.stripsOnHand) {
    for (const { counts } of pieces.filter((piece) => piece.of === 'strips' && piece.row === id)) {
      const rest = width - widthOf(counts, widths);
      const asItLies = rest < 1e-9 && counts.reduce((sum, count) => sum + count, 0) === 1;
      if (asItLies) continue;
      strips.find((one) => one.id === id)!.count -= 1;
      layAll(id, fabric, length, counts);
      if (rest > 2 * seam + 1e-9) lay(id, { fabric, width: rest, length, count: 1 });
    }
  }
  return { clothOnHand: cloth, stripsOnHand: strips.filter((row) => row.count > 0), cut };
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

function widthOf(counts: readonly number[], widths: readonly Inches[]): Inches {
  return counts.reduce((sum, count, at) => sum + count * widths[at]!, 0);
}
