// The typefaces of a PDF: finds the font file that has a letter, measures it, and sets runs. A letter that no file has is set as
// a picture of the device's own letter, or as a question mark where the device lacks it too. Both kinds of letters are recorded,
// so that the person can be told.
import type { jsPDF } from 'jspdf';
import type { Inches } from '../../../model/units';
import type { Type } from '../lettering';
import type { Face, Mark } from '../page';

/** TrueType files of each face; a letter is set in the first file that has it. */
export type FaceFiles = Readonly<Record<Face, readonly Uint8Array[]>>;

/** A run as pixels (red, green, blue, alpha) on a transparent ground, and its place from the start of the baseline, for letters one inch high. */
export interface LetterPicture {
  readonly pixels: {
    readonly data: Uint8ClampedArray;
    readonly width: number;
    readonly height: number;
  };
  readonly left: number;
  /** Height of the upper edge above the baseline. */
  readonly rise: number;
  readonly width: number;
  readonly height: number;
}

/** The letters of the device, for scripts that the embedded typefaces lack. */
export interface DeviceLetters {
  /** Whether the device has this letter. */
  has(letter: string, face: Face): boolean;
  /** Width of a run for letters one inch high. */
  width(run: string, face: Face): number;
  picture(run: string, face: Face, ink: string): LetterPicture;
}

/** Set in place of a letter that cannot be set. */
const UNKNOWN = '?';
const POINTS = 72;

interface Letter {
  /** Name of the embedded font; null: a picture of the device's letter. */
  readonly font: string | null;
  readonly text: string;
  /** Width for letters one inch high. */
  readonly width: number;
}

/** The members of jspdf's embedded font that are used; its type file lacks them. */
interface EmbeddedFont {
  readonly metadata: { characterToGlyph(code: number): number };
}

export class PdfType implements Type {
  /** Letters set as question marks. */
  readonly missing = new Set<string>();
  /** Letters set as pictures. */
  readonly pictured = new Set<string>();
  private readonly doc: jsPDF;
  private readonly fonts: Readonly<Record<Face, readonly string[]>>;
  private readonly device: DeviceLetters | null;
  private readonly letters = new Map<string, Letter>();
  private readonly pictures = new Map<string, LetterPicture>();
  /** Widths for letters one inch high: lines are broken by measuring the same words again and again. */
  private readonly widths = new Map<string, number>();

  constructor(doc: jsPDF, files: FaceFiles, device: DeviceLetters | null = null) {
    this.doc = doc;
    this.device = device;
    const embed = (face: Face) => files[face].map((file, index) => embedded(doc, `${face}${index}`, file));
    this.fonts = { display: embed('display'), text: embed('text'), strong: embed('strong') };
  }

  width(text: string, face: Face, size: Inches): Inches {
    const key = `${face} ${text}`;
    let width = this.widths.get(key);
    if (width === undefined) {
      width = this.runs(text.normalize('NFC'), face).reduce((sum, run) => sum + run.width, 0);
      this.widths.set(key, width);
    }
    return width * size;
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
    const { pixels, left, rise, width, height } = picture;
    // The file contains each picture once, under its key.
    this.doc.addImage(
      pixels,
      'RGBA',
      x + left * size,
      at.y - rise * size,
      width * size,
      height * size,
      key,
      'FAST',
    );
  }

  /** The text in runs of letters of one font file, or of the device's letters, which may join. */
  private runs(text: string, face: Face): Letter[] {
    const runs: { font: string | null; text: string; width: number }[] = [];
    for (const sign of text) {
      const letter = this.letter(sign, face);
      // Words of the device's letters are one run, so that a script from right to left keeps its order.
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

/** Bytes put together at once: a function takes so many arguments, and a string made byte by byte leaves one behind for each. */
const CHUNK = 8192;

function embedded(doc: jsPDF, name: string, file: Uint8Array): string {
  let bytes = '';
  for (let at = 0; at < file.length; at += CHUNK)
    bytes += String.fromCharCode(...file.subarray(at, at + CHUNK));
  doc.addFileToVFS(`${name}.ttf`, bytes);
  doc.addFont(`${name}.ttf`, name, 'normal');
  return name;
}
