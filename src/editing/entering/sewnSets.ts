// Strip sets of wedges that are sewn already: known by what shows of them, and counted by the wedges that are entered.
import { sewnStrips } from '../../geometry/asPieced';
import { apothem } from '../../geometry/wedge';
import { everyCloth } from '../../model/colourway';
import { createSet } from '../../model/create';
import { freshId } from '../../model/find';
import { isTooNarrow } from '../../model/lengths';
import { counted, phrase } from '../../model/phrase';
import type { FabricId } from '../../model/project';
import type { Inches } from '../../model/units';
import { type Command, Refusal } from '../apply';
import type { NewFabric } from '../commands/begin';

/**
 * Adds so many sets, each of as many strips of one width, to enter sewn blocks by their sets before the fabrics are told: of `fabrics`,
 * which are added and stand in, or where there are none of the quilt's own but the background, of which it must have one. Strips come
 * from the fabrics in turn: no set holds a fabric twice where there are fabrics enough.
 */
export function addStandInSets(
  fabrics: readonly NewFabric[],
  { sets, strips }: { readonly sets: number; readonly strips: number },
): Command {
  return {
    label: counted(sets, 'add 1 set of sewn wedges', 'add {count} sets of sewn wedges'),
    change: (draft) => {
      const own = draft.fabrics.filter(({ background }) => !background).map(({ id }) => id);
      const added = fabrics.map((fabric) => {
        const id = freshId('f', everyCloth(draft));
        draft.fabrics.push({ ...fabric, id });
        return id;
      });
      const ids = added.length > 0 ? added : own;
      if (ids.length === 0) throw new Error('addStandInSets: no fabric');
      const width = apothem(draft.wedge) / strips;
      const step = stepThrough(ids.length, strips);
      for (let set = 0; set < sets; set += 1) {
        const bands = Array.from({ length: strips }, (_, at) => ({
          fabric: ids[(set * step + at) % ids.length]!,
          width,
        }));
        addSewnSet(bands).change?.(draft);
      }
    },
  };
}

/** The first whole number from `least` on that goes through all of a ring of `count` before it comes back to the start. */
function stepThrough(count: number, least: number): number {
  const common = (one: number, other: number): number => (other === 0 ? one : common(other, one % other));
  let step = least;
  while (common(count, step) !== 1) step += 1;
  return step;
}

/** What shows of one strip in a sewn wedge, from the rim inwards. */
export interface ShownBand {
  readonly fabric: FabricId;
  /** Inches from seam to seam along the middle of the wedge. The last band shows what is left of the wedge, whatever this says. */
  readonly width: Inches;
}

/**
 * Adds a set for a wedge that is sewn already and whose strips are not on record: its strips are as wide as the bands show them, plus
 * their seams, and no other wedge is left of it. Refused where the bands are longer than the wedge.
 */
export function addSewnSet(bands: readonly ShownBand[]): Command {
  return {
    label: phrase('add the set of a sewn wedge'),
    change: (draft) => {
      const { seam } = draft.wedge;
      const strips = sewnStrips(bands, draft.wedge);
      const last = strips.at(-1);
      if (!last) throw new Error('addSewnSet: no bands');
      if (isTooNarrow(last.width, strips.length > 1 ? seam : 0)) {
        const message = phrase(
          'The fabrics before the last one reach to the middle; they show {sum} together.',
          {
            sum: { inches: bands.slice(0, -1).reduce((sum, { width }) => sum + width, 0) },
          },
        );
        throw new Refusal('bands-too-long', 'stripSets', message);
      }
      draft.stripSets.push({
        ...createSet(draft),
        strips,
        length: 0,
        progress: 'cut',
        cut: { up: 0, down: 0 },
      });
    },
  };
}
