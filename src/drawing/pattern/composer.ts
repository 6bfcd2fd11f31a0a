// Fills pages from the top with figures and parts, one below the other. It begins a new page where a figure does not fit, repeats
// the head of a table on each page, and keeps headings with what follows. pattern.ts adds the foot of each page.
import type { Inches } from '../../model/units';
import { type Align, inRow, type Type, textFigure } from './lettering';
import { EDGE, HAIR, MARGIN, STYLES, type Style } from './look';
import { type Figure, type Mark, type Page, type Paper, type Stroke, shifted } from './page';

const TOP: Inches = 0.7;
const FOOT: Inches = 0.8;
const STEP_GAP: Inches = 0.045;
/** Space over a part that begins further down a page, with the line across it. */
const PART_GAP: Inches = 0.42;
/** A part begins on a page that has this share of its height left, else on the next. */
const PART_NEEDS = 0.3;
/** A page filled less than this looks forgotten. */
const LEAST_FILLED = 1 / 3;

export interface Column {
  readonly head: string;
  /** Width of the column in parts; the table's width is the sum of the parts. */
  readonly part: number;
  readonly align?: Align;
}

/** A cell of a table: words in a style (the body's unless given), or a figure. */
export type TableCell = string | { readonly text: string; readonly style: Style } | Figure;

export class Composer {
  readonly paper: Paper;
  readonly type: Type;
  /** Width between the margins. */
  readonly width: Inches;
  readonly pages: Page[] = [];
  /** Share of the height that each page is filled to, and whether it is a figure's own. */
  readonly filled: { readonly share: number; readonly own: boolean }[] = [];
  /** For every heading and beginning of a part, in order, the page it came to stand on. */
  readonly headings: number[] = [];
  private parts: string[] = [];
  private marks: Mark[] = [];
  private down: Inches = TOP;
  private open = false;
  private own = false;
  /** A title or heading with nothing under it yet: where its marks begin, and the parts that go with it to a new page. */
  private head: { from: number; down: Inches; parts: readonly string[]; below: boolean } | null = null;
  private readonly turnBefore: number;

  /** `turnBefore`: the heading (counted from 0) that begins a page wherever it would stand; −1 for none. */
  constructor(paper: Paper, type: Type, turnBefore = -1) {
    this.paper = paper;
    this.type = type;
    this.width = paper.width - 2 * MARGIN;
    this.turnBefore = turnBefore;
  }

  /** Height between head and foot of a page. */
  get height(): Inches {
    return this.paper.height - TOP - FOOT;
  }

  /** Height left on the page; 0 while no page is open. */
  get heightLeft(): Inches {
    return this.open ? this.paper.height - FOOT - this.down : 0;
  }

  /**
   * Begins a new part of the pattern: below the last one where the page has enough height left for it and for the first `needs`
   * inches of what follows, else on a new page; with `ownPage` always on a new page.
   */
  begin(part: string, line?: string, needs: Inches = 0, ownPage = false): void {
    const title = textFigure(part, STYLES.part, this.width, this.type);
    const intro = line === undefined ? null : textFigure(line, STYLES.body, this.width * 0.9, this.type);
    const tall = PART_GAP + title.height + (intro ? intro.height + 0.04 : 0) + 0.08;
    const least = Math.max(PART_NEEDS * this.height, tall + needs);
    const below = !ownPage && !this.own && this.heightLeft >= least && !this.isTurnedHere();
    if (below) this.beginBelow(part);
    else this.turnPage([part]);
    const head = { from: this.marks.length, down: this.down, parts: [part], below };
    this.add(title);
    if (intro) this.add(intro, 0.04);
    this.skip(0.08);
    this.head = head;
    this.headings.push(this.pages.length);
  }

  /** Draws the line between two parts on one page. */
  private beginBelow(part: string): void {
    this.parts.push(part);
    this.add({ width: this.width, height: PART_GAP, marks: [this.rule(PART_GAP / 2, EDGE)] });
  }

  /** A line across the page's width, `down` inches below the figure's top. */
  private rule(down: Inches, stroke: Stroke): Mark {
    const points = [
      { x: 0, y: down },
      { x: this.width, y: down },
    ];
    return { kind: 'line', points, stroke };
  }

  /** Takes the part that was begun below off the page again, with its line. */
  private leaveBelow(): void {
    this.parts.pop();
    this.marks.pop();
    this.down -= PART_GAP;
  }

  /** Whether the next heading is the one that must begin a page. */
  private isTurnedHere(): boolean {
    return this.headings.length === this.turnBefore;
  }

  /** Adds a page with these marks and no heading. */
  page(part: string, marks: readonly Mark[]): void {
    this.turnPage([part]);
    this.own = true;
    this.marks.push(...marks);
  }

  /** Closes the page and opens a new one, for the last part or for `parts`. */
  turnPage(parts: readonly string[] = this.parts.slice(-1)): void {
    this.finish();
    this.parts = [...parts];
    this.open = true;
    this.own = false;
    this.down = TOP;
  }

  /** Pages filled less than LEAST_FILLED that are not the only one of a run: a run ends at each figure's own page. Indices. */
  get shortPages(): number[] {
    const startsRun = (index: number) => index === 0 || this.filled[index - 1]!.own;
    const endsRun = (index: number) => index === this.filled.length - 1 || this.filled[index + 1]!.own;
    return this.filled.flatMap(({ share, own }, index) =>
      own || share >= LEAST_FILLED || (startsRun(index) && endsRun(index)) ? [] : [index],
    );
  }

  /** Closes the page, if one is open. */
  finish(): void {
    if (this.open) {
      this.pages.push({ parts: this.parts, marks: this.marks });
      this.filled.push({ share: (this.down - TOP) / this.height, own: this.own });
    }
    this.marks = [];
    this.open = false;
  }

  /** Leaves a gap. */
  skip(down: Inches): void {
    this.down += down;
  }

  /** Adds a figure below the last one, `gap` apart; on a new page where the figure and `keep` inches more do not fit. */
  add(figure: Figure, gap: Inches = 0, keep: Inches = 0, x: Inches = 0): void {
    const fresh = this.down <= TOP + 1e-9;
    const before = fresh ? 0 : gap;
    if (!fresh && before + figure.height + keep > this.heightLeft + 1e-9) {
      this.turnWithHead();
      this.head = null;
      this.add(figure, this.down > TOP + 1e-9 ? gap : 0, 0, x);
      return;
    }
    this.head = null;
    this.marks.push(...shifted(figure.marks, MARGIN + x, this.down + before));
    this.down += before + figure.height;
  }

  /** Turns the page; a heading with nothing under it goes along, unless it has the page to itself already. */
  private turnWithHead(): void {
    const { head } = this;
    if (!head || head.down <= TOP + 1e-9) {
      this.turnPage();
      return;
    }
    const marks = this.marks.splice(head.from);
    const tall = this.down - head.down;
    this.down = head.down;
    if (head.below) this.leaveBelow();
    this.turnPage(head.parts);
    this.marks.push(...shifted(marks, 0, TOP - head.down));
    this.down = TOP + tall;
    this.headings[this.headings.length - 1] = this.pages.length;
  }

  /** Adds a heading; it stays on one page with at least `keep` inches of what follows. */
  heading(text: string, keep: Inches = 0.9): void {
    if (this.isTurnedHere() && this.down > TOP + 1e-9) this.turnPage();
    const figure = textFigure(text, STYLES.heading, this.width, this.type);
    this.add(figure, 0.2, keep);
    this.headings.push(this.pages.length);
    this.skip(0.06);
    const tall = figure.height + 0.06;
    this.head = {
      from: this.marks.length - figure.marks.length,
      down: this.down - tall,
      parts: this.parts.slice(-1),
      below: false,
    };
  }

  /** Adds a paragraph; one that is longer than a page is added line by line. */
  paragraph(text: string, style: Style = STYLES.body, gap: Inches = 0.05, width = this.width * 0.86): void {
    const figure = textFigure(text, style, width, this.type);
    if (figure.height <= this.height) this.add(figure, gap);
    else for (const one of text.split('\n')) this.paragraphLines(one, style, width);
  }

  private paragraphLines(text: string, style: Style, width: Inches): void {
    const whole = textFigure(text, style, width, this.type);
    const count = Math.round(whole.height / style.leading);
    const lines = Array.from({ length: count }, (): Mark[] => []);
    for (const mark of whole.marks) {
      if (mark.kind === 'text') lines[Math.min(count - 1, Math.floor(mark.at.y / style.leading))]!.push(mark);
    }
    lines.forEach((marks, index) => {
      this.add({ width, height: style.leading, marks: shifted(marks, 0, -index * style.leading) });
    });
  }

  /** Adds numbered steps of the work. */
  steps(texts: readonly string[]): void {
    const figures = this.stepFigures(texts);
    figures.forEach((figure, index) => {
      // The last step never stands alone on a page.
      const last = index === figures.length - 2 ? figures[index + 1]!.height + STEP_GAP : 0;
      this.add(figure, STEP_GAP, last);
    });
  }

  /** Adds a heading and its steps, on one page if they fit on one. */
  stepsUnder(heading: string, texts: readonly string[]): void {
    const tall = this.stepFigures(texts).reduce((sum, { height }) => sum + height + STEP_GAP, 0.06);
    this.heading(heading, tall < this.height - 1 ? tall : 1.2);
    this.steps(texts);
  }

  private stepFigures(texts: readonly string[]): Figure[] {
    return texts.map((text, index) =>
      inRow([
        { x: 0, figure: textFigure(String(index + 1), STYLES.strong, 0.2, this.type) },
        { x: 0.26, figure: textFigure(text, STYLES.body, this.width * 0.86 - 0.26, this.type) },
      ]),
    );
  }

  /** Adds a list with a short rule before each line. */
  bullets(texts: readonly string[], width = this.width * 0.86): void {
    for (const text of texts) {
      const words = textFigure(text, STYLES.body, width - 0.2, this.type);
      const middle = STYLES.body.leading / 2 + 0.005;
      const dash: Mark = {
        kind: 'line',
        points: [
          { x: 0, y: middle },
          { x: 0.08, y: middle },
        ],
        stroke: EDGE,
      };
      this.add({ ...words, marks: [dash, ...shifted(words.marks, 0.2, 0)] }, 0.04);
    }
  }

  /** Adds a table between hairlines, with its head on every page; nothing without rows. */
  table(columns: readonly Column[], rows: readonly (readonly TableCell[])[], gap: Inches = 0.08): void {
    if (rows.length === 0) return;
    const parts = columns.reduce((sum, column) => sum + column.part, 0);
    let x = 0;
    const places = columns.map((column) => {
      const width = (column.part / parts) * this.width;
      const place = { x, width: width - 0.12, align: column.align ?? 'left' };
      x += width;
      return place;
    });
    const rowFigure = (cells: readonly TableCell[], style: Style, align: 'top' | 'middle') =>
      inRow(
        cells.map((cell, index) => {
          const place = places[index]!;
          return { x: place.x, figure: this.cellFigure(cell, style, place) };
        }),
        align,
      );
    const head = rowFigure(
      columns.map((column) => column.head),
      STYLES.column,
      'top',
    );
    const ruled = rows.map((cells): Figure => {
      const row = rowFigure(cells, STYLES.body, 'middle');
      const rule = this.rule(0, HAIR);
      return { width: this.width, height: row.height + 0.08, marks: [rule, ...shifted(row.marks, 0, 0.04)] };
    });
    this.skip(gap);
    ruled.forEach((row, index) => {
      const needsHead = index === 0 || row.height > this.heightLeft + 1e-9;
      if (needsHead && index > 0) this.turnPage();
      if (needsHead) this.add(head, 0, row.height + 0.05);
      this.add(row, needsHead ? 0.03 : 0);
    });
    this.add({ width: this.width, height: 0.01, marks: [this.rule(0, HAIR)] });
  }

  private cellFigure(
    cell: TableCell,
    style: Style,
    place: { readonly width: Inches; readonly align: Align },
  ): Figure {
    if (typeof cell === 'string') return textFigure(cell, style, place.width, this.type, place.align);
    if ('text' in cell) return textFigure(cell.text, cell.style, place.width, this.type, place.align);
    return cell;
  }
}
