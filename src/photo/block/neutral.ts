// A wedge as it would be in even, neutral light: its rings as colours are told apart, with running sums that give the mean of any run
// of rings, and how much they differ, at once.
import { type LinearRgb, oklabOf } from '../../colour/spaces';
import type { BlockLook } from './look';
import { inNeutral, type Light } from './sunlight';
import { told } from './swatches';

export interface NeutralWedge {
  readonly rings: number;
  /** Three numbers to a ring (swatches.ts). */
  readonly told: Float32Array;
  /** Running sums of weight, of weighted light, of weighted colour, and of the products of each two of its channels (PRODUCTS). */
  readonly mass: Float64Array;
  readonly light: Float64Array;
  readonly colour: Float64Array;
  readonly products: Float64Array;
}

/** The channels that each product is of. */
const PRODUCTS = [[0, 0], [1, 1], [2, 2], [0, 1], [0, 2], [1, 2]] as const; // biome-ignore format: pairs

/** A wedge of a look, the light taken out. */
export function neutralWedge(look: BlockLook, wedge: number, light: Light): NeutralWedge {
  const { rings } = look;
  const colours = new Float32Array(rings * 3);
  const mass = new Float64Array(rings + 1);
  const [lights, colour] = [new Float64Array(3 * rings + 3), new Float64Array(3 * rings + 3)];
  const products = new Float64Array(6 * rings + 6);
  for (let ring = 0; ring < rings; ring += 1) {
    const seen = look.wedges[wedge]!;
    const patch = {
      light: [seen[ring * 3]!, seen[ring * 3 + 1]!, seen[ring * 3 + 2]!] as const,
      x: look.places[wedge]![ring * 2]!,
      y: look.places[wedge]![ring * 2 + 1]!,
    };
    const neutral = inNeutral(light, patch);
    const one = told(oklabOf(neutral as unknown as LinearRgb));
    const weight = look.weights[ring]!;
    colours.set(one, ring * 3);
    mass[ring + 1] = mass[ring]! + weight;
    for (const channel of [0, 1, 2] as const) {
      lights[(ring + 1) * 3 + channel] = lights[ring * 3 + channel]! + weight * neutral[channel];
      colour[(ring + 1) * 3 + channel] = colour[ring * 3 + channel]! + weight * one[channel];
    }
    PRODUCTS.forEach(([a, b], at) => {
      products[(ring + 1) * 6 + at] = products[ring * 6 + at]! + weight * one[a] * one[b];
    });
  }
  return { rings, told: colours, mass, light: lights, colour, products };
}

/** The mean light of rings from `from` to under `to`; of longer runs without the rings at the seams. */
export function meanLight({ mass, light }: NeutralWedge, from: number, to: number): [number, number, number] {
  const trim = to - from >= 8 ? 2 : to - from >= 4 ? 1 : 0;
  const [first, last] = [from + trim, to - trim];
  const weight = mass[last]! - mass[first]!;
  const mean = (channel: number) => (light[last * 3 + channel]! - light[first * 3 + channel]!) / weight;
  return [mean(0), mean(1), mean(2)];
}

/**
 * How much the rings of a run differ, those at its seams left out: writes the sums of products, in the order of PRODUCTS (squares
 * first), to `into`; returns about how many independent rings they are of.
 */
export function differences(
  { mass, colour, products }: NeutralWedge,
  from: number,
  to: number,
  into: Float64Array,
): number {
  const trim = to - from >= 4 ? 1 : 0;
  const [first, last] = [from + trim, to - trim];
  const weight = mass[last]! - mass[first]!;
  for (let at = 0; at < 6; at += 1) {
    const [one, other] = PRODUCTS[at]!;
    const sum = colour[last * 3 + one]! - colour[first * 3 + one]!;
    const beside = colour[last * 3 + other]! - colour[first * 3 + other]!;
    into[at] = products[last * 6 + at]! - products[first * 6 + at]! - (sum * beside) / weight;
  }
  return weight;
}
