// Rook and queen lattices as contact graphs, row by row, for tests against published lattice figures.
import { type ContactGraph, contactGraph } from '../../../src/balance/wall/contactGraph';

export function lattice(
  rows: number,
  columns: number,
  contiguity: 'rook' | 'queen',
  weight = 1,
): ContactGraph {
  return contactGraph(
    Array.from({ length: rows * columns }, (_, at) => {
      const row = Math.floor(at / columns);
      const column = at % columns;
      return Array.from({ length: rows * columns }, (__, other) => other).flatMap(
        (other): [number, number][] => {
          const down = Math.abs(Math.floor(other / columns) - row);
          const across = Math.abs((other % columns) - column);
          const touch = contiguity === 'rook' ? down + across === 1 : Math.max(down, across) === 1;
          return touch ? [[other, weight]] : [];
        },
      );
    }),
  );
}
