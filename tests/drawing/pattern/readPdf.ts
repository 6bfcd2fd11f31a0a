// Reads a PDF file back with PDF.js, a program of its own: page sizes, words with their places, drawn lines.
// Points (1/72 inch) from the lower left corner, as the file has them.
// The legacy build is the one its makers give for Node; it runs from Node 20.19 on.
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';

export interface ReadWords {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** One stroked or filled path: its corners in order (curves by their ends only). */
export interface ReadPath {
  readonly painted: 'stroke' | 'fill' | 'other';
  readonly points: readonly (readonly [x: number, y: number])[];
}

export interface ReadPage {
  readonly width: number;
  readonly height: number;
  readonly words: readonly ReadWords[];
  /** All words without their spaces; the slash of a fraction as /. */
  readonly text: string;
  readonly paths: readonly ReadPath[];
  /** How many pictures are placed on it; 0 where the drawing is left out. */
  readonly pictures: number;
}

export interface ReadPdf {
  readonly pages: readonly ReadPage[];
  readonly printScaling: string | undefined;
  readonly title: string | undefined;
  readonly creator: string | undefined;
  readonly language: string | undefined;
  readonly bookmarks: readonly string[];
}

/** Words as they are compared: without spaces, which line ends and thin spaces would change. */
export function bare(text: string): string {
  return text.replaceAll('\u2044', '/').replace(/\s/gu, '');
}

/** `lines: false` leaves the drawing out, for files with much of it. */
export async function readPdf(bytes: Uint8Array, { lines = true } = {}): Promise<ReadPdf> {
  const pdf = await getDocument({ data: new Uint8Array(bytes) }).promise;
  const pages: ReadPage[] = [];
  for (let number = 1; number <= pdf.numPages; number += 1) {
    const page = await pdf.getPage(number);
    const [left, bottom, right, top] = page.view as [number, number, number, number];
    const content = await page.getTextContent();
    const words = content.items.flatMap((item): ReadWords[] => {
      if (!('str' in item) || item.str === '') return [];
      const [, , , , x, y] = item.transform as number[];
      return [{ text: item.str, x: x!, y: y!, width: item.width, height: item.height }];
    });
    pages.push({
      width: right - left,
      height: top - bottom,
      words,
      text: bare(words.map((one) => one.text).join('')),
      ...(lines ? await drawnOn(page) : { paths: [], pictures: 0 }),
    });
  }
  const viewer = (await pdf.getViewerPreferences()) as { PrintScaling?: string } | null;
  const info = (await pdf.getMetadata()).info as Record<string, string | null | undefined>;
  const outline = (await pdf.getOutline()) as { title: string }[] | null;
  await pdf.loadingTask.destroy();
  return {
    pages,
    printScaling: viewer?.PrintScaling,
    title: info.Title ?? undefined,
    creator: info.Creator ?? undefined,
    language: info.Language ?? undefined,
    bookmarks: (outline ?? []).map((entry) => entry.title),
  };
}

/** Codes of a path's steps in PDF.js and how many numbers follow each. */
const MOVE = 0;
const STEP_NUMBERS = [2, 2, 6, 4, 0];

async function drawnOn(page: {
  getOperatorList(): Promise<{ fnArray: number[]; argsArray: unknown[] }>;
}): Promise<Pick<ReadPage, 'paths' | 'pictures'>> {
  const { fnArray, argsArray } = await page.getOperatorList();
  const pictures = fnArray.filter((operator) => operator === OPS.paintImageXObject).length;
  const paths = fnArray.flatMap((operator, index): ReadPath[] => {
    if (operator !== OPS.constructPath) return [];
    const [paint, [numbers]] = argsArray[index] as [number, [Float32Array | null]];
    const painted = paint === OPS.stroke ? 'stroke' : paint === OPS.fill ? 'fill' : 'other';
    return numbers ? split(numbers).map((points) => ({ painted, points })) : [];
  });
  return { paths, pictures };
}

function split(numbers: Float32Array): [number, number][][] {
  const parts: [number, number][][] = [];
  for (let at = 0; at < numbers.length; ) {
    const code = numbers[at]!;
    const count = STEP_NUMBERS[code];
    if (count === undefined) throw new Error(`readPdf: unknown step ${code}`);
    if (code === MOVE) parts.push([]);
    if (count > 0) parts.at(-1)!.push([numbers[at + count - 1]!, numbers[at + count]!]);
    at += 1 + count;
  }
  return parts;
}
