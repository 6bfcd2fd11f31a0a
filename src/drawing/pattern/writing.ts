// The input of every part of the written pattern: the project, its drawing and yardage, the translation of phrases, type, and the words to explain.
import type { Yardage } from '../../cutting/yardage/yardage';
import type { Phrase, PhraseValue } from '../../model/phrase';
import type { Fabric, FabricId, Project } from '../../model/project';
import type { Inches } from '../../model/units';
import type { Term } from '../../model/words/glossary';
import type { Drawing } from '../drawing';
import type { Type } from './lettering';
import { BARE, ink } from './look';
import type { Fill } from './page';

/** Turns a sentence into text in the project's unit and the person's language. */
export type Say = (sentence: string | Phrase, values?: Record<string, PhraseValue>) => string;

export interface Writing {
  readonly project: Project;
  readonly drawing: Drawing;
  readonly yardage: Yardage;
  readonly fabrics: ReadonlyMap<FabricId, Fabric>;
  readonly say: Say;
  readonly type: Type;
  /** The words of the trade that the pattern explains. */
  readonly terms: readonly Term[];
}

/** The fill of a piece of cloth; grey without a fabric. */
export function clothOf(
  { fabrics }: Pick<Writing, 'fabrics'>,
  fabric: FabricId | null,
  scale: number,
  turn: number,
): Fill {
  const known = fabric === null ? undefined : fabrics.get(fabric);
  return known ? { kind: 'cloth', fabric: known, scale, turn } : ink(BARE);
}

/** The name of a fabric; empty without one. */
export function nameOf({ fabrics }: Pick<Writing, 'fabrics'>, fabric: FabricId | null): string {
  return (fabric === null ? undefined : fabrics.get(fabric)?.name) ?? '';
}

/** How many pieces to cut of each fabric: “Cut 4 of Night sky and 2 of Snow.” `fabrics` has one entry for each piece. */
export function cutCounts(fabrics: readonly FabricId[], writing: Pick<Writing, 'fabrics' | 'say'>): string {
  const counts = new Map<FabricId, number>();
  for (const fabric of fabrics) counts.set(fabric, (counts.get(fabric) ?? 0) + 1);
  const list = Array.from(counts, ([fabric, count]) =>
    writing.say('{count} of {fabric}', { count, fabric: nameOf(writing, fabric) }),
  );
  return list.length === 0 ? '' : writing.say('Cut {pieces}.', { pieces: { list } });
}

/** The values of a phrase with {width} and {height}. */
export function size(width: Inches, height: Inches): Record<string, PhraseValue> {
  return { width: { inches: width }, height: { inches: height } };
}
