// Which pieces share a seam and for how long, inches: bands along the radial seams inside a block, and whatever lies along
// the four sides of a block as it hangs. Judging a contact is left to balance.
import { HAIR } from '../model/lengths';
import type { Block, Project, WedgePlan } from '../model/project';
import type { Inches } from '../model/units';
import { type Band, wedgeBands } from './bands';
import { apothem, finishedBlock, slope } from './wedge';

/** The bands of each place of a block, from the rim inwards; an empty place has none. */
export type BlockBands = readonly (readonly Band[])[];

export function blockBands(project: Project, block: Block): BlockBands {
  const sets = new Map(project.stripSets.map((set) => [set.id, set]));
  return block.places.map((place) => {
    const set = place && sets.get(place.set);
    return set ? wedgeBands(set.strips, place.tip, project.wedge) : [];
  });
}

/** Two bands of neighbouring places that touch along their radial seam. */
export interface RadialContact {
  /** The place counter-clockwise of the seam, and the next one clockwise. */
  readonly place: number;
  readonly next: number;
  readonly band: Band;
  readonly nextBand: Band;
  /** The shared stretch, as radii along the middle line. */
  readonly outer: Inches;
  readonly inner: Inches;
  /** Its length along the seam: (outer − inner) / cos a. */
  readonly length: Inches;
  /** True where both bands are rim bands. */
  readonly onRim: boolean;
}

/** Every pair of bands that share a stretch of radial seam, seam by seam. */
export function radialContacts(places: BlockBands, perBlock: number): RadialContact[] {
  const stretch = 1 / Math.cos(Math.PI / perBlock);
  return places.flatMap((bands, place) => {
    const next = (place + 1) % places.length;
    const contacts: RadialContact[] = [];
    for (const band of bands) {
      for (const nextBand of places[next]!) {
        const outer = Math.min(band.outer, nextBand.outer);
        const inner = Math.max(band.inner, nextBand.inner);
        if (outer - inner <= HAIR) continue;
        const onRim = band === bands[0] && nextBand === places[next]![0];
        contacts.push({
          place,
          next,
          band,
          nextBand,
          outer,
          inner,
          length: (outer - inner) * stretch,
          onRim,
        });
      }
    }
    return contacts;
  });
}

export const SIDES = ['top', 'right', 'bottom', 'left'] as const;
export type Side = (typeof SIDES)[number];

/** What lies along a stretch of a block's side; positions run left to right or top to bottom from the side's middle. */
export interface SideSpan {
  readonly from: Inches;
  readonly to: Inches;
  /** The place whose rim lies here, or null for a setting piece. */
  readonly place: number | null;
  /** Index into cornerOutlines (after turning with the block: as it hangs), or null for a rim. */
  readonly corner: number | null;
}

/**
 * The spans along one side of a hanging block whose place 1 stands `orientation` steps clockwise of the top. A side with a
 * rim: corner piece, rim, corner piece; a side that only a point touches: two corner pieces.
 */
export function sideSpans(side: Side, orientation: number, wedge: WedgePlan): SideSpan[] {
  const { perBlock } = wedge;
  const { width, height } = finishedBlock(wedge);
  const turns = SIDES.indexOf(side);
  const half = (turns % 2 === 0 ? width : height) / 2;
  const toward = (turns * perBlock) / 4;
  // Corner pieces from the top right clockwise: 0 top right, 1 bottom right, 2 bottom left, 3 top left.
  const [before, after] = ([[3, 0], [0, 1], [2, 1], [3, 2]] as const)[turns]!; // biome-ignore format: a table
  if (!Number.isInteger(toward)) {
    return [
      { from: -half, to: 0, place: null, corner: before },
      { from: 0, to: half, place: null, corner: after },
    ];
  }
  const rim = apothem(wedge) * slope(perBlock);
  const place = (((toward - orientation) % perBlock) + perBlock) % perBlock;
  return [
    { from: -half, to: -rim, place: null, corner: before },
    { from: -rim, to: rim, place, corner: null },
    { from: rim, to: half, place: null, corner: after },
  ];
}

/** The place whose rim lies on a side of a hanging block, or null where only a point touches. */
export function placeOnSide(side: Side, orientation: number, perBlock: number): number | null {
  const toward = (SIDES.indexOf(side) * perBlock) / 4;
  return Number.isInteger(toward) ? (((toward - orientation) % perBlock) + perBlock) % perBlock : null;
}
