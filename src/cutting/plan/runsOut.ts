// Which fabric runs out first, read off the plan: of the fabrics that nothing more can be cut from, those that give fewest
// strips are gone first when every set takes from all of them alike.
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

/** Null where there is one fabric, nothing to cut, or of every fabric another strip could be cut. */
export function runsOut(
  fabrics: readonly Fabric[],
  pieces: readonly Piece[],
  cuts: readonly (readonly { readonly width: Inches; readonly count: number; readonly parts: number }[])[],
  widths: readonly Inches[],
  sets: readonly { readonly count: number }[],
): RunsOut | null {
  const strips = new Map<FabricId, number>();
  const more = new Set<FabricId>();
  const narrowest = Math.min(...widths);
  pieces.forEach(({ fabric, depth }, at) => {
    const given = cuts[at]!.reduce((sum, one) => sum + one.count * one.parts, 0);
    strips.set(fabric, (strips.get(fabric) ?? 0) + given);
    const used = cuts[at]!.reduce((sum, one) => sum + one.count * one.width, 0);
    if (depth - used >= narrowest - 1e-9) more.add(fabric);
  });
  const all = sets.reduce((sum, set) => sum + set.count, 0);
  const gone = fabrics.filter(({ id }) => (strips.get(id) ?? 0) > 0 && !more.has(id));
  if (strips.size < 2 || all === 0 || gone.length === 0) return null;
  const fewest = Math.min(...gone.map(({ id }) => strips.get(id)!));
  const first = gone.filter(({ id }) => strips.get(id) === fewest);
  const total = [...strips.values()].reduce((sum, count) => sum + count, 0);
  // Dealt one strip in turn, so many strips are gone when the fabrics with fewest have given their last.
  const dealt = [...strips.values()].reduce((sum, count) => sum + Math.min(count, fewest), 0);
  const after = Math.floor((dealt * all) / total + 1e-9);
  return { fabrics: first.map((one) => one.id), after, words: wordsOf(first, after, all) };
}

function wordsOf(first: readonly Fabric[], after: number, all: number): Phrase {
  const values = { after, all };
  if (first.length > MOST_NAMED) {
    const say =
      after >= all
        ? '{fabrics} fabrics run out together, with the last set.'
        : '{fabrics} fabrics run out first, after {after} of {all} sets.';
    return phrase(say, { ...values, fabrics: first.length });
  }
  const fabrics = { list: first.map((one) => one.name) };
  return after >= all
    ? counted(first.length, '{fabrics} runs out, with the last set.', '{fabrics} run out together, with the last set.', { fabrics }) // biome-ignore format: short
    : counted(
        first.length,
        'Used alike, {fabrics} runs out first, after {after} of {all} sets.',
        'Used alike, {fabrics} run out first, after {after} of {all} sets.',
        { ...values, fabrics },
      );
}
