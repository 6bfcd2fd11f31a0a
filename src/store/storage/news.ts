// Tells other tabs over a BroadcastChannel which kept projects were saved or removed.
import * as v from 'valibot';

const changeSchema = v.object({ id: v.string(), revision: v.nullable(v.number()) });

/** A project that another tab saved, with its new revision, or removed (null). */
export type ProjectChange = Readonly<v.InferOutput<typeof changeSchema>>;

export interface ProjectNews {
  tell(change: ProjectChange): void;
  /** Calls back for changes made in other tabs, never for its own, until the returned function is called. */
  watch(listener: (change: ProjectChange) => void): () => void;
  close(): void;
}

/** News over the channel of this name. Where there are no channels, or they fail, none arrive, but savings are still checked. */
export function createNews(name: string): ProjectNews {
  const channel = trying(() => new BroadcastChannel(name));
  return {
    tell: (change) => trying(() => channel?.postMessage(change)),
    watch: (listener) => {
      const hear = (event: MessageEvent<unknown>) => {
        const change = v.safeParse(changeSchema, event.data);
        if (change.success) listener(change.output);
      };
      channel?.addEventListener('message', hear);
      return () => channel?.removeEventListener('message', hear);
    },
    close: () => channel?.close(),
  };
}

/** The result of `work`; null where the browser refuses it. */
function trying<T>(work: () => T): T | null {
  try {
    return work();
  } catch {
    return null;
  }
}

/** Sends and receives no news: for a storage that no other tab can see. */
export const SILENT_NEWS: ProjectNews = { tell: () => {}, watch: () => () => {}, close: () => {} };
