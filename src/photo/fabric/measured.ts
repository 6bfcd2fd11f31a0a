// What the true size decides of a fabric that was read: how often its print repeats, how large its tile is, and whether its name calls
// the print small or large. It is all from lengths in pixels, so that another true size needs no other reading.
import type { Phrase } from '../../model/phrase';
import type { Inches } from '../../model/units';
import { type Figures, nameFor } from './figures';

/** What is measured of a reading, and what its name says besides. */
export interface Measurable {
  /** In pixels of the picture. `repeat`: from figure to figure; null without a repeat. */
  readonly pixels: { readonly repeat: number | null; readonly tile: Size };
  readonly figures: Figures;
  /** Main colours, largest share first. */
  readonly colours: readonly { readonly hex: string }[];
}

interface Size {
  readonly width: number;
  readonly height: number;
}

export interface Measured {
  /** From figure to figure of a print that repeats, inches; null without a repeat or a true size. */
  readonly scale: Inches | null;
  /** The true size of the seamless tile, inches; null where the true size of the picture is not known. */
  readonly tileSize: { readonly width: Inches; readonly height: Inches } | null;
  readonly name: Phrase;
}

/** A reading at a true size, in pixels of the picture to the inch; null where it is not known. */
export function measured<Read extends Measurable>(read: Read, perInch: number | null): Read & Measured {
  const { repeat, tile } = read.pixels;
  const scale = perInch === null || repeat === null ? null : repeat / perInch;
  const tileSize = perInch === null ? null : { width: tile.width / perInch, height: tile.height / perInch };
  return { ...read, scale, tileSize, name: nameFor(read.figures, read.colours[0]!.hex, scale) };
}
