// Made-up plain fabrics, light to dark, that stand in until the person's own are entered; each is named by the colour it has.
import { ciede2000 } from '../colour/difference';
import { formatHex, inGamut } from '../colour/parse';
import { encodedOf, labD65Of, linearOfHex, linearOfOklab, oklabOf, value } from '../colour/spaces';
import { type Phrase, phrase } from '../model/phrase';
import { LOOKALIKE_THRESHOLD } from './likeness';

export interface StandIn {
  readonly colour: string;
  /** 'Fabric 3, light blue'. */
  readonly name: Phrase;
}

/** Value L* of the lightest and the darkest, and the strongest OKLab chroma. */
const LIGHTEST = 92;
const DARKEST = 20;
const CHROMA = 0.09;
/** Degrees from one hue to the next: the golden angle, so that fabrics near in value differ in hue. */
const HUE_STEP = 137.508;

/** So many fabrics, in even steps of value from light to dark, no two near ones of one hue. */
export function standIns(count: number): StandIn[] {
  return Array.from({ length: count }, (_, at) => {
    const part = count === 1 ? 0.5 : at / (count - 1);
    const colour = atValue(LIGHTEST + (DARKEST - LIGHTEST) * part, (35 + at * HUE_STEP) % 360);
    return {
      colour,
      name: phrase('Fabric {number}, {colour}', { number: at + 1, colour: colourName(colour) }),
    };
  });
}

/** First colours of new fabrics, used in turn; each reads as another fabric beside the rest. */
const FIRST_COLOURS = [
  '#8a3b2e', '#27466b', '#d9a441', '#4f6b52', '#b9c7cf', '#6b3a5b', '#d98e73', '#2f2f36', '#8fa06a', '#e6d3b1',
] as const; // biome-ignore format: a table

/** Where every first colour has its like among the fabrics, one of these follows. */
const MORE_COLOURS = 60;

/**
 * Colours (hex) for so many new fabrics beside those that are there: each the first that reads as a fabric of its own, or
 * where none is left the one farthest from its nearest. So no two new fabrics clash before their colours are known.
 */
export function freshColours(taken: readonly string[], count: number): string[] {
  const choice = [...FIRST_COLOURS, ...standIns(MORE_COLOURS).map(({ colour }) => colour)].map((colour) => ({
    colour,
    lab: labOf(colour),
    nearest: Number.POSITIVE_INFINITY,
  }));
  const note = (colour: string) => {
    const lab = labOf(colour);
    for (const one of choice) one.nearest = Math.min(one.nearest, ciede2000(one.lab, lab));
  };
  for (const colour of taken) note(colour);
  return Array.from({ length: count }, () => {
    const { colour } =
      choice.find(({ nearest }) => nearest > LOOKALIKE_THRESHOLD) ??
      choice.reduce((far, one) => (one.nearest > far.nearest ? one : far));
    note(colour);
    return colour;
  });
}

function labOf(hex: string) {
  return labD65Of(linearOfHex(hex));
}

/** The colour of this hue with a value of `wanted`, by halving: value grows with OKLab lightness. */
function atValue(wanted: number, hue: number): string {
  let [low, high] = [0, 1];
  for (let halving = 0; halving < 14; halving += 1) {
    const middle = (low + high) / 2;
    if (value(hexOf(middle, hue)) < wanted) low = middle;
    else high = middle;
  }
  return hexOf(high, hue);
}

/** The colour of this OKLab lightness and hue with as much chroma as the screen has, CHROMA at most. */
function hexOf(lightness: number, hue: number): string {
  const angle = (hue * Math.PI) / 180;
  for (let chroma = CHROMA; chroma > 0; chroma -= 0.005) {
    const colour = encodedOf(linearOfOklab([lightness, chroma * Math.cos(angle), chroma * Math.sin(angle)]));
    if (inGamut(colour)) return formatHex(colour);
  }
  return formatHex(encodedOf(linearOfOklab([lightness, 0, 0])));
}

/** Where each hue begins, OKLab degrees; dark oranges are brown (by eye, no source). */
const HUES: readonly (readonly [from: number, name: string, dark: string])[] = [
  [0, 'pink', 'wine'],
  [20, 'red', 'red'],
  [45, 'orange', 'brown'],
  [80, 'yellow', 'olive'],
  [118, 'green', 'green'],
  [165, 'teal', 'teal'],
  [215, 'blue', 'blue'],
  [285, 'violet', 'violet'],
  [330, 'pink', 'wine'],
];
const NAMES = ['very light {hue}', 'light {hue}', 'medium {hue}', 'dark {hue}', 'very dark {hue}'] as const;

/** A plain name of a colour: its value and its hue. */
export function colourName(hex: string): Phrase {
  const [lightness, a, b] = oklabOf(linearOfHex(hex));
  const hue = ((Math.atan2(b, a) * 180) / Math.PI + 360) % 360;
  const [, light, dark] = HUES.findLast(([from]) => hue >= from)!;
  const step = Math.min(4, Math.max(0, Math.floor((0.99 - lightness) / 0.14)));
  const grey = Math.hypot(a, b) < 0.02;
  return phrase(NAMES[step]!, { hue: phrase(grey ? 'grey' : lightness < 0.55 ? dark : light) });
}
