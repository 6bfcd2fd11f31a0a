// Long reckonings cut into parts, so that whoever runs them can hear a message in between.

/** Entries of a table gone through between two pauses: some milliseconds' worth. */
export const PART = 4_000_000;

/** Runs a reckoning to its end without a pause. */
export function atOnce<Outcome>(reckoning: Generator<void, Outcome>): Outcome {
  for (;;) {
    const part = reckoning.next();
    if (part.done) return part.value;
  }
}
