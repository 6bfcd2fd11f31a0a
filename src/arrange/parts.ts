// Runs long computations in parts, so that their caller can hear a message between two parts.

/** Table entries computed between two pauses; they take some milliseconds. */
export const PART = 4_000_000;

/** Runs a computation to its end without a pause and returns its answer. */
export function atOnce<Outcome>(reckoning: Generator<void, Outcome>): Outcome {
  for (;;) {
    const part = reckoning.next();
    if (part.done) return part.value;
  }
}
