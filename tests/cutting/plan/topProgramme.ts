// The most blocks from a few pieces as one integer programme, built straight from the pieces: every strip cut across in every
// way, every number of sets of every length and height, neighbours that differ. For HiGHS; slow, so for small cases only.
import highsLoader from 'highs';
import { setNeeds } from '../../../src/cutting/plan/setNeeds';
import type { WidthPart } from '../../../src/cutting/plan/setTotals';
import { lengthFor, wedgesOnLength } from '../../../src/cutting/wedges/yield';
import type { WedgePlan } from '../../../src/model/project';

const highs = await highsLoader();

export interface SmallPiece {
  readonly fabric: string;
  readonly length: number;
  readonly depth: number;
}

/** Sets of so many wedges, so high; their strips are as long as that needs. */
interface Part {
  readonly wedges: number;
  readonly height: number;
  readonly length: number;
}

/** All ways to cut a length across into parts, as the places of the parts in their list. */
function waysAcross(length: number, parts: readonly Part[], from = 0): number[][] {
  return parts.flatMap((part, at) => {
    if (at < from || part.length > length + 1e-9) return [];
    return [[at], ...waysAcross(length - part.length, parts, at).map((way) => [at, ...way])];
  });
}

/** Most blocks from sets of these heights; `mostSets` has to be more than there can be of one length and height. */
export function mostBlocks(
  pieces: readonly SmallPiece[],
  widths: readonly WidthPart[],
  wedge: WedgePlan,
  heights: readonly number[],
  mostSets: number,
): number {
  const fabrics = [...new Set(pieces.map((piece) => piece.fabric))];
  const longest = Math.max(...pieces.map((piece) => piece.length));
  const parts = heights.flatMap((height) =>
    Array.from({ length: Math.max(0, wedgesOnLength(longest, height, wedge) - 1) }, (_, at): Part => {
      return { wedges: at + 2, height, length: lengthFor(at + 2, height, wedge) };
    }),
  );
  if (parts.length === 0) return 0;
  const counts = Array.from({ length: mostSets }, (_, at) => at + 1);
  const need = (part: number, sets: number) => setNeeds(widths, wedge, parts[part]!.height).of(sets)!;
  const lines: string[] = [];
  const whole: string[] = ['b'];
  const given = new Map<string, string[]>();
  pieces.forEach(({ fabric, length, depth }, piece) => {
    const side: string[] = [];
    waysAcross(length, parts).forEach((way, at) => {
      widths.forEach(({ width }, column) => {
        const name = `x_${piece}_${at}_${column}`;
        whole.push(name);
        side.push(`${width} ${name}`);
        for (const part of new Set(way)) {
          const key = `${fabric} ${column} ${part}`;
          const number = way.filter((one) => one === part).length;
          given.set(key, [...(given.get(key) ?? []), `${number} ${name}`]);
        }
      });
    });
    if (side.length > 0) lines.push(`${side.join(' + ')} <= ${depth}`);
  });
  const chosen = (part: number, of: (sets: number) => number) =>
    counts.map((sets) => `- ${of(sets)} z_${part}_${sets}`).join(' ');
  parts.forEach((_, part) => {
    lines.push(`${counts.map((sets) => `z_${part}_${sets}`).join(' + ')} <= 1`);
    widths.forEach((__, column) => {
      const used = fabrics.map((___, fabric) => `u_${fabric}_${column}_${part}`);
      lines.push(`${used.join(' + ')} ${chosen(part, (sets) => need(part, sets).counts[column]!)} >= 0`);
      fabrics.forEach((fabric, at) => {
        whole.push(used[at]!);
        const there = given.get(`${fabric} ${column} ${part}`) ?? [];
        lines.push(`${used[at]}${there.map((one) => ` - ${one}`).join('')} <= 0`);
      });
    });
  });
  // Sets of several heights may share their strips out between them, so one fabric is bounded for all sets together.
  fabrics.forEach((_, fabric) => {
    const used = parts.flatMap((__, part) => widths.map((___, column) => `u_${fabric}_${column}_${part}`));
    const most = parts.map((__, part) => chosen(part, (sets) => need(part, sets).ofOne));
    lines.push(`${used.join(' + ')} ${most.join(' ')} <= 0`);
  });
  const binaries = parts.flatMap((_, part) => counts.map((sets) => `z_${part}_${sets}`));
  const wedges = parts.map((part, at) => chosen(at, (sets) => part.wedges * sets)).join(' ');
  lines.push(`${wedge.perBlock} b ${wedges} <= 0`);
  const text = `Maximize\n b\nSubject To\n ${lines.join('\n ')}\nGeneral\n ${whole.join(' ')}\nBinary\n ${binaries.join(' ')}\nEnd`;
  const solved = highs.solve(text, { mip_rel_gap: 0 });
  if (solved.Status !== 'Optimal') throw new Error(`the integer programme is ${solved.Status}`);
  return Math.round(solved.ObjectiveValue);
}
