// Measures how even the top is: the likeness of neighbours in value and colour at each scale against chance, with words.
import { type Phrase, phrase } from '../../model/phrase';
import type { Layers } from './layers';
import { FIGURES, type PoolFigure, type PoolScale } from './pools';

/** gathered: alike hang together · mixed: as by chance · alternating: unlike hang together · unsaid: too few or all alike */
export type EvennessVerdict = 'gathered' | 'mixed' | 'alternating' | 'unsaid';

export interface EvennessRow {
  readonly scale: PoolScale;
  /** Value L*, or OKLab a (green to red) or b (blue to yellow). */
  readonly figure: PoolFigure;
  /** Moran's I over the contacts, its mean by chance (−1/(n − 1)), and how many standard deviations lie between. */
  readonly moran: number;
  readonly expected: number;
  readonly z: number;
  /** Chance of an I as high: by permutations for blocks and tiles, by the normal approximation for wedges. */
  readonly p: number;
  /** Wedges, blocks or parts compared. */
  readonly nodes: number;
  readonly verdict: EvennessVerdict;
  readonly words: Phrase;
}

/** Odds from which a row is called gathered or alternating. */
const ODDS = 0.05;
/** z of the same odds on the low side. */
const LOW = -1.645;

/** Rows for wedges, blocks and, on a large wall, parts of the top; value, then colour. */
export function evennessRows({ wedges, blocks, tiles }: Layers): EvennessRow[] {
  const scales = [
    { scale: 'wedge', layer: wedges },
    { scale: 'block', layer: blocks },
    ...(tiles ? [{ scale: 'top' as const, layer: tiles.layer }] : []),
  ] as const;
  return scales.flatMap(({ scale, layer }) =>
    layer.figures.map(({ whole }, at): EvennessRow => {
      const figure = FIGURES[at]!;
      const verdict = verdictOf(whole);
      return {
        scale,
        figure,
        moran: whole.statistic,
        expected: whole.expected,
        z: whole.z,
        p: whole.p,
        nodes: layer.graph.size,
        verdict,
        words: phrase(WORDS[figure][verdict], { what: phrase(NODES[scale]) }),
      };
    }),
  );
}

function verdictOf({ variance, z, p }: { variance: number; z: number; p: number }): EvennessVerdict {
  if (variance === 0) return 'unsaid';
  if (p <= ODDS) return 'gathered';
  return z <= LOW ? 'alternating' : 'mixed';
}

const NODES: Readonly<Record<PoolScale, string>> = { wedge: 'wedges', block: 'blocks', top: 'parts' };

const UNSAID = 'Too few {what}, or too alike, to say';

const WORDS: Readonly<Record<PoolFigure, Readonly<Record<EvennessVerdict, string>>>> = {
  value: {
    gathered: 'Darker {what} cluster together, and so do lighter ones',
    mixed: 'Darker and lighter {what} are mixed as in a random layout',
    alternating: 'Darker and lighter {what} alternate more than in a random layout',
    unsaid: UNSAID,
  },
  a: {
    gathered: 'Redder {what} cluster together, and so do greener ones',
    mixed: 'Redder and greener {what} are mixed as in a random layout',
    alternating: 'Redder and greener {what} alternate more than in a random layout',
    unsaid: UNSAID,
  },
  b: {
    gathered: 'Yellower {what} cluster together, and so do bluer ones',
    mixed: 'Yellower and bluer {what} are mixed as in a random layout',
    alternating: 'Yellower and bluer {what} alternate more than in a random layout',
    unsaid: UNSAID,
  },
};
