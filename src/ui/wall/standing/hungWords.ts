// What a block on the wall is called: its number, where it hangs and how it is turned, and what of it clashes.
import type { Clash } from '../../../balance/clashes/clashes';
import type { HungBlock } from '../../../drawing/drawing';
import { counted, type Phrase, phrase } from '../../../model/phrase';
import type { Project } from '../../../model/project';
import { rowAndColumn } from '../../../model/wallCells';

/** `clashes`: those of this block; null while they are not known. */
export function hungWords(
  { cell, number, quarters, pinned }: Pick<HungBlock, 'cell' | 'number' | 'quarters' | 'pinned'>,
  hanging: Pick<Project, 'wall' | 'setting'>,
  clashes: readonly Clash[] | null,
): Phrase {
  const place = phrase(
    pinned
      ? 'Block {block}, row {row}, column {column}, pinned'
      : 'Block {block}, row {row}, column {column}',
    { ...rowAndColumn(cell, hanging), block: number },
  );
  const lies =
    quarters === 0 ? place : phrase('{place}, turned {degrees}°', { place, degrees: quarters * 90 });
  return clashes === null
    ? lies
    : phrase('{lies}; {clashes}', { lies, clashes: clashWords(number, clashes) });
}

/**
 * As hungWords, spoken; a name is made anew only where it changes, so that an edit of one of 400 blocks leaves the others. A hung block is
 * another where it hangs in another place (drawing/drawProject.ts).
 */
export function hungNames(say: (words: Phrase) => string): (...of: Parameters<typeof hungWords>) => string {
  const kept = new WeakMap<object, readonly [readonly Clash[] | null, string]>();
  return (hung, hanging, clashes) => {
    let known = kept.get(hung);
    if (known?.[0] !== clashes) {
      known = [clashes, say(hungWords(hung, hanging, clashes))];
      kept.set(hung, known);
    }
    return known![1];
  };
}

function clashWords(number: number, clashes: readonly Clash[]): Phrase {
  if (clashes.length === 0) return phrase('no clash');
  const others = new Set(clashes.flatMap(({ numbers }) => numbers.filter((one) => one !== number)));
  const count = counted(clashes.length, '1 clash', '{count} clashes');
  if (others.size === 0) return count;
  const list = { list: [...others].sort((one, other) => one - other) };
  return others.size === 1
    ? phrase('{count}, with block {others}', { count, others: list })
    : phrase('{count}, with blocks {others}', { count, others: list });
}
