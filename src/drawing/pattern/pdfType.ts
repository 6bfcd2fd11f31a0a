// The typefaces inside a PDF document: which file of a face has a letter, how wide it is, and setting a run. Letters that
// no file has are shown by a question mark and remembered, so that the person can be told.
import type { jsPDF } from 'jspdf';
import type { Inches } from '../../model/units';
import type { Type } from './lettering';
import type { Face, Mark } from './page';

/** TrueType files of each face, the first that has a letter sets it. */
export type FaceFiles = Readonly<Record<Face, readonly Uint8Array[]>>;

/** Stands for what cannot be set. */
const UNKNOWN = '?';
const POINTS = 72;

interface Letter {
  readonly font: string;
  readonly text: string;
  /** Width for letters one inch high. */
  readonly width: number;
}

/** What jspdf keeps of an embedded typeface; its type file leaves it out. */
interface EmbeddedFont {
  readonly metadata: { characterToGlyph(code: number): number };
}

export class PdfType implements Type {
  /** Letters that could not be set. */
  readonly missing = new Set<string>();
  private readonly doc: jsPDF;
  private readonly fonts: Readonly<Record<Face, readonly string[]>>;
  private readonly letters = new Map<string, Letter>();

  constructor(doc: jsPDF, files: FaceFiles) {
    this.doc = doc;
    const embed = (face: Face) => files[face].map((file, index) => embedded(doc, `${face}${index}`, file));
    this.fonts = { display: embed('display'), text: embed('text'), strong: embed('strong') };
  }

  width(text: string, face: Face, size: Inches): Inches {
    let sum = 0;
    for (const letter of text.normalize('NFC')) sum += this.letter(letter, face).width;
    return sum * size;
  }

  /** Sets a run on the current page. */
  set(mark: Extract<Mark, { kind: 'text' }>): void {
    let x = mark.at.x;
    this.doc.setTextColor(mark.ink);
    for (const run of this.runs(mark.text.normalize('NFC'), mark.face)) {
      this.doc.setFont(run.font, 'normal');
      this.doc.setFontSize(mark.size * POINTS);
      this.doc.text(run.text, x, mark.at.y);
      x += run.width * mark.size;
    }
  }

  /** Neighbouring letters of one file together. */
  private runs(text: string, face: Face): Letter[] {
    const runs: { font: string; text: string; width: number }[] = [];
    for (const sign of text) {
      const letter = this.letter(sign, face);
      const last = runs.at(-1);
      if (last && (last.font === letter.font || letter.text === ' ')) {
        last.text += letter.text;
        last.width += letter.width;
      } else runs.push({ ...letter });
    }
    return runs;
  }

  private letter(sign: string, face: Face): Letter {
    const key = `${face} ${sign}`;
    let letter = this.letters.get(key);
    if (!letter) {
      letter = this.found(sign, face);
      if (!letter) {
        this.missing.add(sign);
        letter = this.found(UNKNOWN, face);
      }
      if (!letter) throw new Error(`PdfType: ${face} has no question mark`);
      this.letters.set(key, letter);
    }
    return letter;
  }

  private found(sign: string, face: Face): Letter | undefined {
    for (const font of this.fonts[face]) {
      this.doc.setFont(font, 'normal');
      const { metadata } = this.doc.getFont() as unknown as EmbeddedFont;
      if (metadata.characterToGlyph(sign.codePointAt(0)!) === 0) continue;
      return { font, text: sign, width: this.doc.getStringUnitWidth(sign) };
    }
    return undefined;
  }
}

function embedded(doc: jsPDF, name: string, file: Uint8Array): string {
  let bytes = '';
  for (const byte of file) bytes += String.fromCharCode(byte);
  doc.addFileToVFS(`${name}.ttf`, bytes);
  doc.addFont(`${name}.ttf`, name, 'normal');
  return name;
}
