// Keeps projects in the page's memory, for browsers without IndexedDB: everything works, and is gone when the page closes.
import { NO_PICTURES, type PictureId, type Pictures, type StoredPicture } from '../../model/picture/picture';
import type { Shelf, ShelfRecord } from './storage';

/** A shelf whose records last as long as the page. */
export function createMemoryShelf(): Shelf {
  const records = new Map<string, ShelfRecord>();
  const pictures = new Map<PictureId, StoredPicture>();
  const putPictures = (more: Pictures = NO_PICTURES) => {
    for (const [id, picture] of more) if (!pictures.has(id)) pictures.set(id, picture);
  };
  const notes = new Map<string, string | null>();
  return {
    keeps: false,
    summaries: async () => Array.from(records, ([id, record]) => [id, record.summary] as const),
    record: async (id) => records.get(id),
    change: async (id, decide, more) => {
      const next = decide(records.get(id)?.summary);
      putPictures(more);
      if (next) records.set(id, next);
      else records.delete(id);
    },
    pictures: async (ids) => ids.flatMap((id) => (pictures.has(id) ? [[id, pictures.get(id)] as const] : [])),
    putPictures: async (more) => putPictures(more),
    collect: async (held, namedBy) => {
      const named = new Set([...held, ...[...records.values()].flatMap((record) => [...namedBy(record)])]);
      for (const id of pictures.keys()) if (!named.has(id)) pictures.delete(id);
    },
    note: async (key) => notes.get(key),
    setNote: async (key, value) => {
      notes.set(key, value);
    },
    close: () => {},
  };
}
