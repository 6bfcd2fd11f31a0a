// Which fabric runs out first, read off the plan: of the fabrics that nothing more can be cut from, those that give fewest
// strips are gone first when every set takes from all of them alike, unless one that has cloth left would be gone before.
import { piecesIn } from '../../model/lengths';
import { counted, type Phrase, phrase } from '../../model/phrase';
import type { Fabric, FabricId } from '../../model/project';
import type { Inches } from '../../model/units';
import type { Piece } from './clothPieces';

export interface RunsOut {
  readonly fabrics: readonly FabricId[];
  /** Whole sets they last for, of all the sets of the plan. */
  readonly after: number;
  readonly words: Phrase;
}

/** More names than this are counted. */
const MOST_NAMED = 3;

/** Strips of a fabric: those the plan cuts, and those that could still be cut of the narrowest width. */
interface Strips {
  readonly given: number;
  readonly more: number;
}

/** Null where there is one fabric, nothing to cut, or what runs out first has cloth left in this plan. */
export function runsOut(
  fabrics: readonly Fabric[],
  pieces: readonly Piece[],
  cuts: readonly Cuts[],
  widths: readonly Inches[],
  sets: readonly { readonly count: number }[],
): RunsOut | null {
  const strips = stripsOf(pieces, cuts, Math.min(...widths));
  const total = [...strips.values()].reduce((sum, one) => sum + one.given, 0);
  const all = sets.reduce((sum, set) => sum + set.count, 0);
  if (strips.size < 2 || all === 0 || total === 0) return null;
  const fewest = Math.min(...[...strips.values()].map(({ given, more }) => given + more));
  const first = fabrics.filter(({ id }) => {
    const own = strips.get(id);
    return own?.more === 0 && own.given === fewest;
  });
  if (first.length === 0) return null;
  // Dealt one strip from each in turn, so many are gone when the fabrics with fewest have given their last.
  const after = Math.min(all, Math.floor((fewest * strips.size * all) / total + 1e-9));
  return { fabrics: first.map((one) => one.id), after, words: wordsOf(first, after, all) };
}

/** Strips cut side by side from one piece, each then cut across. */
type Cuts = readonly { readonly width: Inches; readonly count: number; readonly parts: number }[];

/** By fabric; one that gives none and never could is left out. */
function stripsOf(
  pieces: readonly Piece[],
  cuts: readonly Cuts[],
  narrowest: Inches,
): ReadonlyMap<FabricId, Strips> {
  const strips = new Map<FabricId, Strips>();
  pieces.forEach(({ fabric, depth }, at) => {
    const own = cuts[at]!;
    const given = own.reduce((sum, one) => sum + one.count * one.parts, 0);
    const used = own.reduce((sum, one) => sum + one.count * one.width, 0);
    const more = piecesIn(depth - used, narrowest) * (own[0]?.parts ?? 1);
    if (given + more === 0) return;
    const before = strips.get(fabric) ?? { given: 0, more: 0 };
    strips.set(fabric, { given: before.given + given, more: before.more + more });
  });
  return strips;
}

/** Of one fabric, of several by their names, of more than are named. */
type Says = readonly [one: string, many: string, number: string];

const SAYS = {
  withTheLast: [
    '{fabrics} runs out, with the last set.',
    '{fabrics} run out together, with the last set.',
    '{fabrics} fabrics run out together, with the last set.',
  ],
  withinTheFirst: [
    'Used evenly, {fabrics} runs out first, within the first of {all} sets.',
    'Used evenly, {fabrics} run out first, within the first of {all} sets.',
    '{fabrics} fabrics run out first, within the first of {all} sets.',
  ],
  between: [
    'Used evenly, {fabrics} runs out first, after {after} of {all} sets.',
    'Used evenly, {fabrics} run out first, after {after} of {all} sets.',
    '{fabrics} fabrics run out first, after {after} of {all} sets.',
  ],
} as const satisfies Readonly<Record<string, Says>>;

function wordsOf(first: readonly Fabric[], after: number, all: number): Phrase {
  const [one, many, number] = SAYS[after >= all ? 'withTheLast' : after === 0 ? 'withinTheFirst' : 'between'];
  const values = { after, all };
  return first.length > MOST_NAMED
    ? phrase(number, { ...values, fabrics: first.length })
    : counted(first.length, one, many, { ...values, fabrics: { list: first.map(({ name }) => name) } });
}
