// What a place of a block could hold: every wedge that is there, with what it would meet beside its neighbours. Rules of
// clash and likeness are balance's; which offers come first is arrange's.
import { rankWedges } from '../arrange/composeRank';
import { analyse } from '../balance/analyse';
import { radialClash, type WallModel } from '../balance/wallModel';
import { wedgeLedger } from '../cutting/ledger';
import { seamLie, seamLies, wantedTip } from '../cutting/nesting';
import { findBlock } from '../model/find';
import { type Move, moved } from '../model/moves';
import type { Block, BlockId, FabricId, Place, Project, Tip } from '../model/project';
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

/** A wedge no block uses. */
export interface LeftOver {
  readonly wedge: Place;
  /** Wedges of this set and tip that no block uses. */
  readonly left: number;
  /** It keeps tips alternating round the block. */
  readonly rightTip: boolean;
  /** Its seams lie against those of both neighbours. */
  readonly nests: boolean;
  readonly meetings: readonly Meeting[];
}

/** A wedge of another block, had in trade for the one that is here. */
export interface InTrade {
  readonly wedge: Place;
  readonly from: { readonly block: BlockId; readonly place: number };
  readonly meetings: readonly Meeting[];
  /** Rims that meet in the other block: how many more (or fewer, below 0) after the trade. */
  readonly rimsElsewhere: number;
}

export interface WedgeOffers {
  readonly leftOver: readonly LeftOver[];
  readonly inTrade: readonly InTrade[];
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
 * Every wedge for a place (from 0) of a planned block other than what is in it: those left over, the right tip and the
 * best fit first; and the best trades with other blocks. Nothing is offered that is not there.
 */
export function wedgeOffers(project: Project, model: WallModel, block: Block, at: number): WedgeOffers {
  const ranked = rankWedges(project, block.id, at);
  const rank = new Map(
    ranked.flatMap((one, index) => (one.from === 'left over' ? [[keyOf(one.wedge), index] as const] : [])),
  );
  const inTrade = ranked.flatMap(({ from, wedge, elsewhere }): InTrade[] => {
    if (from === 'left over') return [];
    const meetings = meetingsAt(project, model, block, at, wedge);
    return [{ wedge, from, meetings, rimsElsewhere: elsewhere.rimClashes }];
  });
  const last = ranked.length;
  const leftOver = wedgesThere(project, model, block, at).sort(
    (one, other) =>
      (rank.get(keyOf(one.wedge)) ?? last) - (rank.get(keyOf(other.wedge)) ?? last) ||
      weightOf(one.meetings, true) - weightOf(other.meetings, true) ||
      weightOf(one.meetings, false) - weightOf(other.meetings, false),
  );
  return { leftOver, inTrade };
}

function keyOf(wedge: Place): string {
  return `${wedge.set} ${wedge.tip}`;
}

function wedgesThere(project: Project, model: WallModel, block: Block, at: number): LeftOver[] {
  const here = block.places[at];
  const wanted = wantedTip(block.places, at);
  const lies = seamLies(project, block);
  const count = lies.length;
  const beside = [lies[(at + count - 1) % count], lies[(at + 1) % count]];
  return wedgeLedger(project).flatMap(({ set, left }) =>
    TIPS.flatMap((tip): LeftOver[] => {
      if (left[tip] <= 0 || (here?.set === set.id && here.tip === tip)) return [];
      const wedge = { set: set.id, tip };
      return [
        {
          wedge,
          left: left[tip],
          rightTip: tip === wanted,
          nests: !beside.includes(seamLie(set, tip)),
          meetings: meetingsAt(project, model, block, at, wedge),
        },
      ];
    }),
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
