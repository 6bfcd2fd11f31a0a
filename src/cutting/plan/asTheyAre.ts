// The largest top from the strips on hand as they are, none cut narrower: the sets that can be laid of them and what they make.
// The sets come from makeSets; what cutting would add is largestTop's.
import { counted, type Phrase, phrase } from '../../model/phrase';
import type { Project, StripOnHand, StripSet } from '../../model/project';
import type { SetMaking } from '../sets/randomSets';
import { stripsLeftBeside } from '../sets/stripsUnused';
import { wedgesAtMost } from '../sets/wedgesAtMost';
import { topSize } from '../top/topSize';
import { availableWedges, type WedgeCount } from '../wedges/yield';
import { clothBasket } from './clothBasket';
import { type ClothBasket, type LargestTop, largestTop } from './largestTop';
import { wholeBlocks } from './topGroups';

export interface AsTheyAre {
  readonly wedges: number;
  /** Whole blocks, with the wedges of the sets there are. */
  readonly blocks: number;
  /** True where no sets laid from the strips as they are, of any height, make more blocks. */
  readonly proved: boolean;
  readonly words: readonly Phrase[];
}

/** What the sets are made from. */
type Table = Pick<Project, 'fabrics' | 'stripsOnHand' | 'stripSets' | 'wedge'> & {
  readonly preferences: Pick<Project['preferences'], 'lookalikes' | 'seed' | 'unit'>;
};

/** Strips that may go into new sets beside those there are; background fabric is kept for corners and sashing. */
function freeStrips(project: Pick<Project, 'fabrics' | 'stripsOnHand'>): StripOnHand[] {
  const kept = new Set(project.fabrics.filter((fabric) => fabric.background).map((fabric) => fabric.id));
  return project.stripsOnHand.filter((row) => !kept.has(row.fabric));
}

/** How the sets are made: of all strips that are free, beside the sets there are; null where no strip is free. */
export function makingAsTheyAre(project: Table): SetMaking | null {
  const { fabrics, preferences, wedge, stripSets } = project;
  const stripsOnHand = freeStrips(project);
  if (stripsLeftBeside(stripsOnHand, stripSets).length === 0) return null;
  const { lookalikes, seed, unit } = preferences;
  return { fabrics, lookalikes, stripsOnHand, wedge, unit, keep: stripSets, want: 'most', seed };
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
  const said = [...words(project, sets.length, wedges, blocks, proved), ...backgroundWords(project)];
  return { wedges, blocks, proved, words: said };
}

/** Strips that are left because of their fabric. */
function backgroundWords(project: Project): Phrase[] {
  const free = new Set(freeStrips(project));
  const kept = project.stripsOnHand.filter((row) => !free.has(row) && row.count > 0);
  const count = kept.reduce((sum, row) => sum + row.count, 0);
  if (count === 0) return [];
  const one = 'Left: 1 strip of background fabric, which is for corners and sashing.';
  const many = 'Left: {count} strips of background fabric, which is for corners and sashing.';
  return [counted(count, one, many)];
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
        ? phrase('Your strips as they are make no more sets.')
        : phrase('Your strips as they are make no strip set.'),
    ];
  }
  const values = {
    sets: some ? counted(made, '1 more set', '{count} more sets') : counted(made, '1 set', '{count} sets'),
    wedges: counted(wedges, '1 wedge', '{count} wedges'),
    blocks: some
      ? counted(blocks, '1 block with the sets you have', '{count} blocks with the sets you have')
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
      ? phrase('No more blocks can be made from the strips as they are.')
      : phrase('Other sets of these strips might make more blocks; the best found are shown.'),
  ];
}

/** The larger of two tops: everything cut to the chosen widths, or only what the sets of the strips as they are leave. */
export interface CuttingPlan {
  readonly top: LargestTop;
  /** The sets to lay first; null where the strips are cut instead. */
  readonly lay: readonly StripSet[] | null;
  /** What more blocks are bought for: beside the sets of the strips as they are where those make no fewer blocks. */
  readonly buyFor: { readonly basket: ClothBasket; readonly blocks: number };
  readonly words: readonly Phrase[];
}

/** What cutting to the basket's widths makes, beside these sets of the strips as they are (null where there are none). */
export function cuttingPlan(
  project: Project,
  basket: ClothBasket,
  sets: readonly StripSet[] | null,
): CuttingPlan {
  const all = largestTop(basket);
  const cutAll = { basket, blocks: all.blocks };
  if (!sets) return { top: all, lay: null, buyFor: cutAll, words: all.words };
  const laid = clothBasket({ ...project, stripSets: [...project.stripSets, ...sets] }, basket.widths);
  const rest = largestTop(laid);
  const { blocks } = asTheyAre(project, sets);
  const adds = rest.blocks >= all.blocks && rest.blocks > blocks;
  const top = adds ? rest : all;
  const said = cuttingWords(blocks, all.blocks, rest.blocks, basket.clothOnHand.length > 0);
  const buyFor = rest.blocks >= all.blocks ? { basket: laid, blocks: rest.blocks } : cutAll;
  return { top, lay: adds ? sets : null, buyFor, words: [said, ...top.words] };
}

/** What cutting adds to the strips as they are: `all` cut to the chosen widths, or only what the sets leave (`rest`). */
function cuttingWords(asIs: number, all: number, rest: number, cloth: boolean): Phrase {
  const what = cloth
    ? phrase('Cutting fabric, and cutting strips narrower, to the widths chosen here')
    : phrase('Cutting some of them narrower, to the widths chosen here');
  const best = Math.max(all, rest);
  if (best <= asIs) {
    const instead = counted(
      all,
      'cutting all of them makes 1 block',
      'cutting all of them makes {count} blocks',
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
