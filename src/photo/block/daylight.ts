// The light that a block was read in, and where it falls in the photograph: so that it can be taken out of the block's picture and out of
// fabrics made of it. sunlight.ts finds the light.
import type { Point } from '../../geometry/point';
import type { PixelBox } from '../pixels/resize';
import type { Relit } from '../plane/rectify';
import { type ReadBlock, SURE } from './readLook';
import { fallOff, type Light } from './sunlight';

/** A light, and the part of the photograph over which it is told, in pixels. Plain data. */
export interface LightThere {
  readonly terms: readonly number[];
  readonly over: PixelBox;
}

/** A block with the light it was read in. */
export interface LitBlock extends ReadBlock {
  readonly light: LightThere;
}

/** A light that was found in `over`, a part of the photograph. */
export function lightIn(over: PixelBox, light: Light): LightThere {
  return { terms: [...light], over };
}

/** The colour and strength of a light without its fall-off: for another photograph of the same sitting. */
export function evenLight({ terms }: LightThere): Light {
  return Float64Array.from(terms, (term, at) => (at < 3 ? term : 0));
}

/**
 * Whether the light of blocks is known: at least half of their rims are surely of fabrics of the list. Where fewer are, what was found
 * may be the colour of cloth that is not in the list.
 */
export function isLightKnown(blocks: readonly Pick<ReadBlock, 'wedges'>[]): boolean {
  const rims = blocks.flatMap(({ wedges }) => wedges.map(([rim]) => rim));
  const sure = rims.filter((rim) => rim && rim.fabric !== null && rim.sure >= SURE).length;
  return sure > 0 && sure >= rims.length / 2;
}

/** Takes the light out of pixels of the photograph: they look as in even daylight. */
export function withoutLight({ terms, over }: LightThere): Relit {
  const light = Float64Array.from(terms);
  return (seen, { x, y }: Point) => {
    const [across, down] = [(2 * (x - over.x)) / over.width - 1, (2 * (y - over.y)) / over.height - 1];
    // Beyond the block the fall-off is no more than a guess.
    const off = fallOff(light, held(across), held(down));
    for (let channel = 0; channel < 3; channel += 1) seen[channel]! *= Math.exp(-light[channel]! - off);
  };
}

function held(at: number): number {
  return Math.max(-1, Math.min(1, at));
}

/** The bands with their colours as they are photographed, for a block whose light is not known. */
export function asPhotographed({ wedges, light }: LitBlock): ReadBlock['wedges'] {
  const gain = light.terms.slice(0, 3).map(Math.exp);
  return wedges.map((bands) =>
    bands.map((band) => ({
      ...band,
      light: [band.light[0] * gain[0]!, band.light[1] * gain[1]!, band.light[2] * gain[2]!] as const,
    })),
  );
}
