// How even is the top, row by row: the figures are those of the layers, the words follow the odds; chances in words.
import { describe, expect, it } from 'vitest';
import { analyse } from '../../../src/balance/analyse';
import { moran } from '../../../src/balance/evenness/autocorrelation';
import { oddsWords } from '../../../src/balance/evenness/odds';
import { speak } from '../../../src/model/phrase';
import type { Project } from '../../../src/model/project';
import { dice, scrappyTop } from '../tops';

/** The blocks of a top hung anew: in the order given by a figure for each of them. */
function hungBy(project: Project, key: (block: number) => number): Project {
  const order = project.blocks
    .map((block, at) => ({ block: block.id, key: key(at) }))
    .toSorted((one, other) => one.key - other.key);
  const cells = order.map(({ block }) => ({ block, turn: 0, pinned: false }));
  return { ...project, wall: { ...project.wall, cells } };
}

const top = scrappyTop({ rows: 6, columns: 6, seed: 8, fabrics: 30 });
const lightness = analyse(top).model.lightness;
const sorted = analyse(hungBy(top, (block) => lightness[block]!));

const valueOfBlocks = (analysis: ReturnType<typeof analyse>) =>
  analysis.evenness.find((row) => row.scale === 'block' && row.figure === 'value')!;

describe('how even the top is', () => {
  it('is told for value and colour at wedge and block scale, and in parts on a wall of eight cells or more', () => {
    expect(sorted.evenness.map((row) => `${row.scale} ${row.figure}`)).toEqual([
      'wedge value', 'wedge a', 'wedge b', 'block value', 'block a', 'block b',
    ]); // biome-ignore format: a row
    const large = analyse(scrappyTop({ rows: 8, columns: 8, seed: 1 }));
    expect(large.evenness.filter((row) => row.scale === 'top')).toHaveLength(3);
    expect(large.evenness[0]!.nodes).toBe(512);
  });

  it('gives Moran’s I of blocks as worked out over a plain lattice, with −1/(n − 1) by chance', () => {
    const row = valueOfBlocks(sorted);
    const inOrder = [...lightness].toSorted((one, other) => one - other);
    const mean = inOrder.reduce((sum, one) => sum + one, 0) / 36;
    const neighbours = inOrder.flatMap((_, at) => [
      ...(at % 6 < 5 ? [[at, at + 1] as const] : []),
      ...(at < 30 ? [[at, at + 6] as const] : []),
    ]);
    const cross = neighbours.reduce((sum, [a, b]) => sum + (inOrder[a]! - mean) * (inOrder[b]! - mean), 0);
    const square = inOrder.reduce((sum, one) => sum + (one - mean) ** 2, 0);
    expect(row.moran).toBeCloseTo(((36 / neighbours.length) * cross) / square, 6);
    expect(row.expected).toBeCloseTo(-1 / 35, 12);
    expect(row.moran).toBe(
      moran(sorted.layers.blocks.graph, sorted.layers.blocks.figures[0]!.values).statistic,
    );
  });

  it('calls sorted values gathered, values in turns alternating, and most random orders mixed', () => {
    expect(valueOfBlocks(sorted)).toMatchObject({ verdict: 'gathered', p: 1 / 500 });
    expect(speak(valueOfBlocks(sorted).words)).toBe('Darker blocks cluster together, and so do lighter ones');
    const rank = new Map(
      [...lightness.keys()]
        .toSorted((one, other) => lightness[one]! - lightness[other]!)
        .map((at, r) => [at, r]),
    );
    const board = analyse(hungBy(top, (block) => boardPlace(rank.get(block)!)));
    expect(valueOfBlocks(board).verdict).toBe('alternating');
    expect(moran(board.layers.blocks.graph, board.layers.blocks.figures[0]!.values).z).toBeLessThan(0);
    const random = dice(3);
    const verdicts = Array.from(
      { length: 20 },
      () => valueOfBlocks(analyse(hungBy(top, () => random.part()))).verdict,
    );
    expect(verdicts.filter((one) => one === 'mixed').length).toBeGreaterThanOrEqual(15);
  });

  it('says that one block is too few', () => {
    const one = analyse(scrappyTop({ rows: 1, columns: 1, seed: 1 }));
    expect(valueOfBlocks(one)).toMatchObject({ verdict: 'unsaid', p: 1 });
    expect(speak(valueOfBlocks(one).words)).toBe('Too few blocks, or too alike, to say');
  });
});

/** Place of a rank on a board of dark and light cells in turns: the darker half on one colour. */
function boardPlace(rank: number): number {
  const places = Array.from({ length: 36 }, (_, at) => at);
  const colour = (at: number) => (at + Math.floor(at / 6)) % 2;
  return places.toSorted((one, other) => colour(one) - colour(other) || one - other)[rank]!;
}

describe('chances in words', () => {
  it('are round, and never nought', () => {
    const words = [1, 0.34, 0.1, 0.05, 1 / 500, 0.00123, 0.00001].map((p) => speak(oddsWords(p)));
    expect(words).toEqual([
      '100 in 100', '34 in 100', '10 in 100', '1 in 20', '1 in 500', '1 in 810', 'less than 1 in 10,000',
    ]); // biome-ignore format: a row
    expect(() => oddsWords(Number.NaN)).toThrow(RangeError);
  });
});
