// Blocks and bands that were read, in words, and the fabrics by how like they are to what is seen of a band.
import { formatHex } from '../../../colour/parse';
import { encodedOf, oklabOf } from '../../../colour/spaces';
import { findFabric } from '../../../model/find';
import { type Phrase, phrase } from '../../../model/phrase';
import type { Fabric, Project, ShownBand } from '../../../model/project';
import type { ReadBand, ReadBlock } from '../../../photo/block/readLook';
import { apart, swatchesOf } from '../../../photo/block/swatches';
import type { BlockFound } from '../../../store/photo/blockJobs';
import { isDoubtful } from '../../../store/photo/corrected';

/** The fabric of a band, and whether it should be looked at. */
export function bandWords(project: Project, place: number, at: number, band: ShownBand): Phrase {
  const values = {
    place: place + 1,
    band: bandName(at),
    fabric: band.fabric === null ? phrase('not known') : (findFabric(project, band.fabric)?.name ?? ''),
  };
  const sure = sureWords(band);
  return sure
    ? phrase('Place {place}, {band}: {fabric}, {sure}', { ...values, sure })
    : phrase('Place {place}, {band}: {fabric}', values);
}

/** How sure a band is, in words: '97% sure', 'doubtful, 60%'; null for what a person has said. */
export function sureWords(band: ShownBand): Phrase | null {
  if (band.sure === 1) return null;
  const sure = percentSure(band.sure);
  return isDoubtful(band) ? phrase('doubtful, {sure}%', { sure }) : phrase('{sure}% sure', { sure });
}

/** Whole percent, never 100 of what was only read. */
export function percentSure(sure: number): number {
  return Math.min(99, Math.round(100 * sure));
}

function bandName(at: number): Phrase {
  return at === 0 ? phrase('rim') : phrase('strip {number}', { number: at + 1 });
}

/** The colour of what is seen, as it would be by daylight. */
export function seenColour({ light }: Pick<ReadBand, 'light'>): string {
  const [red, green, blue] = light.map((one) => Math.max(0, Math.min(1, one)));
  return formatHex(encodedOf([red!, green!, blue!]));
}

/** The fabrics, the one most like what is seen first. */
export function byLikeness(fabrics: readonly Fabric[], { light }: Pick<ReadBand, 'light'>): Fabric[] {
  const seen = oklabOf([light[0], light[1], light[2]]);
  const swatches = swatchesOf(fabrics);
  const distance = new Map(fabrics.map((fabric, at) => [fabric.id, apart(swatches[at]!.oklab, seen)]));
  return fabrics.toSorted((one, other) => distance.get(one.id)! - distance.get(other.id)!);
}

/** What was done about the light in which a block was photographed. */
export function lightWords({ light, ownLight }: Pick<BlockFound, 'light' | 'ownLight'>): Phrase {
  if (!light)
    return phrase('The colours are as photographed: too few fabrics were recognised to tell the light by.');
  return ownLight
    ? phrase('The cast of the light is taken out, by the fabrics that were recognised.')
    : phrase('The cast of the light is taken out as in your other photographs.');
}

const TURNS = ['not turned', 'turned once', 'turned twice', 'turned three times'] as const;

/** 'This looks like block 7, turned once (99% sure)'; null where it is none of the quilt. Turns are quarter turns clockwise. */
export function knownWords({ known }: Pick<ReadBlock, 'known'>): Phrase | null {
  if (!known) return null;
  const values = {
    block: known.number,
    turned: phrase(TURNS[Math.round(known.quarters) % 4]!),
    sure: percentSure(known.sure),
  };
  return phrase('This looks like block {block}, {turned} ({sure}% sure)', values);
}
