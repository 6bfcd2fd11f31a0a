// Photographed fabric in the pattern's PDF, painted by PDF.js: at true scale, its top side up, each picture once in the file.
import { beforeAll, expect, it } from 'vitest';
import { patternKit } from '../../../src/cli/pattern';
import type { Mark, Page } from '../../../src/drawing/pattern/page';
import { pageShapes } from '../../../src/drawing/pattern/pageShapes';
import { PdfSheets } from '../../../src/drawing/pattern/pdf/pdfSheets';
import { patternFor } from '../../../src/drawing/prints';
import type { Pictures } from '../../../src/model/picture/picture';
import { KINDS, keptPicture, photographed } from '../../model/picture/images';
import { lookAtPdf } from '../lookAt';

const PAPER = { width: 8, height: 10 };
/** Page inches to the inch of fabric, and the tile's sides on the fabric. */
const SCALE = 0.5;
const TILE = { width: 2, height: 3 };
const TURNS = [0, 45, 90, 200];

let pictures: Pictures;
beforeAll(async () => {
  // Red grows to the right and green downwards, so that a colour tells its place in the tile.
  const at = (x: number, y: number) => [x * 8, y * 8, 90] as const;
  pictures = new Map(
    await Promise.all(KINDS.map((kind) => keptPicture({ kind, width: 32, height: 32, at }))),
  );
});

/** Squares of two inches: a row for each picture, a column for each turn. */
function squares(): { page: Page; boxes: { x: number; y: number; turn: number }[] } {
  const boxes = [...pictures.keys()].flatMap((id, row) =>
    TURNS.map((turn, column) => ({ id, turn, x: 0.1 + column * 1.95, y: 0.2 + row * 2.5 })),
  );
  const marks = boxes.map(({ id, turn, x, y }): Mark => {
    const outline = [{ x, y }, { x: x + 1.9, y }, { x: x + 1.9, y: y + 2.4 }, { x, y: y + 2.4 }]; // biome-ignore format: a box
    const fabric = { ...photographed(id, TILE), id: `of ${id.slice(0, 4)}` };
    return {
      kind: 'shape',
      outlines: [outline],
      fill: { kind: 'cloth', fabric, scale: SCALE, turn },
      stroke: null,
    };
  });
  return { page: { parts: ['Fabric'], marks }, boxes };
}

function fileOf(page: Page, shown: Pictures): Uint8Array {
  const sheets = new PdfSheets(kit, PAPER, shown);
  sheets.paint(page);
  return new Uint8Array(sheets.bytes('Fabric'));
}
const kit = await patternKit();

it('lies at true scale in every turn, its top side up', async () => {
  const { page, boxes } = squares();
  const look = await lookAtPdf(fileOf(page, pictures));
  let seen = 0;
  for (const { x: left, y: top, turn } of boxes)
    for (let x = left + 0.1; x < left + 1.8; x += 0.17)
      for (let y = top + 0.1; y < top + 2.3; y += 0.21) {
        const [cos, sin] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
        const part = (along: number, side: number) => (((along / SCALE / side) % 1) + 1) % 1;
        const [u, v] = [part(x * cos + y * sin, TILE.width), part(y * cos - x * sin, TILE.height)];
        // Where tiles meet, the colours of both are mixed.
        if (Math.min(u, 1 - u, v, 1 - v) < 0.08) continue;
        seen += 1;
        const [red, green, blue] = look(x, y) as [number, number, number];
        expect(Math.abs(red - u * 256)).toBeLessThan(24);
        expect(Math.abs(green - v * 256)).toBeLessThan(24);
        expect(Math.abs(blue - 90)).toBeLessThan(24);
      }
  expect(seen).toBeGreaterThan(700);
});

it('is in the file once for each picture, however many pieces are of it', () => {
  const { page } = squares();
  const images = (file: Uint8Array) =>
    Buffer.from(file).toString('latin1').split('/Subtype /Image').length - 1;
  const many = { ...page, marks: Array.from({ length: 20 }, () => page.marks).flat() };
  expect(images(fileOf(many, pictures))).toBe(3);
  expect(images(fileOf(page, new Map()))).toBe(0);
});

it('is its mean colour where the picture is missing', async () => {
  const { page, boxes } = squares();
  const look = await lookAtPdf(fileOf(page, new Map()));
  for (const { x, y } of boxes) expect(look(x + 0.9, y + 1)).toEqual([0xb8, 0x7a, 0x5c]);
});

it('has the same patterns on the page that is shown', () => {
  const { page, boxes } = squares();
  const { prints } = pageShapes(page, PAPER, 'page1');
  expect(prints).toHaveLength(boxes.length);
  expect(new Set(prints.map((print) => print.of)).size).toBe(3);
  expect(prints.map((print) => print.transform)).toContain('scale(36) rotate(45)');
  const [mark] = page.marks as [Extract<Mark, { kind: 'shape' }>];
  if (mark.fill?.kind === 'cloth') expect(prints[0]!.of).toBe(patternFor(mark.fill.fabric)!.id);
});
