// Commands that begin an empty quilt: made-up fabrics to be replaced, with strips or fabric on hand, or with the strips for a size.
import { planStrips, usualWidths } from '../../cutting/plan/planStrips';
import type { SizeOffer } from '../../cutting/top/sizeOffers';
import { everyCloth } from '../../model/colourway';
import { freshId } from '../../model/find';
import { counted, phrase } from '../../model/phrase';
import type { ClothOnHand, Fabric, FabricId, Project, StripOnHand } from '../../model/project';
import { type Command, Refusal } from '../apply';
import { takeOffer } from './takeOffer';

export type NewFabric = Omit<Fabric, 'id'>;
type Unowned<Row> = Omit<Row, 'id' | 'fabric'>;

/** What there is of every fabric. */
export interface OfEach {
  readonly strips?: readonly Unowned<StripOnHand>[];
  readonly cloth?: readonly Unowned<ClothOnHand>[];
}

/** Adds fabrics with so much of each on hand. Rows of no strip or piece are left out. */
export function beginWith(fabrics: readonly NewFabric[], each: OfEach): Command {
  return begin(fabrics, (draft, ids) => {
    for (const fabric of ids) {
      for (const row of each.strips ?? []) layStrips(draft, { ...row, fabric });
      for (const row of each.cloth ?? []) {
        if (row.count > 0) draft.clothOnHand.push({ ...row, fabric, id: freshId('c', draft.clothOnHand) });
      }
    }
  });
}

/** Adds fabrics with `strip.count` strips in all, shared as evenly as they go: a roll of precut strips. */
export function beginWithRoll(fabrics: readonly NewFabric[], strip: Unowned<StripOnHand>): Command {
  return begin(fabrics, (draft, ids) => {
    ids.forEach((fabric, at) => {
      const count = Math.floor(strip.count / ids.length) + (at < strip.count % ids.length ? 1 : 0);
      layStrips(draft, { ...strip, fabric, count });
    });
  });
}

/** Takes an offered size up, with fabrics and the strips that its blocks take. Refused where no strips make its wedges. */
export function beginAtSize(fabrics: readonly NewFabric[], offer: SizeOffer): Command {
  return begin(fabrics, (draft, ids) => {
    takeOffer(offer).change?.(draft);
    const { unit, usableWidth: length } = draft.preferences;
    const { blocks } = offer;
    const plan = planStrips({ blocks, wedge: draft.wedge, widths: usualWidths(unit), fabrics: ids, length });
    if (!plan) {
      const message = phrase('No strip set of the usual widths gives wedges of the planned size.');
      throw new Refusal('no-plan', 'wedge', message);
    }
    for (const row of plan.strips) layStrips(draft, { ...row, length });
  });
}

function begin(
  fabrics: readonly NewFabric[],
  lay: (draft: Project, ids: readonly FabricId[]) => void,
): Command {
  return {
    label: counted(fabrics.length, 'begin with 1 fabric', 'begin with {count} fabrics'),
    change: (draft) => {
      const ids = fabrics.map((fabric) => {
        const id = freshId('f', everyCloth(draft));
        draft.fabrics.push({ ...fabric, id });
        return id;
      });
      lay(draft, ids);
    },
  };
}

function layStrips(draft: Project, row: Omit<StripOnHand, 'id'>): void {
  if (row.count > 0) draft.stripsOnHand.push({ ...row, id: freshId('h', draft.stripsOnHand) });
}
