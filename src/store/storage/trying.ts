// Work on what a browser may refuse: its storage in private windows, switched off, or full.

/** The result of `work`; undefined where it throws. */
export function trying<T>(work: () => T): T | undefined {
  try {
    return work();
  } catch {
    return undefined;
  }
}
