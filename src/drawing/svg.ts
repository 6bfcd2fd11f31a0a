// Writes a drawing as SVG text. One user unit is one inch and every piece is a polygon in quilt inches, so that the file can be
// measured. A print has one pattern for each direction of its strips, as on screen; its phase may differ.
import type { Mark } from '../balance/finding';
import type { Box, Outline } from '../geometry/point';
import type { Fabric } from '../model/project';
import type { Drawing, HungBlock, Piece } from './drawing';
import { absoluteGrain, absoluteOutline } from './drawProject';
import { marksLayer } from './marksLayer';
import { escaped, inchText, pointText } from './number';
import { type HrefOf, NO_HREFS } from './photos';
import { clothFill, patternFor } from './prints';

export interface SvgOptions {
  /** Title of the file, for screen readers and viewers. */
  readonly title?: string;
  /** A line under the top; without it the picture shows only the top. */
  readonly caption?: string;
  /** Marks of findings, drawn over the cloth. */
  readonly marks?: readonly Mark[];
  /** Where pictures are; without it photographed fabrics are drawn in their mean colour, and of blocks what was read of them. */
  readonly hrefOf?: HrefOf;
}

/** Colour of places without cloth: neither light nor dark. */
const BARE = '#c8c6c2';
/** Colour under all pieces, so that hairlines between them look like seams. */
const UNDER = '#5f5b55';
/** The faint line of a pressed seam round every piece. */
const SEAM = 'stroke="#1f1d1a" stroke-opacity="0.16" stroke-width="0.025" stroke-linejoin="round"';
const CAPTION_HEIGHT = 2;

/** The text of an SVG file. Width, height and viewBox are in inches. The same input gives the same text. */
export function drawingToSvg(drawing: Drawing, options: SvgOptions = {}): string {
  const cloth = clothOf(drawing.fabrics, options.hrefOf);
  const pieces = [
    ...drawing.setting.map((piece) => polygon(piece, piece.outline, piece.grain, null, cloth)),
    ...drawing.blocks.map((hung) => blockGroup(hung, cloth, drawing.block, options.hrefOf ?? NO_HREFS)),
    ...drawing.emptyCells.map(({ cell, box }) => emptyCell(cell, box, drawing.tilt)),
    ...drawing.binding.map((piece) => polygon(piece, piece.outline, piece.grain, null, cloth)),
  ];
  const { edge } = drawing;
  const height = drawing.height + 2 * edge + (options.caption ? CAPTION_HEIGHT : 0);
  const [w, h] = [inchText(drawing.width + 2 * edge), inchText(height)];
  const corner = inchText(-edge);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${w}in" height="${h}in" viewBox="${corner} ${corner} ${w} ${h}" role="img" aria-labelledby="title desc">`,
    `<title id="title">${escaped(options.title ?? 'Quilt top')}</title>`,
    `<desc id="desc">${escaped(description(drawing))}</desc>`,
    `<defs>${[...cloth.patterns.values()].join('\n')}</defs>`,
    `<rect data-layer="under" width="${inchText(drawing.width)}" height="${inchText(drawing.height)}" fill="${UNDER}"/>`,
    `<g data-layer="cloth" ${SEAM}>`,
    ...pieces,
    '</g>',
    marksLayer(drawing, options.marks ?? []),
    captionText(drawing, options.caption),
    '</svg>',
  ]
    .filter((line) => line !== '')
    .join('\n')
    .concat('\n');
}

/** Gives the fill of a piece and collects the patterns it needs in `patterns`. */
interface ClothLookup {
  readonly fill: (piece: Piece, grain: number) => string;
  readonly patterns: Map<string, string>;
}

function clothOf(fabrics: readonly Fabric[], hrefOf: HrefOf | undefined): ClothLookup {
  const known = new Map(fabrics.map((fabric) => [fabric.id, fabric]));
  const patterns = new Map<string, string>();
  const bases = new Set<Fabric>();
  const fill = (piece: Piece, grain: number) => {
    const fabric = piece.fabric === null ? undefined : known.get(piece.fabric);
    if (!fabric) return BARE;
    const cloth = clothFill(fabric, grain);
    // A picture is written once, however many pieces are cut from its fabric.
    const base = bases.has(fabric) ? null : patternFor(fabric, hrefOf);
    bases.add(fabric);
    if (base) patterns.set(base.id, base.markup);
    if (cloth.turned) patterns.set(cloth.turned.id, cloth.turned.markup);
    return cloth.fill;
  };
  return { fill, patterns };
}

function emptyCell(cell: number, box: Box, tilt: Drawing['tilt']): string {
  const at = `x="${inchText(box.x)}" y="${inchText(box.y)}"`;
  const size = `width="${inchText(box.width)}" height="${inchText(box.height)}"`;
  const middle = `${inchText(box.x + box.width / 2)} ${inchText(box.y + box.height / 2)}`;
  const turned = tilt === 0 ? '' : ` transform="rotate(${tilt} ${middle})"`;
  return `<rect data-empty-cell="${cell + 1}" ${at} ${size}${turned} fill="${BARE}"/>`;
}

function blockGroup(hung: HungBlock, cloth: ClothLookup, size: Drawing['block'], hrefOf: HrefOf): string {
  const pieces = hung.pieces.flatMap((piece) =>
    piece.picture === undefined
      ? polygon(piece, absoluteOutline(hung, piece), absoluteGrain(hung, piece), hung.number, cloth)
      : image(hung, size, hrefOf(piece.picture)),
  );
  const tilt = hung.tilt === 0 ? '' : ` data-tilt="${hung.tilt}"`;
  const about = `data-cell="${hung.cell + 1}" data-quarters="${hung.quarters}"${tilt} role="group"`;
  return `<g ${about} aria-label="Block ${hung.number}">\n${pieces.join('\n')}\n</g>`;
}

/** The picture over a block, turned with it; nothing where it is not to be had. What is known of the block's pieces lies under it. */
function image(
  { centre, quarters, tilt, number }: HungBlock,
  size: Drawing['block'],
  href: string | null,
): string[] {
  if (href === null) return [];
  const { width, height } = size;
  const box = `x="${inchText(-width / 2)}" y="${inchText(-height / 2)}" width="${inchText(width)}" height="${inchText(height)}"`;
  const at = `translate(${inchText(centre.x)} ${inchText(centre.y)}) rotate(${quarters * 90 + tilt})`;
  return [
    `<image data-block="${number}" data-part="picture" ${box} preserveAspectRatio="none" transform="${at}" href="${escaped(href)}"/>`,
  ];
}

function polygon(
  piece: Piece,
  outline: Outline,
  grain: number,
  block: number | null,
  cloth: ClothLookup,
): string {
  const data = [
    piece.fabric === null ? '' : ` data-fabric="${escaped(piece.fabric)}"`,
    block === null ? '' : ` data-block="${block}"`,
    piece.place === null ? '' : ` data-place="${piece.place}"`,
    piece.band === null ? ` data-part="${piece.part}"` : ` data-band="${piece.band}"`,
  ].join('');
  return `<polygon${data} points="${outline.map(pointText).join(' ')}" fill="${escaped(cloth.fill(piece, grain))}"/>`;
}

function description(drawing: Drawing): string {
  const size = `${inchText(round(drawing.width))} by ${inchText(round(drawing.height))} inches finished`;
  const blocks = drawing.blocks.map((hung) => hung.number).join(', ');
  const fabrics = drawing.fabrics.map((fabric) => fabric.name).join(', ');
  return `${size}. Blocks: ${blocks || 'none'}. Fabrics: ${fabrics || 'none'}.`;
}

function round(inches: number): number {
  return Math.round(inches * 100) / 100;
}

function captionText(drawing: Drawing, caption: string | undefined): string {
  if (!caption) return '';
  const at = `x="${inchText(drawing.width / 2)}" y="${inchText(drawing.height + drawing.edge + CAPTION_HEIGHT * 0.62)}"`;
  const look = 'text-anchor="middle" font-family="Georgia, serif" font-size="0.8" fill="#1f1d1a"';
  return `<text ${at} ${look}>${escaped(caption)}</text>`;
}
