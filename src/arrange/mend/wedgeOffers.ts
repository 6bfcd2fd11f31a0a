// What a place of a block could hold: every wedge that is there, with what it would meet beside its neighbours and beyond the
// block, and what it would do to the whole top. Rules of clash and likeness are balance's; which offers come first is arrange's.

import { type Analysis, analyse } from '../../balance/analyse';
import { inPoints } from '../../balance/score/terms';
import { weightsOf, wishesOf } from '../../balance/score/wishes';
import { radialClash, type WedgeSeams } from '../../balance/wall/wallModel';
import { seamLie, seamLies } from '../../cutting/wedges/nesting';
import { findBlock, findSet } from '../../model/find';
import { type Move, moved } from '../../model/moves';
import type { Block, BlockId, FabricId, Place, Project } from '../../model/project';
import type { Inches } from '../../model/units';
import { rankWedges, type WedgeOffer } from '../choose/composeRank';
import { type OutsideMeeting, outsideMeeting } from './outsideMeeting';
import { TopEffect } from './topEffect';

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

/** The score of the whole top by the person's weights as it is and as it would be, in points; lower is better. */
export interface TopScores {
  readonly now: number;
  readonly after: number;
}

interface Offered {
  readonly wedge: Place;
  readonly meetings: readonly Meeting[];
  /** What its rim would lie against beyond the block; null where that is other cloth, or the block does not hang. */
  readonly outside: OutsideMeeting | null;
  /** Null where nothing it touches hangs with a wedge in it. */
  readonly top: TopScores | null;
}

/** A wedge no block uses. */
export interface LeftOver extends Offered {
  /** Wedges of this set and tip that no block uses. */
  readonly left: number;
  /** It keeps tips alternating round the block. */
  readonly rightTip: boolean;
  /** Its seams lie against those of both neighbours. */
  readonly nests: boolean;
}

/** A wedge of another block, had in trade for the one that is here. */
export interface InTrade extends Offered {
  readonly from: { readonly block: BlockId; readonly place: number };
  /** Rims that meet in the other block: how many more (or fewer, below 0) after the trade. */
  readonly rimsElsewhere: number;
}

export interface WedgeOffers {
  readonly leftOver: readonly LeftOver[];
  readonly inTrade: readonly InTrade[];
}

/** What the wedge would meet in the places beside `at` (from 0). The seams must be of the same strip sets. */
export function meetingsAt(
  project: Project,
  seams: WedgeSeams,
  block: Block,
  at: number,
  wedge: Place,
): Meeting[] {
  const type = typeOf(project, wedge);
  const count = block.places.length;
  const sides = [
    { place: (at + count - 1) % count, before: true },
    { place: (at + 1) % count, before: false },
  ];
  return sides.flatMap(({ place, before }) => {
    const neighbour = block.places[place];
    if (!neighbour) return [];
    const next = typeOf(project, neighbour);
    const clash = before ? radialClash(seams, next, type) : radialClash(seams, type, next);
    return clash.stretches.map((stretch): Meeting => {
      const fabrics = [stretch.fabric, stretch.nextFabric].map((one) => seams.cloths.fabrics[one]!.id);
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

const effects = new WeakMap<Analysis, TopEffect>();

/**
 * Every wedge for a place (from 0) of a planned block other than what is in it: those left over, the right tip and the
 * best fit first; and the best trades with other blocks. Ranked by rankWedges' rule. Nothing is offered that is not there.
 * The analysis must be of the very project.
 */
export function wedgeOffers(analysis: Analysis, block: Block, at: number): WedgeOffers {
  const { project } = analysis;
  const effect = effects.get(analysis) ?? new TopEffect(analysis, weightsOf(project.preferences));
  effects.set(analysis, effect);
  const leftOver: LeftOver[] = [];
  const inTrade: InTrade[] = [];
  const lies = seamLies(project, block);
  const beside = [lies.at(at - 1), lies[(at + 1) % lies.length]];
  for (const offer of rankWedges(project, block.id, at, effect)) {
    const { wedge, from } = offer;
    const offered = {
      wedge,
      meetings: meetingsAt(project, analysis.model, block, at, wedge),
      outside: outsideMeeting(analysis, block, at, typeOf(project, wedge)),
      top: topScores(analysis, effect, block, at, offer),
    };
    if (from !== 'leftOver') {
      inTrade.push({ ...offered, from, rimsElsewhere: offer.elsewhere.rimClashes });
    } else {
      const nests = !beside.includes(seamLie(findSet(project, wedge.set)!, wedge.tip));
      leftOver.push({ ...offered, left: offer.left, rightTip: offer.rightTip, nests });
    }
  }
  return { leftOver, inTrade };
}

function topScores(
  { project }: Analysis,
  effect: TopEffect,
  block: Block,
  at: number,
  { from, added }: WedgeOffer,
): TopScores | null {
  const placeOf = (one: Block, place: number) => project.blocks.indexOf(one) * one.places.length + place;
  const places = [placeOf(block, at)];
  if (from !== 'leftOver') places.push(placeOf(findBlock(project, from.block)!, from.place));
  if (!places.some((place) => effect.weighs(place))) return null;
  const weights = weightsOf(project.preferences);
  return { now: inPoints(effect.now, weights), after: inPoints(effect.now + added, weights) };
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
  const wishes = wishesOf(project.preferences);
  const count = (one: Project) => analyse(one, wishes).clashes.filter((clash) => clash.kind === 'rim').length;
  return { now: count(small), after: count(moved(small, moves)) };
}

function typeOf(project: Project, wedge: Place): number {
  const set = project.stripSets.findIndex((one) => one.id === wedge.set);
  return 2 * set + (wedge.tip === 'up' ? 0 : 1);
}
