// The largest top from the strips on hand as they are, none cut narrower: the sets that can be laid of them and what they make.
// The sets come from makeSets; what cutting would add is largestTop's.
import { counted, type Phrase, phrase } from '../../model/phrase';
import type { Project, StripOnHand, StripSet } from '../../model/project';
import type { SetMaking } from '../sets/randomSets';
import { stripsLeftBeside } from '../sets/stripsUnused';
import { wedgesAtMost } from '../sets/wedgesAtMost';
import { topSize } from '../top/topSize';
import { availableWedges, type WedgeCount } from '../wedges/yield';
import { wholeBlocks } from './topGroups';

export interface AsTheyAre {
  readonly wedges: number;
  /** Whole blocks, with the wedges of the sets there are. */
  readonly blocks: number;
  /** True where no sets laid from the strips as they are, of any height, make more blocks. */
  readonly proved: boolean;
  readonly words: readonly Phrase[];
}

/** Strips that may go into new sets beside those there are; background fabric is kept for corners and sashing. */
function freeStrips(project: Project): StripOnHand[] {
  const kept = new Set(project.fabrics.filter((fabric) => fabric.background).map((fabric) => fabric.id));
  return project.stripsOnHand.filter((row) => !kept.has(row.fabric));
}

/** How the sets are made: of all strips that are free, beside the sets there are; null where no strip is free. */
export function makingAsTheyAre(project: Project): SetMaking | null {
  const { fabrics, preferences, wedge, stripSets } = project;
  const stripsOnHand = freeStrips(project);
  if (stripsLeftBeside(stripsOnHand, stripSets).length === 0) return null;
  const { lookalikes, seed } = preferences;
  return { fabrics, lookalikes, stripsOnHand, wedge, keep: stripSets, want: 'most', seed };
}

/** What these sets make beside the sets there are. */
export function asTheyAre(project: Project, sets: readonly StripSet[]): AsTheyAre {
  const { wedge, stripSets } = project;
  const there = wedgesOf(stripSets, project);
  const made = wedgesOf(sets, project);
  const wedges = made.up + made.down;
  const blocks = wholeBlocks({ up: there.up + made.up, down: there.down + made.down }, wedge);
  const bound = wedgesAtMost(stripsLeftBeside(freeStrips(project), stripSets), wedge);
  const proved = blocks >= Math.floor((there.up + there.down + bound) / wedge.perBlock);
  return { wedges, blocks, proved, words: words(project, sets.length, wedges, blocks, proved) };
}

function wedgesOf(sets: readonly StripSet[], { wedge }: Project): WedgeCount {
  return sets.reduce(
    (sum, set) => {
      const { up, down } = availableWedges(set, wedge);
      return { up: sum.up + up, down: sum.down + down };
    },
    { up: 0, down: 0 },
  );
}

function words(project: Project, made: number, wedges: number, blocks: number, proved: boolean): Phrase[] {
  const some = project.stripSets.length > 0;
  if (made === 0) {
    return [
      some
        ? phrase('Your strips as they are make no set more.')
        : phrase('Your strips as they are make no strip set.'),
    ];
  }
  const values = {
    sets: some ? counted(made, '1 more set', '{count} more sets') : counted(made, '1 set', '{count} sets'),
    wedges: counted(wedges, '1 wedge', '{count} wedges'),
    blocks: some
      ? counted(blocks, 'with the sets there are 1 block', 'with the sets there are {count} blocks')
      : counted(blocks, '1 block', '{count} blocks'),
  };
  const size = topSize(project, blocks);
  const top = phrase('{width} × {height}', {
    width: { inches: size?.width ?? 0 },
    height: { inches: size?.height ?? 0 },
  });
  const over = size ? blocks - size.blocks : 0;
  const says = !size
    ? phrase('With your strips as they are: {sets}, {wedges}, {blocks}.', values)
    : over === 0
      ? phrase('With your strips as they are: {sets}, {wedges}, {blocks}, {top}.', { ...values, top })
      : counted(
          over,
          'With your strips as they are: {sets}, {wedges}, {blocks}, {top} with 1 block over.',
          'With your strips as they are: {sets}, {wedges}, {blocks}, {top} with {count} blocks over.',
          { ...values, top },
        );
  return [
    says,
    proved
      ? phrase('More blocks cannot be made of the strips as they are.')
      : phrase('Other sets of these strips might make more blocks; the best found are shown.'),
  ];
}

/** What cutting adds to the strips as they are: `all` cut to the chosen widths, or only what the sets leave (`rest`). */
export function cuttingWords(asIs: number, all: number, rest: number, cloth: boolean): Phrase {
  const what = cloth
    ? phrase('Cutting cloth, and strips narrower, to the widths chosen here')
    : phrase('Cutting some of them narrower, to the widths chosen here');
  const best = Math.max(all, rest);
  if (best <= asIs) {
    const instead = counted(
      all,
      'to cut all of them makes 1 block',
      'to cut all of them makes {count} blocks',
    );
    return all < asIs
      ? phrase('{what}, adds no block; {instead}.', { what, instead })
      : phrase('{what}, adds no block.', { what });
  }
  const blocks = counted(best, '1 block', '{count} blocks');
  const more = best - asIs;
  return rest >= all
    ? phrase('{what}, once those sets are laid: {blocks}, {more} more.', { what, blocks, more })
    : phrase('{what}, instead of laying them as they are: {blocks}, {more} more.', { what, blocks, more });
}
