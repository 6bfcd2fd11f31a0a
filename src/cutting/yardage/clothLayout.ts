// Where every piece lies on its cloth, as it is really cut: strips straight across the cloth, cut apart in rows; what is
// left at the end of a strip is a small cloth of its own. That the listed cloth suffices is shown by building the layout.
import { HAIR, piecesIn } from '../../model/lengths';
import type { Inches } from '../../model/units';

/** So many equal rectangles: `across` the cloth from selvage to selvage, `along` its length, inches. */
export interface CutPart {
  /** Index of the line in the cutting list they belong to. */
  readonly line: number;
  readonly across: Inches;
  readonly along: Inches;
  readonly count: number;
}

/** A piece of cloth: from selvage to selvage (or what is straight), and along its length. */
export interface ClothSheet {
  readonly across: Inches;
  readonly along: Inches;
  /** Index of the cloth on hand it is; null for new cloth. */
  readonly stock: number | null;
}

/** One rectangle where it lies: x across the cloth, y along it, from the corner of its sheet. */
export interface PlacedCut {
  readonly line: number;
  /** Index into `strips`. */
  readonly strip: number;
  readonly sheet: number;
  readonly x: Inches;
  readonly y: Inches;
  readonly across: Inches;
  readonly along: Inches;
}

/** A strip straight across the cloth, and the rows that are cut from it. */
export interface ClothStrip {
  readonly sheet: number;
  readonly y: Inches;
  readonly along: Inches;
  /** The first row is why the strip was cut; the others come from what is left at its end. */
  readonly rows: readonly CutPart[];
}

export interface ClothLayout {
  /** Cloth on hand that could be used first, then what is new: one length off the bolt, as long as its strips, or whole sheets. */
  readonly sheets: readonly ClothSheet[];
  /** Length of the new cloth together, and how many sheets of it (1 off the bolt, 0 where nothing is needed). */
  readonly length: Inches;
  readonly newSheets: number;
  readonly placed: readonly PlacedCut[];
  readonly strips: readonly ClothStrip[];
}

interface Rest {
  readonly sheet: number;
  /** The strip it is left of, or −1 for cloth no strip is cut from yet. */
  readonly strip: number;
  readonly x: Inches;
  readonly y: Inches;
  readonly across: Inches;
  readonly along: Inches;
}

/** New cloth: its usable width, and how long a sheet is; off the bolt it is as long as it takes. */
export interface NewCloth {
  readonly width: Inches;
  readonly sheetLength?: Inches;
}

/**
 * Lays all parts out, on the cloth on hand first and then on new cloth. Deep pieces go first, each row into the tightest rest
 * that takes it (first fit decreasing: a rule of thumb, within the cloth but not proved the least). Strips
 * are kept apart by line where that takes no more new cloth. Null when a piece does not fit on new cloth.
 */
export function layOutCutting(
  parts: readonly CutPart[],
  cloth: NewCloth,
  stock: readonly { readonly across: Inches; readonly along: Inches }[] = [],
): ClothLayout | null {
  const wanted = parts.filter((part) => part.count > 0);
  const sheetLength = cloth.sheetLength ?? Number.POSITIVE_INFINITY;
  if (wanted.some((part) => part.across > cloth.width + HAIR || part.along > sheetLength + HAIR)) return null;
  const mixed = laidOut(wanted, cloth, stock, true);
  const apart = laidOut(wanted, cloth, stock, false);
  return apart.length <= mixed.length + HAIR ? apart : mixed;
}

function laidOut(
  parts: readonly CutPart[],
  cloth: NewCloth,
  stock: readonly { readonly across: Inches; readonly along: Inches }[],
  sharing: boolean,
): ClothLayout {
  const most = parts.reduce((sum, { count }) => sum + count, 0);
  const table = new Table(cloth, stock, sharing, most);
  const order = parts
    .map((part, index) => ({ part, index }))
    .sort(
      (one, other) =>
        other.part.along - one.part.along || other.part.across - one.part.across || one.index - other.index,
    );
  for (const { part } of order) table.cut(part);
  return table.layout();
}

/** The cloth while it is being cut. */
class Table {
  private readonly placed: PlacedCut[] = [];
  private readonly strips: { sheet: number; y: Inches; along: Inches; rows: CutPart[] }[] = [];
  private readonly sheets: ClothSheet[] = [];
  private readonly cloth: NewCloth;
  private readonly sharing: boolean;
  /** Number of sheets that are cloth on hand; they come first. */
  private readonly onHand: number;
  /** Number of pieces on hand that are no sheet, because there are more of them than could be used. */
  private readonly leftOut: number;
  private rests: Rest[] = [];

  constructor(
    cloth: NewCloth,
    stock: readonly { readonly across: Inches; readonly along: Inches }[],
    sharing: boolean,
    most: number,
  ) {
    this.cloth = cloth;
    this.sharing = sharing;
    let alike = 0;
    stock.forEach(({ across, along }, index) => {
      const before = stock[index - 1];
      alike = before && before.across === across && before.along === along ? alike + 1 : 0;
      // Of pieces that are alike the first is next: the others need not be compared, nor more of them be there than there are parts.
      if (alike === 0) this.addSheet({ across, along, stock: index });
      else if (alike < most) this.sheets.push({ across, along, stock: index });
    });
    this.onHand = this.sheets.length;
    this.leftOut = stock.length - this.onHand;
  }

  cut(part: CutPart): void {
    let left = part.count;
    while (left > 0) {
      const rest = this.tightest(part) ?? this.freshSheet();
      left -= this.cutRow(rest, part, left);
    }
  }

  layout(): ClothLayout {
    const used = this.strips.reduce<number[]>((ends, strip) => {
      ends[strip.sheet] = Math.max(ends[strip.sheet] ?? 0, strip.y + strip.along);
      return ends;
    }, []);
    const sheets = this.sheets.map((sheet, index) =>
      sheet.along === Number.POSITIVE_INFINITY ? { ...sheet, along: used[index] ?? 0 } : sheet,
    );
    const fresh = sheets.filter((sheet) => sheet.stock === null);
    const length = fresh.reduce((sum, sheet) => sum + sheet.along, 0);
    return { sheets, length, newSheets: fresh.length, placed: this.placed, strips: this.strips };
  }

  /** The rest with the least depth to spare, then the least width; uncut cloth only where nothing else takes the piece. */
  private tightest(part: CutPart): Rest | null {
    let best: Rest | null = null;
    let bestSpare = Number.POSITIVE_INFINITY;
    for (const rest of this.rests) {
      if (rest.across < part.across - HAIR || rest.along < part.along - HAIR) continue;
      if (!this.sharing && rest.strip >= 0 && this.strips[rest.strip]!.rows[0]!.line !== part.line) continue;
      const uncut = rest.strip < 0 ? 1e9 + this.orderOf(rest.sheet) : 0;
      const spare = uncut + (Math.min(rest.along, 1e5) - part.along) * 1e3 + rest.across - part.across;
      if (spare < bestSpare) {
        best = rest;
        bestSpare = spare;
      }
    }
    return best;
  }

  /** Where a sheet stands among all cloth: as it was given, then what is new. */
  private orderOf(sheet: number): number {
    return this.sheets[sheet]!.stock ?? sheet + this.leftOut;
  }

  private freshSheet(): Rest {
    const along = this.cloth.sheetLength ?? Number.POSITIVE_INFINITY;
    return this.addSheet({ across: this.cloth.width, along, stock: null });
  }

  private addSheet(sheet: ClothSheet): Rest {
    const { across, along } = sheet;
    const rest: Rest = { sheet: this.sheets.length, strip: -1, x: 0, y: 0, across, along };
    this.sheets.push(sheet);
    this.rests.push(rest);
    return rest;
  }

  /** Cuts one row of the part off the top of a rest: as many as lie side by side, at most `most`. */
  private cutRow(rest: Rest, part: CutPart, most: number): number {
    const count = Math.min(most, piecesIn(rest.across, part.across));
    const row: CutPart = { ...part, count };
    const strip = rest.strip >= 0 ? rest.strip : this.strips.length;
    if (rest.strip >= 0) this.strips[strip]!.rows.push(row);
    else this.strips.push({ sheet: rest.sheet, y: rest.y, along: part.along, rows: [row] });
    for (let at = 0; at < count; at += 1) {
      this.placed.push({
        line: part.line,
        strip,
        sheet: rest.sheet,
        x: rest.x + at * part.across,
        y: rest.y,
        across: part.across,
        along: part.along,
      });
    }
    const used = count * part.across;
    this.rests = this.rests.flatMap((one) => (one === rest ? this.nextAlike(rest) : [one]));
    // Straight cuts only: first right across the rest, then down between the pieces.
    this.keep({ ...rest, strip, x: rest.x + used, across: rest.across - used, along: part.along });
    this.keep({ ...rest, y: rest.y + part.along, along: rest.along - part.along });
    return count;
  }

  /** The next piece on hand like an uncut one that is being cut; none for other rests. */
  private nextAlike({ strip, y, sheet }: Rest): Rest[] {
    const cut = this.sheets[sheet]!;
    const next = sheet + 1;
    const alike = this.sheets[next];
    if (strip >= 0 || y > 0 || next >= this.onHand || !alike) return [];
    if (alike.across !== cut.across || alike.along !== cut.along) return [];
    return [{ sheet: next, strip: -1, x: 0, y: 0, across: alike.across, along: alike.along }];
  }

  private keep(rest: Rest): void {
    if (rest.across > HAIR && rest.along > HAIR) this.rests.push(rest);
  }
}
