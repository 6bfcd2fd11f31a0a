// What a place of a block could hold: every wedge that is there, with what it would meet beside its neighbours. Rules of
// clash and likeness are balance's; how good an arrangement of many blocks is, arrange's.
import { analyse } from '../balance/analyse';
import { radialClash, type WallModel } from '../balance/wallModel';
import { wedgeLedger } from '../cutting/ledger';
import { seamLie, seamLies, wantedTip } from '../cutting/nesting';
import { findBlock } from '../model/find';
import { type Move, moved } from '../model/moves';
import type { Block, BlockId, FabricId, Place, Project, StripSet, Tip } from '../model/project';
import type { Inches } from '../model/units';

/** A stretch of seam where the wedge would meet its own cloth or a look-alike in the next place. */
export interface Meeting {
  /** The neighbouring place, from 1. */
  readonly place: number;
  /** Cloth of the wedge and of its neighbour. */
  readonly fabric: FabricId;
  readonly other: FabricId;
  readonly onRim: boolean;
  readonly inches: Inches;
  /** 1 for one and the same cloth. */
  readonly likeness: number;
}

export interface WedgeOffer {
  readonly wedge: Place;
  readonly set: StripSet;
  /** Wedges of this set and tip that no block uses. */
  readonly left: number;
  /** It keeps tips alternating round the block. */
  readonly rightTip: boolean;
  /** Its seams lie against those of both neighbours. */
  readonly nests: boolean;
  readonly meetings: readonly Meeting[];
}

const TIPS: readonly Tip[] = ['up', 'down'];

/** What the wedge would meet in the places beside `at` (from 0). The model must be of the same strip sets. */
export function meetingsAt(
  project: Project,
  model: WallModel,
  block: Block,
  at: number,
  wedge: Place,
): Meeting[] {
  const kind = kindOf(project, wedge);
  const count = block.places.length;
  const sides = [
    { place: (at + count - 1) % count, before: true },
    { place: (at + 1) % count, before: false },
  ];
  return sides.flatMap(({ place, before }) => {
    const neighbour = block.places[place];
    if (!neighbour) return [];
    const next = kindOf(project, neighbour);
    const clash = before ? radialClash(model, next, kind) : radialClash(model, kind, next);
    return clash.stretches.map((stretch): Meeting => {
      const fabrics = [stretch.fabric, stretch.nextFabric].map((one) => model.cloths.fabrics[one]!.id);
      if (before) fabrics.reverse();
      return {
        place: place + 1,
        fabric: fabrics[0]!,
        other: fabrics[1]!,
        onRim: stretch.band === 0 && stretch.nextBand === 0,
        inches: stretch.length,
        likeness: stretch.likeness,
      };
    });
  });
}

/**
 * Every wedge the sets have left for a place (from 0) of a block, other than the one that is in it. The best first: the
 * right tip, then the least that meets on the rim, then along the whole seams, then the set with most wedges left.
 */
export function wedgeOffers(project: Project, model: WallModel, block: Block, at: number): WedgeOffer[] {
  const here = block.places[at];
  const wanted = wantedTip(block.places, at);
  const lies = seamLies(project, block);
  const count = lies.length;
  const beside = [lies[(at + count - 1) % count], lies[(at + 1) % count]];
  const offers = wedgeLedger(project).flatMap(({ set, left }) =>
    TIPS.flatMap((tip): WedgeOffer[] => {
      if (left[tip] <= 0 || (here?.set === set.id && here.tip === tip)) return [];
      const wedge = { set: set.id, tip };
      return [
        {
          wedge,
          set,
          left: left[tip],
          rightTip: tip === wanted,
          nests: !beside.includes(seamLie(set, tip)),
          meetings: meetingsAt(project, model, block, at, wedge),
        },
      ];
    }),
  );
  return offers.sort(
    (one, other) =>
      Number(other.rightTip) - Number(one.rightTip) ||
      weightOf(one.meetings, true) - weightOf(other.meetings, true) ||
      weightOf(one.meetings, false) - weightOf(other.meetings, false) ||
      other.left - one.left,
  );
}

function weightOf(meetings: readonly Meeting[], onRim: boolean): number {
  return meetings.reduce((sum, one) => sum + (one.onRim === onRim ? one.inches * one.likeness : 0), 0);
}

/** How many rims meet their own cloth or a look-alike inside these blocks, as they are and after the moves. */
export function rimMeetings(
  project: Project,
  blocks: readonly BlockId[],
  moves: readonly Move[],
): { now: number; after: number } {
  const small = {
    ...project,
    blocks: [...new Set(blocks)].map((id) => findBlock(project, id)!),
    wall: { rows: 1, columns: 1, cells: [null] },
  };
  const count = (one: Project) => analyse(one).clashes.filter((clash) => clash.kind === 'rim').length;
  return { now: count(small), after: count(moved(small, moves)) };
}

function kindOf(project: Project, wedge: Place): number {
  const set = project.stripSets.findIndex((one) => one.id === wedge.set);
  return 2 * set + (wedge.tip === 'up' ? 0 : 1);
}
