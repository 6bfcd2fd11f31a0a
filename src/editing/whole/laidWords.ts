// What laying out the whole quilt did, in words: sets, wedges, blocks and score in one sentence; then what is left, and why.
import type { ArrangeResult } from '../../arrange/verdict';
import { inPoints, type Terms, weighted } from '../../balance/score/weights';
import { weightsOf } from '../../balance/score/wishes';
import type { StripsLeft } from '../../cutting/sets/whyLeft';
import { availableWedges } from '../../cutting/wedges/yield';
import { counted, type Phrase, phrase } from '../../model/phrase';
import type { Project } from '../../model/project';
import { rowWords } from '../../model/words/rowWords';
import { blocksAllowed } from '../commands/chooseWedges';

interface Doings {
  /** Strips cut from fabric on hand. */
  readonly cut: number;
  /** Why there are not more sets. */
  readonly notes: readonly Phrase[];
  /** Strips that no set took, by the rule that leaves them. */
  readonly left: readonly StripsLeft[];
  readonly shuffled: ArrangeResult | null;
}

/** The sentences, the main one first. */
export function laidWords(before: Project, after: Project, { cut, notes, left, shuffled }: Doings): Phrase[] {
  const parts = [
    ...setWords(before, after),
    ...wedgeWords(after),
    ...blockWords(after),
    ...scoreWords(after, shuffled),
  ];
  const [first, ...rest] = parts;
  const all = rest.reduce((said, part) => phrase('{said}, {part}', { said, part }), first ?? NOTHING);
  const cutWords = counted(
    cut,
    'Cut 1 strip from the fabric on hand.',
    'Cut {count} strips from the fabric on hand.',
  );
  return [
    phrase(first ? '{all}.' : '{all}', { all }),
    ...(cut > 0 ? [cutWords] : []),
    ...leftWords(after, left),
    ...notes,
  ];
}

const NOTHING = phrase('There is nothing to lay out yet: add strips or fabric first.');

function setWords(before: Project, after: Project): Phrase[] {
  const there = before.stripSets.length;
  const made = after.stripSets.slice(there);
  if (made.length === 0) return there === 0 ? [] : [counted(there, '1 set', '{count} sets')];
  const sewn = made.reduce((sum, set) => sum + set.strips.length, 0);
  const strips = counted(sewn, '1 strip', '{count} strips');
  return [
    there === 0
      ? counted(made.length, '1 set from {strips}', '{count} sets from {strips}', { strips })
      : counted(made.length, '1 more set from {strips}', '{count} more sets from {strips}', { strips }),
  ];
}

function wedgeWords({ stripSets, wedge }: Project): Phrase[] {
  const wedges = stripSets.map((set) => availableWedges(set, wedge));
  const count = wedges.reduce((sum, { up, down }) => sum + up + down, 0);
  return stripSets.length === 0 ? [] : [counted(count, '1 wedge', '{count} wedges')];
}

function blockWords({ blocks, stripSets, wall }: Project): Phrase[] {
  const hung = wall.cells.filter((cell) => cell !== null).length;
  if (hung === 0) return blocks.length > 0 || stripSets.length > 0 ? [phrase('no whole block')] : [];
  return [counted(hung, '1 block hung', '{count} blocks hung in {rows}', { rows: rowWords(wall) })];
}

function scoreWords({ preferences }: Project, shuffled: ArrangeResult | null): Phrase[] {
  if (!shuffled) return [];
  const weights = weightsOf(preferences);
  const points = (terms: Terms) => Math.round(inPoints(weighted(terms, weights), weights));
  const [start, end] = [points(shuffled.before.terms), points(shuffled.told)];
  return start === end
    ? [phrase('score {end}', { end })]
    : [phrase('shuffled: score {start} → {end}', { start, end })];
}

function leftWords(project: Project, left: readonly StripsLeft[]): Phrase[] {
  const { blocks } = project;
  const empty = blocks.filter((block) => block.places.includes(null)).length;
  const more = blocksAllowed(project) - blocks.length;
  return [
    ...(empty > 0
      ? [counted(empty, '1 block has empty places.', '{count} blocks have empty places.')]
      : more > 0
        ? [
            counted(
              more,
              'The wedges for 1 more block are left.',
              'The wedges for {count} more blocks are left.',
            ),
          ]
        : []),
    ...left.map(({ rows, why }) => {
      const count = rows.reduce((sum, row) => sum + row.count, 0);
      return counted(count, '1 strip is left: {why}.', '{count} strips are left: {why}.', { why });
    }),
  ];
}
