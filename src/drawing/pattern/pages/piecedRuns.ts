// Pieced borders in words: the pieces of each side in the order they are sewn, groups that come again counted.

import { SIDES, type Side } from '../../../geometry/contact';
import { layOut } from '../../../geometry/setting';
import type { SettingPiece } from '../../../geometry/settingPiece';
import { cutWidth } from '../../../geometry/stripSet';
import { phrase } from '../../../model/phrase';
import type { Inches } from '../../../model/units';
import { nameOf, type Writing } from '../writing';

/** The longest group of pieces looked for. */
const LONGEST_GROUP = 16;

const SIDE_WORDS: Readonly<Record<Side, string>> = {
  top: 'Top, from left to right: {pieces}.',
  right: 'Right side, from the top down: {pieces}.',
  bottom: 'Bottom, from right to left: {pieces}.',
  left: 'Left side, from the bottom up: {pieces}.',
};

export interface PiecedRuns {
  readonly heading: string;
  readonly lines: readonly string[];
}

/** For every pieced border: a heading, and a line for each side. */
export function piecedRuns(writing: Writing): PiecedRuns[] {
  const { project, say } = writing;
  const pieces = layOut(project).pieces;
  return project.setting.borders.flatMap((border, index) => {
    if (border.keys === undefined) return [];
    const own = pieces.filter((piece) => piece.border === index && piece.side !== undefined);
    const usual = usualWidth(own);
    const width = (piece: SettingPiece) => ({ inches: cutWidth(piece.width, project.wedge.outerSeam) });
    const words = (piece: SettingPiece) => {
      const fabric = nameOf(writing, piece.fabric);
      const alike = usual !== null && Math.abs(piece.width - usual) < 1e-6;
      return alike ? fabric : say('{fabric} {width}', { fabric, width: width(piece) });
    };
    const across = (finished: Inches) => ({ inches: cutWidth(finished, project.wedge.outerSeam) });
    const deep =
      border.ends === undefined
        ? across(border.width)
        : phrase('{side} (at top and bottom {end})', {
            side: across(border.width),
            end: across(border.ends),
          });
    const about =
      usual === null
        ? say(
            'Clockwise; every piece is cut {deep} long across the border, and as wide along it as is written.',
            { deep },
          )
        : say(
            'Clockwise; every piece is cut {deep} long across the border, and {width} wide along it unless another width is given.',
            {
              deep,
              width: width({ ...own[0]!, width: usual }),
            },
          );
    const lines = SIDES.map((side) => {
      const run = own.filter((piece) => piece.side === side).map(words);
      return say(SIDE_WORDS[side], { pieces: inGroups(run) });
    });
    return [
      { heading: say('Border {border}, piece by piece', { border: index + 1 }), lines: [about, ...lines] },
    ];
  });
}

/** The finished width most pieces have, where that is half of them or more; null where it is not. */
function usualWidth(pieces: readonly SettingPiece[]): Inches | null {
  const counts = new Map<number, number>();
  for (const { width } of pieces) {
    const key = Math.round(width * 1e4);
    counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  const [most] = [...counts].toSorted((one, other) => other[1] - one[1]);
  return most && most[1] >= pieces.length * 0.5 ? most[0] / 1e4 : null;
}

/** Words in their order, with groups that follow on themselves counted: 3 × (a · b) · c. */
export function inGroups(words: readonly string[]): string {
  const parts: string[] = [];
  for (let at = 0; at < words.length; ) {
    const { length, times } = groupAt(words, at);
    const group = words.slice(at, at + length).join(' · ');
    parts.push(times === 1 ? group : length === 1 ? `${times} × ${group}` : `${times} × (${group})`);
    at += length * times;
  }
  return parts.join(' · ');
}

/** The group from here that spares most words by being counted; a single word where none comes again. */
function groupAt(words: readonly string[], from: number): { length: number; times: number } {
  let best = { length: 1, times: 1 };
  for (let length = 1; length <= LONGEST_GROUP; length += 1) {
    let end = from + length;
    while (end < words.length && words[end] === words[end - length]) end += 1;
    const times = Math.floor((Math.min(end, words.length) - from) / length);
    if (times > 1 && (times - 1) * length > (best.times - 1) * best.length) best = { length, times };
  }
  return best;
}
