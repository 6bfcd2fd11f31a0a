// Which way the seams of a wedge lie in a block, and which neighbours nest. Common practice, no source: seams nest where
// neighbours are pressed opposite ways, so wedges go tip up and tip down in turn.
import { findSet } from '../../model/find';
import type { Block, Place, Project, StripSet, Tip } from '../../model/project';

/** Where the seams of a wedge point once it is in the block. */
export type SeamLie = 'rim' | 'middle';

/** The lie of a wedge's seams: a tip-up wedge has the first strip on its rim, a tip-down wedge the last. */
export function seamLie(set: Pick<StripSet, 'pressing'>, tip: Tip): SeamLie {
  return (tip === 'up') === (set.pressing === 'first') ? 'rim' : 'middle';
}

/**
 * The tip a place (from 0) wants so that tips alternate round the block: what most other places ask for, and tip up on
 * place 1 where they do not say.
 */
export function wantedTip(places: readonly (Place | null)[], at: number): Tip {
  let forUp = 0;
  places.forEach((place, index) => {
    if (place === null || index === at) return;
    const sameTurn = (index - at) % 2 === 0;
    forUp += sameTurn === (place.tip === 'up') ? 1 : -1;
  });
  if (forUp === 0) return at % 2 === 0 ? 'up' : 'down';
  return forUp > 0 ? 'up' : 'down';
}

/** The lie of the seams in each place; null for an empty one. */
export function seamLies(project: Project, block: Block): (SeamLie | null)[] {
  return block.places.map((place) => {
    const set = place && findSet(project, place.set);
    return set && place ? seamLie(set, place.tip) : null;
  });
}

/** Neighbouring places (from 0, the second clockwise of the first) whose seams lie the same way, so that they do not nest. */
export function seamsNotNesting(project: Project, block: Block): [place: number, next: number][] {
  const lies = seamLies(project, block);
  return lies.flatMap((lie, place) => {
    const next = (place + 1) % lies.length;
    return lie !== null && lie === lies[next] ? [[place, next] as [number, number]] : [];
  });
}
