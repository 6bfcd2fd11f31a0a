// Keeps projects in the page's memory, for browsers without IndexedDB: everything works, and is gone when the page closes.
import type { Shelf, ShelfRecord } from './storage';

/** A shelf whose records last as long as the page. */
export function createMemoryShelf(): Shelf {
  const records = new Map<string, ShelfRecord>();
  const notes = new Map<string, string | null>();
  return {
    keeps: false,
    summaries: async () => Array.from(records, ([id, record]) => [id, record.summary] as const),
    record: async (id) => records.get(id),
    change: async (id, decide) => {
      const next = decide(records.get(id)?.summary);
      if (next) records.set(id, next);
      else records.delete(id);
    },
    note: async (key) => notes.get(key),
    setNote: async (key, value) => {
      notes.set(key, value);
    },
    close: () => {},
  };
}
