// Commands on strip sets and on the wedge cut from them.
import { current } from 'immer';
import { countKept } from '../../cutting/wedges/countKept';
import { whyTooTall } from '../../cutting/wedges/tallest';
import { apothem } from '../../geometry/wedge';
import { createSet } from '../../model/create';
import { findSet } from '../../model/find';
import { whyCutsLocked, whyStripsLocked, whyWedgeLocked } from '../../model/freedom';
import { counted, phrase } from '../../model/phrase';
import type { Project, Strip, StripSet, StripSetId, WedgePlan } from '../../model/project';
import type { Inches } from '../../model/units';
import { type Command, Refusal } from '../apply';
import { type CutTable, cutFromCloth } from './clothOnHand';

/** Adds a set with the given strips, without strips an empty one; so long, or as long as fabric is wide. */
export function addSet(strips: readonly Strip[] = [], length?: Inches): Command {
  return {
    label: phrase('add a strip set'),
    change: (draft) => {
      const set = { ...createSet(draft), strips: strips.map((strip) => ({ ...strip })) };
      draft.stripSets.push(length === undefined ? set : { ...set, length });
    },
  };
}

/** Removes a set and empties the places of its wedges. Refused while a sewn block contains one of them. */
export function removeSet(project: Project, id: StripSetId): Command {
  return {
    label: phrase('remove strip set {set}', { set: findSet(project, id)?.label ?? '' }),
    change: (draft) => {
      dropSets(draft, new Set([id]));
    },
  };
}

/**
 * Replaces all planned, unlocked sets by newly made ones. The wedges of the replaced sets leave the blocks. With a cut height
 * the wedge is changed too.
 */
export function replaceSets(
  project: Project,
  made: readonly StripSet[],
  seed: number,
  cutHeight?: Inches,
): Command {
  return {
    label:
      cutHeight === undefined
        ? counted(made.length, 'make 1 strip set', 'make {count} strip sets')
        : counted(
            made.length,
            'make 1 strip set for wedges {height} high',
            'make {count} strip sets for wedges {height} high',
            { height: { inches: cutHeight } },
          ),
    change: (draft) => {
      if (cutHeight !== undefined) setWedge(draft, { cutHeight });
      const kept = new Set(made.map((set) => set.id));
      const gone = project.stripSets.filter((set) => set.progress === 'planned' && !set.locked);
      dropSets(draft, new Set(gone.map((set) => set.id)));
      draft.stripSets = [...draft.stripSets.filter((set) => !kept.has(set.id)), ...made.map(copied)];
      draft.preferences.seed = seed;
    },
  };
}

/**
 * Lays made sets beside those there are. With `after` the rest is cut as well: the lists of cloth and strips on hand become
 * those. Refused when the sets or the lists have changed since.
 */
export function laySets(project: Project, made: readonly StripSet[], after?: CutTable): Command {
  const lay = counted(made.length, 'lay 1 strip set', 'lay {count} strip sets');
  const cutting = after && cutFromCloth(project, after);
  return {
    label: cutting ? phrase('{lay}, {cut}', { lay, cut: cutting.label }) : lay,
    change: (draft) => {
      if (draft.stripSets.length !== project.stripSets.length) {
        throw new Refusal('sets-changed', 'stripSets', phrase('The strip sets have changed meanwhile.'));
      }
      draft.stripSets.push(...made.map(copied));
      cutting?.change?.(draft);
    },
  };
}

function copied(set: StripSet): StripSet {
  return { ...set, strips: set.strips.map((strip) => ({ ...strip })) };
}

function dropSets(draft: Project, gone: ReadonlySet<StripSetId>): void {
  for (const block of draft.blocks) {
    const lost = block.places.find((place) => place && gone.has(place.set));
    if (!lost) continue;
    if (block.progress !== 'planned') {
      const set = findSet(draft, lost.set)?.label ?? '';
      throw new Refusal(
        'set-in-sewn-block',
        'stripSets',
        phrase('Block {block} is sewn with wedges of set {set}; the set stays.', {
          block: block.number,
          set,
        }),
      );
    }
    block.places = block.places.map((place) => (place && gone.has(place.set) ? null : place));
  }
  draft.stripSets = draft.stripSets.filter((set) => !gone.has(set.id));
}

/** Replaces the strips of a set: to add, take out, change or reorder them. Refused where they are sewn or locked. */
export function layStrips(project: Project, id: StripSetId, strips: readonly Strip[]): Command {
  const set = findSet(project, id);
  return {
    label: phrase('change the strips of set {set}', { set: set?.label ?? '' }),
    change: (draft) => {
      const found = findSet(draft, id);
      if (!found) throw new Error(`layStrips: no set ${id}`);
      const reason = whyStripsLocked(draft, found);
      if (reason) throw new Refusal('set-sewn', 'stripSets', reason);
      const next = { ...found, strips: strips.map((strip) => ({ ...strip })) };
      found.cut = countKept(next, draft.wedge, { set: found, wedge: draft.wedge });
      found.strips = next.strips;
    },
  };
}

/**
 * Changes the letter, length, pressing, first tip, lock, progress or real wedge count of a set. Refuses to change length and
 * first tip of a set that is cut.
 */
export function changeSet(
  project: Project,
  id: StripSetId,
  to: Partial<Omit<StripSet, 'id' | 'strips'>>,
): Command {
  return {
    label: phrase('change strip set {set}', { set: findSet(project, id)?.label ?? '' }),
    change: (draft) => {
      const set = findSet(draft, id);
      if (!set) throw new Error(`changeSet: no set ${id}`);
      const moves =
        (to.length !== undefined && to.length !== set.length) ||
        (to.firstTip !== undefined && to.firstTip !== set.firstTip);
      const reason = moves ? whyCutsLocked(draft, set) : null;
      if (reason) throw new Refusal('set-cut', 'stripSets', reason);
      const cut = countKept({ ...set, ...to }, draft.wedge, { set, wedge: draft.wedge });
      Object.assign(set, { cut }, to);
    },
  };
}

/**
 * Changes the wedge. With another number of wedges to the block, places that still exist keep their wedges. Refused where
 * sewn or cut work would no longer agree with the wedge (model/freedom), and where blocks use wedges that sets would no longer
 * give so high.
 */
export function changeWedge(to: Partial<WedgePlan>): Command {
  return {
    label: phrase('change the wedge'),
    change: (draft) => {
      setWedge(draft, to);
      if (to.cutHeight === undefined || to.perBlock !== undefined) return;
      const reason = whyTooTall(current(draft), to.cutHeight);
      if (reason) throw new Refusal('too-tall', 'wedge.cutHeight', reason);
    },
  };
}

/** Bands are read from a picture as shares of a block, so they follow what is corrected of its size. Mutates the draft. */
function scalePictures(draft: Project, by: number): void {
  if (!(by > 0) || !Number.isFinite(by)) return;
  for (const block of draft.blocks)
    if (block.kind === 'pictured')
      for (const { bands } of block.wedges) for (const band of bands) band.width *= by;
}

/** The change of changeWedge. Mutates the draft; throws a Refusal. */
export function setWedge(draft: Project, to: Partial<WedgePlan>): void {
  const before = draft.wedge.perBlock;
  const reason = whyWedgeLocked(draft, to);
  if (reason) throw new Refusal('wedge-held', 'wedge', reason);
  const sewn = draft.blocks.find((block) => block.progress !== 'planned');
  if (sewn && to.perBlock !== undefined && to.perBlock !== before) {
    const message = phrase('Block {block} is sewn with {count} wedges.', {
      block: sewn.number,
      count: before,
    });
    throw new Refusal('block-sewn', 'wedge.perBlock', message);
  }
  const height = apothem(draft.wedge);
  const wedge = { ...draft.wedge, ...to };
  for (const set of draft.stripSets) set.cut = countKept(set, wedge, { set, wedge: draft.wedge });
  draft.wedge = wedge;
  scalePictures(draft, apothem(draft.wedge) / height);
  const perBlock = draft.wedge.perBlock;
  if (perBlock === before) return;
  for (const block of draft.blocks) {
    block.places = Array.from({ length: perBlock }, (_, place) => block.places[place] ?? null);
    block.cornerShift = 0;
  }
  for (const cell of draft.wall.cells) if (cell) cell.turn = 0;
}
