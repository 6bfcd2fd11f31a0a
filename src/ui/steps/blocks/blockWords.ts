// Sentences on places and what meets in them, for the workshop and the list.
import type { Clash } from '../../../balance/clashes';
import { findFabric, findSet } from '../../../model/find';
import { counted, type Phrase, phrase } from '../../../model/phrase';
import type { Block, BlockId, Place, Project } from '../../../model/project';
import type { Meeting } from '../../../store/wedgeOffers';

export const PROGRESS_NAMES: Readonly<Record<Block['progress'], string>> = {
  planned: 'Planned',
  octagon: 'Wedges joined',
  squared: 'Corners on',
  joined: 'In its row',
};

/** "Set C, tip up", to begin a line with. */
export function wedgeTitle(project: Project, wedge: Place): Phrase {
  const set = findSet(project, wedge.set)?.label ?? '';
  return phrase(wedge.tip === 'up' ? 'Set {set}, tip up' : 'Set {set}, tip down', { set });
}

/** "set C, tip up" within a sentence, or that the place is empty. */
export function wedgeWords(project: Project, wedge: Place | null): Phrase {
  if (wedge === null) return phrase('no wedge yet');
  const set = findSet(project, wedge.set)?.label ?? '';
  return phrase(wedge.tip === 'up' ? 'set {set}, tip up' : 'set {set}, tip down', { set });
}

/** What a wedge meets on the rim, else inside the block, else that it meets nothing. */
export function meetingWords(project: Project, meetings: readonly Meeting[]): Phrase[] {
  const rims = meetings.filter((one) => one.onRim);
  const inside = meetings.filter((one) => !one.onRim).reduce((sum, one) => sum + one.inches, 0);
  const said = rims.map((one) => {
    const values = {
      fabric: findFabric(project, one.fabric)?.name ?? '',
      other: findFabric(project, one.other)?.name ?? '',
      place: one.place,
    };
    return one.likeness === 1
      ? phrase('Meets the same {fabric} on the rim at place {place}.', values)
      : phrase('{fabric} reads as one with {other} on the rim at place {place}.', values);
  });
  if (inside > 0.05)
    said.push(phrase('Further in, cloth meets itself along {length}.', { length: { inches: inside } }));
  return said;
}

/** Clashes that lie inside each block, rims first. */
export function clashesByBlock(clashes: readonly Clash[]): ReadonlyMap<BlockId, readonly Clash[]> {
  const found = new Map<BlockId, Clash[]>();
  for (const clash of clashes) {
    if (clash.kind !== 'rim' && clash.kind !== 'radial') continue;
    const id = clash.blocks[0]!;
    found.set(id, [...(found.get(id) ?? []), clash]);
  }
  for (const list of found.values()) {
    list.sort((one, other) => rank(one) - rank(other) || other.weight - one.weight);
  }
  return found;
}

function rank(clash: Clash): number {
  return clash.kind === 'rim' ? 0 : 1;
}

/** One line for a block in the list: what is missing, else what meets on its rim. */
export function stateWords(block: Block, clashes: readonly Clash[]): Phrase {
  const empty = block.places.filter((place) => place === null).length;
  if (empty === block.places.length) return phrase('no wedges yet');
  if (empty > 0) return phrase(empty === 1 ? '1 place empty' : '{count} places empty', { count: empty });
  const rims = clashes.filter((clash) => clash.kind === 'rim');
  const same = rims.filter((clash) => clash.likeness === 1).length;
  if (same > 0) return counted(same, 'a fabric meets itself', 'fabrics meet {count} times');
  if (rims.length > 0) return counted(rims.length, 'look-alikes meet', 'look-alikes meet {count} times');
  return phrase('complete');
}
