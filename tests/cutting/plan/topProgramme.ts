// The most blocks from a few pieces as one integer programme, built straight from the pieces: every strip cut across in every
// way, every number of sets of every length, neighbours that differ. For HiGHS; slow, so for small cases only.
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

/** All ways to cut a length across into parts of two wedges and more, as wedges of each part. */
function waysAcross(length: number, wedge: WedgePlan, most = Number.POSITIVE_INFINITY): number[][] {
  const ways: number[][] = [];
  for (let part = Math.min(most, wedgesOnLength(length, wedge.cutHeight, wedge)); part >= 2; part -= 1) {
    const rest = length - lengthFor(part, wedge.cutHeight, wedge);
    ways.push([part], ...waysAcross(rest, wedge, part).map((way) => [part, ...way]));
  }
  return ways;
}

/** Most blocks; `mostSets` has to be more than there can be of one length. */
export function mostBlocks(
  pieces: readonly SmallPiece[],
  parts: readonly WidthPart[],
  wedge: WedgePlan,
  mostSets: number,
): number {
  const needs = setNeeds(parts, wedge);
  const fabrics = [...new Set(pieces.map((piece) => piece.fabric))];
  const longest = Math.max(...pieces.map((piece) => wedgesOnLength(piece.length, wedge.cutHeight, wedge)));
  const sizes = Array.from({ length: Math.max(0, longest - 1) }, (_, at) => at + 2);
  if (sizes.length === 0) return 0;
  const counts = Array.from({ length: mostSets }, (_, at) => at + 1);
  const lines: string[] = [];
  const whole: string[] = ['b'];
  const given = new Map<string, string[]>();
  pieces.forEach(({ fabric, length, depth }, piece) => {
    const side: string[] = [];
    waysAcross(length, wedge).forEach((way, at) => {
      parts.forEach(({ width }, column) => {
        const name = `x_${piece}_${at}_${column}`;
        whole.push(name);
        side.push(`${width} ${name}`);
        for (const size of new Set(way)) {
          const key = `${fabric} ${column} ${size}`;
          const number = way.filter((one) => one === size).length;
          given.set(key, [...(given.get(key) ?? []), `${number} ${name}`]);
        }
      });
    });
    if (side.length > 0) lines.push(`${side.join(' + ')} <= ${depth}`);
  });
  const chosen = (size: number, of: (sets: number) => number) =>
    counts.map((sets) => `- ${of(sets)} z_${size}_${sets}`).join(' ');
  for (const size of sizes) {
    lines.push(`${counts.map((sets) => `z_${size}_${sets}`).join(' + ')} <= 1`);
    parts.forEach((_, column) => {
      const used = fabrics.map((__, fabric) => `u_${fabric}_${column}_${size}`);
      lines.push(`${used.join(' + ')} ${chosen(size, (sets) => needs.of(sets)!.counts[column]!)} >= 0`);
      fabrics.forEach((fabric, at) => {
        whole.push(used[at]!);
        const there = given.get(`${fabric} ${column} ${size}`) ?? [];
        lines.push(`${used[at]}${there.map((one) => ` - ${one}`).join('')} <= 0`);
      });
    });
    fabrics.forEach((_, fabric) => {
      const used = parts.map((__, column) => `u_${fabric}_${column}_${size}`).join(' + ');
      lines.push(`${used} ${chosen(size, (sets) => needs.of(sets)!.ofOne)} <= 0`);
    });
  }
  const binaries = sizes.flatMap((size) => counts.map((sets) => `z_${size}_${sets}`));
  const wedges = sizes.map((size) => chosen(size, (sets) => size * sets)).join(' ');
  lines.push(`${wedge.perBlock} b ${wedges} <= 0`);
  const text = `Maximize\n b\nSubject To\n ${lines.join('\n ')}\nGeneral\n ${whole.join(' ')}\nBinary\n ${binaries.join(' ')}\nEnd`;
  const solved = highs.solve(text, { mip_rel_gap: 0 });
  if (solved.Status !== 'Optimal') throw new Error(`the integer programme is ${solved.Status}`);
  return Math.round(solved.ObjectiveValue);
}
