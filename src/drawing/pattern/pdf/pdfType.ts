// The typefaces inside a PDF document: which file of a face has a letter, how wide it is, and setting a run. Letters that
// no file has are set as pictures of the device's own letters where it has them; else a question mark stands there. Both are
// remembered, so that the person can be told.
import type { jsPDF } from 'jspdf';
import type { Inches } from '../../../model/units';
import type { Type } from '../lettering';
import type { Face, Mark } from '../page';

/** TrueType files of each face, the first that has a letter sets it. */
export type FaceFiles = Readonly<Record<Face, readonly Uint8Array[]>>;

/** A run drawn on nothing, as a PNG file, and where it lies for letters one inch high, from the start of its baseline. */
export interface LetterPicture {
  readonly png: Uint8Array;
  readonly left: number;
  /** Of the upper edge above the baseline. */
  readonly rise: number;
  readonly width: number;
  readonly height: number;
}

/** Letters of whatever the pattern is made on, for scripts the embedded typefaces do not have. */
export interface DeviceLetters {
  /** Whether it has this one letter. */
  has(letter: string, face: Face): boolean;
  /** Width of a run for letters one inch high. */
  width(run: string, face: Face): number;
  picture(run: string, face: Face, ink: string): LetterPicture;
}

/** Stands for what cannot be set. */
const UNKNOWN = '?';
const POINTS = 72;

interface Letter {
  /** Null: a picture of the device's letter. */
  readonly font: string | null;
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
  /** Letters that were set as pictures. */
  readonly pictured = new Set<string>();
  private readonly doc: jsPDF;
  private readonly fonts: Readonly<Record<Face, readonly string[]>>;
  private readonly device: DeviceLetters | null;
  private readonly letters = new Map<string, Letter>();
  private readonly pictures = new Map<string, LetterPicture>();

  constructor(doc: jsPDF, files: FaceFiles, device: DeviceLetters | null = null) {
    this.doc = doc;
    this.device = device;
    const embed = (face: Face) => files[face].map((file, index) => embedded(doc, `${face}${index}`, file));
    this.fonts = { display: embed('display'), text: embed('text'), strong: embed('strong') };
  }

  width(text: string, face: Face, size: Inches): Inches {
    return this.runs(text.normalize('NFC'), face).reduce((sum, run) => sum + run.width, 0) * size;
  }

  /** Sets a run on the current page. */
  set(mark: Extract<Mark, { kind: 'text' }>): void {
    let x = mark.at.x;
    this.doc.setTextColor(mark.ink);
    for (const run of this.runs(mark.text.normalize('NFC'), mark.face)) {
      if (run.font === null) this.setPicture(run.text, x, mark);
      else {
        this.doc.setFont(run.font, 'normal');
        this.doc.setFontSize(mark.size * POINTS);
        this.doc.text(run.text, x, mark.at.y);
      }
      x += run.width * mark.size;
    }
  }

  private setPicture(
    text: string,
    x: Inches,
    { at, face, size, ink }: Extract<Mark, { kind: 'text' }>,
  ): void {
    const key = `${face} ${ink} ${text}`;
    const picture = this.pictures.get(key) ?? this.device!.picture(text, face, ink);
    this.pictures.set(key, picture);
    const { png, left, rise, width, height } = picture;
    // Each picture stands in the file once, under its key.
    this.doc.addImage(
      png,
      'PNG',
      x + left * size,
      at.y - rise * size,
      width * size,
      height * size,
      key,
      'FAST',
    );
  }

  /** Neighbouring letters of one file together; of the device's letters too, which may join. */
  private runs(text: string, face: Face): Letter[] {
    const runs: { font: string | null; text: string; width: number }[] = [];
    for (const sign of text) {
      const letter = this.letter(sign, face);
      // Words of the device's letters stay one run, so that those written from right to left come in their order.
      if (letter.font === null && runs.at(-1)?.text === ' ' && runs.at(-2)?.font === null) {
        runs.pop();
        runs.at(-1)!.text += ' ';
      }
      const last = runs.at(-1);
      if (last && (last.font === letter.font || (letter.text === ' ' && last.font !== null))) {
        last.text += letter.text;
        last.width += letter.width;
      } else runs.push({ ...letter });
    }
    for (const run of runs) if (run.font === null) run.width = this.device!.width(run.text, face);
    return runs;
  }

  private letter(sign: string, face: Face): Letter {
    const key = `${face} ${sign}`;
    let letter = this.letters.get(key);
    if (!letter) {
      letter = this.found(sign, face) ?? this.ofDevice(sign, face) ?? this.found(UNKNOWN, face);
      if (!letter) throw new Error(`PdfType: ${face} has no question mark`);
      this.letters.set(key, letter);
      if (letter.text !== sign) this.missing.add(sign);
    }
    return letter;
  }

  private ofDevice(sign: string, face: Face): Letter | undefined {
    if (!this.device?.has(sign, face)) return undefined;
    this.pictured.add(sign);
    return { font: null, text: sign, width: 0 };
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
