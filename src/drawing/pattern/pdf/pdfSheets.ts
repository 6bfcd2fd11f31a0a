// Paints pages of marks into a PDF file. The caller passes the library and the typefaces, because a browser and the command line
// load them in different ways.
import type { jsPDF } from 'jspdf';
import type { Outline, Point } from '../../../geometry/point';
import { NO_PICTURES, type Pictures } from '../../../model/picture/picture';
import type { Fill, Mark, Page, Paper, Stroke } from '../page';
import { PdfCloth } from './pdfCloth';
import { type DeviceLetters, type FaceFiles, PdfType } from './pdfType';

/** The library and the typefaces that make a PDF. */
export interface PdfKit {
  readonly JsPdf: typeof jsPDF;
  readonly fonts: FaceFiles;
  /** Letters of the device, for letters that the typefaces lack; absent: question marks stand for them. */
  readonly device?: DeviceLetters;
}

/** An open PDF with one size of page; `pictures` are those of photographed fabrics. Lay out the pages with `type`, then paint them in order. */
export class PdfSheets {
  readonly type: PdfType;
  private readonly doc: jsPDF;
  private readonly cloth: PdfCloth;
  private painted = 0;
  private part = '';

  constructor({ JsPdf, fonts, device }: PdfKit, paper: Paper, pictures: Pictures = NO_PICTURES) {
    this.doc = new JsPdf({
      unit: 'in',
      format: [paper.width, paper.height],
      compress: true,
      putOnlyUsedFonts: true,
      floatPrecision: 5,
    });
    // Viewers print at true size: "fit to page" is off.
    this.doc.viewerPreferences({ PrintScaling: 'None', DisplayDocTitle: true });
    this.type = new PdfType(this.doc, fonts, device);
    this.cloth = new PdfCloth(this.doc, paper.height, pictures);
  }

  /** Adds a page; the first of each part gets a bookmark. */
  paint(page: Page): void {
    if (this.painted > 0) this.doc.addPage();
    this.painted += 1;
    for (const part of page.parts) {
      if (part === this.part) continue;
      this.part = part;
      this.doc.outline.add(null, part, { pageNumber: this.painted });
    }
    this.doc.setLineJoin('round');
    for (const mark of page.marks) this.draw(mark);
  }

  /** The bytes of the finished file. */
  bytes(title: string): ArrayBuffer {
    this.doc.setProperties({
      title,
      subject: 'A pattern for a quilt of strip-pieced wedges',
      creator: 'Wedgewall',
    });
    // In universal time: the library's own date tells the time zone of the machine.
    const made = this.doc.getCreationDate('jsDate').toISOString().replace(/\D/g, '').slice(0, 14);
    this.doc.setCreationDate(`D:${made}+00'00'`);
    // The sentences of the pattern are British English until a language is added (ui/words).
    this.doc.setLanguage('en-GB');
    return this.doc.output('arraybuffer');
  }

  private draw(mark: Mark): void {
    switch (mark.kind) {
      case 'text':
        this.type.set(mark);
        return;
      case 'line':
        this.pen(mark.stroke);
        this.trace(mark.points, false);
        this.doc.stroke();
        return;
      case 'shape':
        this.filled(mark.fill, mark.stroke, () => {
          for (const outline of mark.outlines) this.trace(outline, true);
        });
        return;
      case 'disc':
        this.filled(mark.fill, mark.stroke, () => {
          this.doc.circle(mark.centre.x, mark.centre.y, mark.radius, null);
        });
        return;
      case 'picture':
        this.cloth.drawPicture(mark);
        return;
      default:
        mark satisfies never;
    }
  }

  private filled(fill: Fill | null, stroke: Stroke | null, trace: () => void): void {
    if (fill) {
      this.doc.setFillColor(fill.kind === 'ink' ? fill.colour : this.cloth.groundOf(fill));
      trace();
      this.doc.fill();
      const key = fill.kind === 'cloth' ? this.cloth.keyFor(fill) : null;
      if (key !== null) {
        trace();
        // Without a matrix the pattern is used as it is; the type file wrongly requires one.
        this.doc.fill({ key } as Parameters<jsPDF['fill']>[0] & object);
      }
    }
    if (stroke) {
      this.pen(stroke);
      trace();
      this.doc.stroke();
    }
  }

  private pen({ ink, width, dash }: Stroke): void {
    this.doc.setDrawColor(ink);
    this.doc.setLineWidth(width);
    this.doc.setLineDashPattern(dash ? [...dash] : [], 0);
  }

  private trace(points: Outline | readonly Point[], closed: boolean): void {
    points.forEach((point, index) => {
      if (index === 0) this.doc.moveTo(point.x, point.y);
      else this.doc.lineTo(point.x, point.y);
    });
    if (closed) this.doc.close();
  }
}
