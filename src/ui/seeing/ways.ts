// The ways of seeing in words; choosing one, which screen readers are told.
import { WAYS, type Way } from '../../colour/seen';
import { USUAL } from '../../model/lengths';
import { type Phrase, phrase } from '../../model/phrase';
import type { App, Look } from '../../store/app';

interface WayWords {
  readonly name: string;
  /** What it is for, in a line. */
  readonly line: string;
  readonly said: Phrase;
}

export const WAY_WORDS: Readonly<Record<Way, WayWords>> = {
  colour: { name: 'Colour', line: 'As it is', said: phrase('Seen in colour') },
  grey: { name: 'Grey', line: 'Values without colour', said: phrase('Seen in grey') },
  tones: {
    name: 'Three tones',
    line: 'Light, medium and dark, by thirds of this quilt',
    said: phrase('Seen in three tones'),
  },
  squint: { name: 'Squinting', line: 'Blurred, from a distance', said: phrase('Seen squinting') },
  protan: {
    name: 'Red-weak',
    line: 'Protan colour vision',
    said: phrase('Seen with red-weak colour vision'),
  },
  deutan: {
    name: 'Green-weak',
    line: 'Deutan colour vision, the most common one',
    said: phrase('Seen with green-weak colour vision'),
  },
  tritan: {
    name: 'Blue-weak',
    line: 'Tritan colour vision, rare; roughly',
    said: phrase('Seen with blue-weak colour vision'),
  },
};

/** Chooses a way of seeing and says so. */
export function seeAs(app: App, way: Way): void {
  app.lookAt({ way });
  app.announce(WAY_WORDS[way].said);
}

/** Goes to the next way of seeing, or the one before; after the last comes the first. */
export function seeNext(app: App, step: 1 | -1): void {
  const at = WAYS.indexOf(app.look.way);
  seeAs(app, WAYS.at((at + step) % WAYS.length)!);
}

/** From how far a squinting person looks, inches. */
export function distanceOf({
  look,
  unit,
}: Pick<App, 'unit'> & { readonly look: Pick<Look, 'distance'> }): number {
  return look.distance ?? USUAL[unit].viewing;
}
