// What the trade's words mean, one plain sentence each. The screen lists them and says the same where it explains a word; the pattern
// explains the ones it says; the table of words in DEVELOPERS.md gives them beside the names in the code.

import { SCORE_MEANS } from './score';

export interface Term {
  readonly term: TermName;
  readonly means: string;
}

export type TermName = (typeof WORDS)[number][0];

const WORDS = [
  ['strip set', 'Strips sewn side by side; wedges are cut from it.'],
  ['height of a set', 'How high its strips are once they are sewn together.'],
  ['wedge', 'One of the pieces that are sewn into a block, wide at one end and narrow at the other.'],
  ['rim', 'The wide end of a wedge: the outer edge of the block.'],
  ['tip up', 'Cut so that the first strip of the set lies on the rim.'],
  ['tip down', 'Cut so that the last strip of the set lies on the rim.'],
  ['nest', 'Seams nest when their allowances are pressed opposite ways and lock together.'],
  ['block', 'Wedges sewn round a middle, with corners that make it square.'],
  ['octagon', 'Eight wedges sewn together, before the corners are on.'],
  ['corner triangle', 'One of the four triangles that make a block square.'],
  ['place', 'Where a wedge goes in a block, counted clockwise from 1.'],
  ['finished', 'Without seam allowances, as it looks in the quilt.'],
  ['unfinished', 'With the seam allowances that are still to be sewn.'],
  ['design wall', 'Where blocks hang while you arrange them.'],
  ['side table', 'Where blocks wait that are not on the wall.'],
  ['setting', 'How blocks come together in the top: straight or on point, with or without sashing and borders.'],
  ['on point', 'Blocks stand on a corner, in diagonal rows.'],
  ['setting triangle', 'A side triangle or setting corner: it fills the edge of a top set on point.'],
  ['plain square', 'A square of one fabric in place of a block.'],
  ['sashing', 'Strips sewn between the blocks.'],
  ['cornerstone', 'A square where two strips of sashing cross.'],
  ['border', 'Strips sewn round the outside of the top.'],
  ['pieced border', 'A border sewn from many pieces.'],
  ['batting', 'The layer between the top and the backing.'],
  ['backing', 'The fabric on the back of the quilt.'],
  ['binding', 'The strip folded over the edge of the finished quilt.'],
  ['usable width', 'The width of a fabric without its selvages.'],
  ['fat quarter', 'A quarter cut twice as long and half as wide as one cut straight across the fabric.'],
  ['value', 'How light or dark a fabric is.'],
  ['look-alike', 'A fabric so close to another that the two read as one.'],
  ['background', 'A fabric that may touch itself without a clash.'],
  ['clash', 'A seam where a fabric meets itself or a look-alike.'],
  ['pool', 'Light, dark or one colour clustered in one part of the top.'],
  ['finding', 'One thing about the top that is worth a look.'],
  ['mend', 'A small change that removes a clash or spreads out a pool.'],
  ['score', SCORE_MEANS],
  ['shuffle', 'The search for a layout with a better score.'],
  ['shuffle number', 'The same number gives the same layout again from the same start.'],
  ['mix number', 'The same number makes the same strip sets again.'],
  ['colourway', 'The same quilt in other fabrics.'],
  ['kit', 'What one maker needs for the quilt.'],
  ['stand-in', 'A made-up fabric until you enter your own.'],
] as const; // biome-ignore format: a table

export const GLOSSARY: readonly Term[] = WORDS.map(([term, means]) => ({ term, means }));

/** The terms that stand in a text as whole words, also as plurals and the like (nested, batting’s), in the order of the glossary. */
export function termsIn(text: string): Term[] {
  return GLOSSARY.filter(({ term }) =>
    new RegExp(`(?<![\\p{L}-])${term}(s|es|ed|ing)?(?![\\p{L}])`, 'iu').test(text),
  );
}

/** What a word means, in a sentence. */
export function meaningOf(term: TermName): string {
  return GLOSSARY.find((one) => one.term === term)!.means;
}

/**
 * The terms that hold what is sought in their name or meaning, as `say` tells them; those that begin with it first, then those with it
 * in their name. All of them for nothing sought.
 */
export function termsLike(sought: string, say: (words: string) => string = (words) => words): Term[] {
  const part = sought.trim().toLowerCase();
  const rank = ({ term, means }: Term) => {
    const at = say(term).toLowerCase().indexOf(part);
    return at >= 0 ? Math.min(at, 1) : say(means).toLowerCase().includes(part) ? 2 : 3;
  };
  return GLOSSARY.filter((one) => rank(one) < 3).toSorted((one, other) => rank(one) - rank(other));
}
