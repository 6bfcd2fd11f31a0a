// Scenes of cloth for tests, in linear light by D65: a table, a white card, the cloth that is looked at, other cloth about it.
import { Resvg } from '@resvg/resvg-js';
import { formatHex } from '../../../src/colour/parse';
import { encodedOf, linearOfHex, linearOfOklab, luminanceOfValue } from '../../../src/colour/spaces';
import { patternFor } from '../../../src/drawing/prints';
import { type Fabric, PRINT_MOTIFS, type PrintMotif } from '../../../src/model/project';
import { blankPlane, type Pixels, type Plane } from '../../../src/photo/pixels/pixels';
import { type PixelBox, resizedPlane } from '../../../src/photo/pixels/resize';
import { linearPlane } from './linearPlane';

/** The value of the card, as measured. */
export const CARD = 95;

/** A colour as cloth is dyed: OKLab lightness 0.25 to 0.93, chroma to 0.17, inside sRGB. */
function clothColour(random: () => number, apartFrom: readonly string[] = []): string {
  for (;;) {
    const [lightness, chroma, hue] = [0.25 + 0.68 * random(), 0.17 * random(), 2 * Math.PI * random()];
    const light = linearOfOklab([lightness, chroma * Math.cos(hue), chroma * Math.sin(hue)]);
    if (!light.every((channel) => channel > 0.004 && channel < 0.95)) continue;
    const hex = formatHex(encodedOf(light));
    if (apartFrom.every((other) => apart(hex, other) > 0.25)) return hex;
  }
}

function apart(one: string, other: string): number {
  const [a, b] = [linearOfHex(one), linearOfHex(other)];
  return Math.hypot(...a.map((channel, at) => Math.cbrt(channel) - Math.cbrt(b[at]!)));
}

/** A printed fabric with inks told apart from its ground. */
export function printed(motif: PrintMotif, seed: number, random: () => number, repeat = 2): Fabric {
  const ground = clothColour(random);
  const first = clothColour(random, [ground]);
  const second = clothColour(random, [ground, first]);
  const print = { motif, inks: [first, second], repeat, angle: 0, seed };
  return {
    id: `f-${motif}-${seed}`,
    name: motif,
    colour: ground,
    cloth: { kind: 'print', print },
    background: false,
  };
}

/** A fabric of any kind: one in three plain. */
export function someCloth(seed: number, random: () => number): Fabric {
  const pick = Math.floor(random() * PRINT_MOTIFS.length * 1.5);
  const motif = PRINT_MOTIFS[pick];
  if (motif) return printed(motif, seed, random);
  return {
    id: `p-${seed}`,
    name: 'plain',
    colour: clothColour(random),
    cloth: { kind: 'plain' },
    background: false,
  };
}

/** A piece of fabric, drawn at so many pixels to the inch. */
export function drawnCloth(fabric: Fabric, width: number, height: number, perInch: number, turn = 0): Pixels {
  const pattern = patternFor(fabric);
  const fill = pattern ? `url(#${pattern.id})` : fabric.colour;
  const [across, down] = [width / perInch, height / perInch];
  const reach = 2 * (across + down);
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${across} ${down}"><defs>${pattern?.markup ?? ''}</defs><rect x="${-reach}" y="${-reach}" width="${2 * reach}" height="${2 * reach}" fill="${fill}" transform="rotate(${turn} ${across / 2} ${down / 2})"/></svg>`;
  const image = new Resvg(svg).render();
  return { width, height, data: new Uint8ClampedArray(image.pixels) };
}

/** The same in linear light, drawn larger and made smaller by area, as a lens does it. */
export function clothPlane(fabric: Fabric, width: number, height: number, perInch: number, turn = 0): Plane {
  return resizedPlane(
    linearPlane(drawnCloth(fabric, width * 2, height * 2, perInch * 2, turn)),
    width,
    height,
  );
}

/** Lays one plane on another. */
export function lay(onto: Plane, piece: Plane, left: number, top: number): void {
  for (let row = 0; row < piece.height; row += 1) {
    const line = piece.data.subarray(row * piece.width * 3, (row + 1) * piece.width * 3);
    onto.data.set(line, ((top + row) * onto.width + left) * 3);
  }
}

/** A piece of one light. */
export function evenPlane(width: number, height: number, light: readonly number[]): Plane {
  const plane = blankPlane(width, height, 3);
  for (let at = 0; at < plane.data.length; at += 1) plane.data[at] = light[at % 3]!;
  return plane;
}

/** A table of dull wood: long streaks. */
function table(width: number, height: number, random: () => number): Plane {
  const base = [0.2 + 0.2 * random(), 0.13 + 0.1 * random(), 0.06 + 0.06 * random()];
  const plane = blankPlane(width, height, 3);
  for (let row = 0; row < height; row += 1) {
    const streak = 0.75 + 0.5 * random();
    for (let column = 0; column < width; column += 1) {
      const grain = streak * (0.92 + 0.16 * random());
      for (let channel = 0; channel < 3; channel += 1)
        plane.data[(row * width + column) * 3 + channel] = base[channel]! * grain;
    }
  }
  return plane;
}

export interface ClothScene {
  readonly plane: Plane;
  readonly fabric: Fabric;
  readonly cloth: PixelBox;
  readonly card: PixelBox;
}

/** A table with a card on one side, plain fabrics below, and the fabric at 60 pixels to the inch. */
export function clothScene(seed: number, random: () => number): ClothScene {
  const [width, height] = [560, 420];
  const plane = table(width, height, random);
  const left = random() < 0.5;
  const cloth = { x: left ? 20 : 230, y: 20, width: 310, height: 290 };
  const card = { x: left ? 390 : 60, y: 30 + Math.floor(random() * 160), width: 110, height: 90 };
  const fabric = someCloth(seed, random);
  lay(plane, clothPlane(fabric, cloth.width, cloth.height, 60), cloth.x, cloth.y);
  const white = luminanceOfValue(CARD);
  lay(plane, evenPlane(card.width, card.height, [white, white, white]), card.x, card.y);
  for (let x = 20; x < 500; x += 130)
    lay(plane, evenPlane(100, 80, linearOfHex(clothColour(random))), x, 330);
  return { plane, fabric, cloth, card };
}

/** A box as an upright frame, `inset` pixels inside it. */
export function framed({ x, y, width, height }: PixelBox, inset = 0) {
  return {
    x: x + width / 2,
    y: y + height / 2,
    width: width - 2 * inset,
    height: height - 2 * inset,
    angle: 0,
  };
}

/** The mean light of a box of a plane. */
export function meanIn(plane: Plane, { x, y, width, height }: PixelBox): [number, number, number] {
  const sums: [number, number, number] = [0, 0, 0];
  for (let row = y; row < y + height; row += 1)
    for (let at = (row * plane.width + x) * 3; at < (row * plane.width + x + width) * 3; at += 1)
      sums[at % 3]! += plane.data[at]! / (width * height);
  return sums;
}
