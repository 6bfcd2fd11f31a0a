// Which place of which block uses a wedge. Wedges of one set and tip are alike, so the first ones cut are taken to be the first
// ones used: blocks by number, places clockwise.
import { type Phrase, phrase } from '../../model/phrase';
import type { BlockId, Project, StripSet, StripSetId, Tip, WedgePlan } from '../../model/project';
import { availableWedges, plannedWedges, type WedgeCut, wedgeCuts } from './yield';

export interface WedgeUse {
  readonly block: BlockId;
  readonly number: number;
  /** The place in the block, from 0. */
  readonly place: number;
}

export type WedgeUses = (set: StripSetId, tip: Tip) => readonly WedgeUse[];

const NO_USES: readonly WedgeUse[] = [];

/** All uses of wedges, by set and tip. */
export function wedgeUses({ blocks }: Pick<Project, 'blocks'>): WedgeUses {
  const uses = new Map<string, WedgeUse[]>();
  for (const block of blocks.toSorted((one, other) => one.number - other.number)) {
    block.places.forEach((wedge, place) => {
      if (!wedge) return;
      const key = `${wedge.tip} ${wedge.set}`;
      const use = { block: block.id, number: block.number, place };
      const list = uses.get(key);
      if (list) list.push(use);
      else uses.set(key, [use]);
    });
  }
  return (set, tip) => uses.get(`${tip} ${set}`) ?? NO_USES;
}

/** A wedge where it is cut, with its use, null where it has none; `lost` where the set counted by hand has fewer of its tip. */
export interface CutInUse extends WedgeCut {
  readonly use: WedgeUse | null;
  readonly lost: boolean;
}

/** The wedges of a set as they are cut from the left. Which one of a tip is lost is not known: the last ones are taken. */
export function cutsInUse(set: StripSet, wedge: WedgePlan, uses: WedgeUses): CutInUse[] {
  const there = availableWedges(set, wedge);
  const cut = { up: 0, down: 0 };
  return wedgeCuts(set, wedge).map((one) => {
    const at = cut[one.tip];
    cut[one.tip] += 1;
    return { ...one, use: uses(set.id, one.tip)[at] ?? null, lost: at >= there[one.tip] };
  });
}

/** What a drawing of the set leaves out: wedges counted by hand beyond those that fit on it; null where there are none. */
export function notDrawnWords(set: StripSet, wedge: WedgePlan): Phrase | null {
  const [there, fit] = [availableWedges(set, wedge), plannedWedges(set, wedge)];
  const [up, down] = [there.up - fit.up, there.down - fit.down];
  const values = { up, down, set: set.label };
  if (up > 0 && down > 0)
    return phrase('Not drawn: {up} tip up and {down} tip down more than fit on set {set}.', values);
  if (up > 0) return phrase('Not drawn: {up} tip up more than fit on set {set}.', values);
  return down > 0 ? phrase('Not drawn: {down} tip down more than fit on set {set}.', values) : null;
}
