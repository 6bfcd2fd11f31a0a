// Runs long computations in parts, so that their caller can hear a message between two parts.

/** Table entries computed between two pauses; they take some milliseconds. */
export const PART = 4_000_000;

/** A computation in parts, of which nothing true can be said but that it goes on. */
export type InParts<Outcome> = Generator<null, Outcome>;

/** Runs a computation to its end without a pause and returns its answer. */
export function atOnce<Outcome>(reckoning: Generator<unknown, Outcome, boolean>): Outcome {
  for (;;) {
    const part = reckoning.next(false);
    if (part.done) return part.value;
  }
}
