// The lines of one fabric and where they lie on its cloth, chosen together: strips lie across the cloth, but where lengths leave
// cloth beside them that would be bought again for a line, that line is cut along it.
import { HAIR } from '../../model/lengths';
import type { Inches } from '../../model/units';
import { type ClothLayout, type CutPart, layOutCutting } from './clothLayout';
import { type Cloth, type CuttingLine, cuttingLines } from './cuttingLine';
import type { NeededPiece } from './neededPiece';

export interface LinesOnCloth {
  readonly lines: readonly CuttingLine[];
  /** A cut's `line` is an index into `lines`. */
  readonly layout: ClothLayout;
}

/** Lines for rows of one fabric on its cloth, what is on hand first. Lines are tried one by one in their order. */
export function linesOnCloth(
  rows: readonly NeededPiece[],
  cloth: Cloth,
  stock: readonly { readonly across: Inches; readonly along: Inches }[],
): LinesOnCloth {
  let best = laidOut(cuttingLines(rows, cloth), cloth, stock);
  const long = Math.max(0, ...best.lines.flatMap(({ cuts }) => cuts.map(({ along }) => along)));
  if (long <= cloth.width + HAIR) return best;
  const beside = new Set<number>();
  for (const [index, { mayTurn }] of best.lines.entries()) {
    if (!mayTurn) continue;
    const lines = cuttingLines(rows, cloth, { lines: new Set([...beside, index]), long });
    const other = laidOut(lines, cloth, stock);
    if (other.layout.length >= best.layout.length - HAIR) continue;
    best = other;
    beside.add(index);
  }
  return best;
}

function laidOut(
  lines: readonly CuttingLine[],
  { width }: Cloth,
  stock: readonly { readonly across: Inches; readonly along: Inches }[],
): LinesOnCloth {
  const layout = layOutCutting(partsOf(lines), { width }, stock);
  if (!layout) throw new Error('linesOnCloth: a line without a problem does not fit its cloth');
  return { lines, layout };
}

export function partsOf(lines: readonly CuttingLine[]): CutPart[] {
  return lines.flatMap((line, index) => line.cuts.map((cut) => ({ ...cut, line: index })));
}
