// Writes the icons of the installed tool into public/: run with `npx tsx scripts/makeIcons.ts` after changing the drawing.
// A block of eight wedges, tip up and tip down in turn, drawn by the geometry of real blocks.
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Resvg } from '@resvg/resvg-js';
import { bandOutline } from '../src/geometry/block';

const WEDGES = 8;
/** Strips of a wedge from the rim in: the middle line each ends at, of a rim at 100; the next begins there. */
const ENDS = [100, 76, 58, 30];
const UP = ['#1f3c57', '#d9703b', '#eed79a', '#3f6a86'];
const DOWN = ['#e8e3d6', '#1f5a5c', '#c9993f', '#7a2f2a'];
const FLANNEL = '#8f8f8d';

/** The picture in a square; `room` is how far the rim lies from the middle, of 128. A maskable icon keeps 20 % clear. */
function icon(room: number, ground: string): string {
  const bands = Array.from({ length: WEDGES }, (_, wedge) =>
    ENDS.map((outer, at) => {
      const points = bandOutline(wedge, outer, ENDS[at + 1] ?? 0, WEDGES)
        .map(({ x, y }) => `${rounded((x * room) / 100)},${rounded((y * room) / 100)}`)
        .join(' ');
      return `<polygon points="${points}" fill="${(wedge % 2 === 0 ? UP : DOWN)[at]}"/>`;
    }).join(''),
  ).join('');
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="-128 -128 256 256"><title>Wedgewall</title>${ground}<g stroke="#161616" stroke-opacity=".35" stroke-width="1.2" stroke-linejoin="round">${bands}</g></svg>\n`;
}

function rounded(figure: number): number {
  return Math.round(figure * 100) / 100;
}

function png(svg: string, width: number): Buffer {
  return new Resvg(svg, { fitTo: { mode: 'width', value: width } }).render().asPng();
}

const folder = join(import.meta.dirname, '..', 'public');
mkdirSync(folder, { recursive: true });
const plain = icon(122, '');
const full = icon(92, `<rect x="-128" y="-128" width="256" height="256" fill="${FLANNEL}"/>`);
writeFileSync(join(folder, 'icon.svg'), plain);
writeFileSync(join(folder, 'icon-192.png'), png(plain, 192));
writeFileSync(join(folder, 'icon-512.png'), png(plain, 512));
writeFileSync(join(folder, 'icon-full-512.png'), png(full, 512));
