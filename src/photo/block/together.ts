// Reads the wedges of a block together: wedges cut from one set of strips show the same bands, or the same in reverse with the other
// end of the set at the rim. What is too small to be told at the tip of one is told by another.
import { asBands, type BandReading, costsAs, type Run, SEWN, type WedgeBands } from './bands';
import type { NeutralWedge } from './neutral';

/** Rings by which the bands of a wedge that is the reverse of another may come out too short or too narrow. */
const LOOSE = 2;

/** The bands of each wedge, by all wedges that seem to be of its set. */
export function readTogether(
  wedges: readonly NeutralWedge[],
  found: readonly WedgeBands[],
  reading: BandReading,
): WedgeBands[] {
  const guesses = guessesFrom(found, wedges[0]!.rings);
  const costs = wedges.map((wedge) => costsAs(wedge, guesses, reading));
  const gain = (guess: number, at: number) => found[at]!.cost + SEWN - costs[at]![guess]!;
  const worth = guesses.map(
    ({ reversed }, guess) =>
      wedges.reduce((sum, _, at) => sum + Math.max(0, gain(guess, at)), 0) + (reversed ? SEWN : 0),
  );
  return found.map((own, at) => {
    const better = guesses.flatMap((_, guess) => (gain(guess, at) > 0 ? [guess] : []));
    if (better.length === 0) return own;
    const best = better.reduce((most, one) => (worth[one]! > worth[most]! ? one : most));
    return asBands(wedges[at]!, guesses[best]!.runs, reading);
  });
}

interface Guess {
  readonly runs: readonly Run[];
  readonly reversed: boolean;
}

/** What each wedge was read as, and what it would be as another in reverse. */
function guessesFrom(found: readonly WedgeBands[], rings: number): Guess[] {
  const guesses = new Map<string, Guess>();
  const add = (runs: readonly Run[], reversed: boolean) => {
    const key = runs.map(({ to, swatch }) => `${to} ${swatch}`).join();
    if (!guesses.has(key)) guesses.set(key, { runs, reversed });
  };
  for (const { bands } of found) add(bands, false);
  for (const { bands } of found)
    for (const other of found) {
      if (other.bands === bands) continue;
      // Its strip at the tip is cut off: here it is whole, or the one at the rim, or was taken for another.
      for (const seen of [other.bands, other.bands.slice(0, -1)]) {
        const runs = reversedTo(bands[0]!, seen, rings);
        if (runs) add(runs, true);
      }
    }
  return [...guesses.values()];
}

/** Bands in reverse behind a strip at the rim; null where they would not reach from there to the middle. */
function reversedTo(rim: Run, bands: readonly Run[], rings: number): Run[] | null {
  const runs = [rim];
  for (const { from, to, swatch } of bands.toReversed()) {
    const start = runs.at(-1)!.to;
    if (rings - start < LOOSE) break;
    if (swatch === runs.at(-1)!.swatch) return null;
    runs.push({ from: start, to: Math.min(rings, start + to - from), swatch });
  }
  const last = runs.at(-1)!;
  if (runs.length < 3 || rings - last.to > LOOSE) return null;
  return [...runs.slice(0, -1), { ...last, to: rings }];
}
