// The figures of an analysis, for comparing two of them.
import type { Analysis } from '../../src/balance/analyse';

/** All a person or a program sees of an analysis; memos and takeovers are not part of it. */
export function figures(analysis: Analysis) {
  const { clashes, findings, value, pools, fabrics, dominant, wholeTop, terms, layers } = analysis;
  const layer = (one: Analysis['layers']['blocks']) =>
    one.figures.map(({ p, pool, local, lag, whole }) => ({ p, pool, local, lag, whole }));
  return {
    clashes,
    findings,
    value,
    pools,
    fabrics,
    dominant,
    wholeTop,
    terms,
    blocks: layer(layers.blocks),
    wedges: layer(layers.wedges),
    tiles: layers.tiles ? layer(layers.tiles.layer) : null,
  };
}

/** Numbers to a millionth, so that a width that is worked out and worked back counts as the same. */
export function rounded(value: unknown): unknown {
  return JSON.parse(
    JSON.stringify(value, (_key, one: unknown) =>
      typeof one === 'number' ? Number(one.toFixed(6)) + 0 : one,
    ),
  );
}
