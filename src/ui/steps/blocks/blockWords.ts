// Words on blocks, their places and clashes, for the workshop and the list.

import type { TopScores } from '../../../arrange/mend/wedgeOffers';
import type { Clash } from '../../../balance/clashes/clashes';
import type { OutsideClash, WedgeClash } from '../../../balance/clashes/wedgeClashes';
import { findFabric, findSet, rimsKnown } from '../../../model/find';
import { counted, type Phrase, phrase } from '../../../model/phrase';
import type { Block, BlockId, PicturedWedge, Place, Project } from '../../../model/project';
import { figureOf, placesApart } from '../../../model/words/figure';

export const PROGRESS_NAMES: Readonly<Record<Block['progress'], string>> = {
  planned: 'Planned',
  octagon: 'Wedges joined',
  squared: 'Corners on',
  joined: 'In its row',
};

/** A wedge in words at the start of a line: "Set C, tip up". */
export function wedgeTitle(project: Project, wedge: Place): Phrase {
  const set = findSet(project, wedge.set)?.label ?? '';
  return phrase(wedge.tip === 'up' ? 'Set {set}, tip up' : 'Set {set}, tip down', { set });
}

/** A wedge in words within a sentence, "set C, tip up"; or words for an empty place. */
export function wedgeWords(project: Project, wedge: Place | null): Phrase {
  if (wedge === null) return phrase('no wedge yet');
  const set = findSet(project, wedge.set)?.label ?? '';
  return phrase(wedge.tip === 'up' ? 'set {set}, tip up' : 'set {set}, tip down', { set });
}

/** What a wedge meets on the rim, else inside the block, else that it meets nothing. */
export function wedgeClashWords(project: Project, clashes: readonly WedgeClash[]): Phrase[] {
  const rims = clashes.filter((one) => one.onRim);
  const inside = clashes.filter((one) => !one.onRim).reduce((sum, one) => sum + one.inches, 0);
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
    said.push(phrase('Inside, the same fabric touches along {length}.', { length: { inches: inside } }));
  return said;
}

const SAME_OUTSIDE: Readonly<Record<OutsideClash['beyond']['kind'], string>> = {
  block: 'Meets the same {fabric} on the rim of block {block}.',
  corner: 'Meets its corner triangle of the same {fabric}.',
  sashing: 'Runs into the sashing of the same {fabric}.',
  border: 'Runs into the border of the same {fabric}.',
  plain: 'Runs into the plain square of the same {fabric}.',
  triangle: 'Runs into the setting triangle of the same {fabric}.',
};

const ALIKE_OUTSIDE: Readonly<Record<OutsideClash['beyond']['kind'], string>> = {
  block: '{fabric} reads as one with {other} on the rim of block {block}.',
  corner: '{fabric} reads as one with its corner triangle of {other}.',
  sashing: '{fabric} reads as one with the sashing of {other}.',
  border: '{fabric} reads as one with the border of {other}.',
  plain: '{fabric} reads as one with the plain square of {other}.',
  triangle: '{fabric} reads as one with the setting triangle of {other}.',
};

/** What the rim of a wedge would lie against beyond its block. */
export function outsideWords(project: Project, { beyond, ...clash }: OutsideClash): Phrase {
  const values = {
    fabric: findFabric(project, clash.fabric)?.name ?? '',
    other: findFabric(project, clash.other)?.name ?? '',
    block: beyond.kind === 'block' ? beyond.block : 0,
  };
  const same = clash.likeness === 1;
  if (beyond.kind === 'block' && beyond.sashing) {
    return same
      ? phrase('Faces the same {fabric} of block {block} across the sashing.', values)
      : phrase('{fabric} reads as one with {other} of block {block} across the sashing.', values);
  }
  return phrase((same ? SAME_OUTSIDE : ALIKE_OUTSIDE)[beyond.kind], values);
}

/** A smaller change of the score, in points, counts as none. */
const LEAST_CHANGE = 5e-3;

/**
 * The effect of a wedge on the score of the whole top, with enough decimals to see it. In an empty place every wedge adds cloth
 * that the top needs, so that only the offers can be compared with each other.
 */
export function topWords({ now, after }: TopScores, empty: boolean): Phrase {
  const decimals = placesApart(now, after);
  const values = { now: figureOf(now, decimals), after: figureOf(after, empty ? 1 : decimals) };
  if (empty) return phrase('With it the whole top scores {after} points.', values);
  if (Math.abs(after - now) < LEAST_CHANGE) return phrase('Makes no difference to the whole top.');
  return after < now
    ? phrase('Better for the whole top: {now} → {after}.', values)
    : phrase('Worse for the whole top: {now} → {after}.', values);
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

/** One line for a block in the list: its empty places, else its clashes on the rim. */
export function stateWords(block: Block, clashes: readonly Clash[]): Phrase {
  const empty = block.kind === 'pieced' ? block.places.length - rimsKnown(block) : 0;
  if (block.kind === 'pieced' && empty === block.places.length) return phrase('no wedges yet');
  if (empty > 0) return phrase(empty === 1 ? '1 place empty' : '{count} places empty', { count: empty });
  const rims = clashes.filter((clash) => clash.kind === 'rim');
  const same = rims.filter((clash) => clash.likeness === 1).length;
  if (same > 0) return counted(same, 'a fabric meets itself', 'fabrics meet {count} times');
  if (rims.length > 0) return counted(rims.length, 'look-alikes meet', 'look-alikes meet {count} times');
  if (block.kind === 'pieced') return phrase('all wedges chosen');
  const unknown = block.wedges.length - rimsKnown(block);
  return unknown === 0
    ? phrase('a picture, all rims known')
    : counted(unknown, 'a picture, 1 rim not known', 'a picture, {count} rims not known');
}

/** What a picture shows of a wedge, from the rim in: the names of its fabrics; ? where one is not known. */
export function shownWords(project: Project, { bands }: PicturedWedge): Phrase {
  if (bands.every(({ fabric }) => fabric === null)) return phrase('nothing known');
  return phrase('{fabrics}', {
    fabrics: {
      list: bands.map(({ fabric }) => (fabric === null ? '?' : (findFabric(project, fabric)?.name ?? ''))),
    },
  });
}
