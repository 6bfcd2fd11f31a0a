// A search of the open quilt whose answer is an offer: it runs in workers whatever step is on show, and what it finds waits under Wall until it
// is closed or the quilt changes.
import { createStore, type StoreApi } from 'zustand/vanilla';
import { stillFits } from '../arrange/asked';
import type { Phrase } from '../model/phrase';
import type { Project } from '../model/project';
import type { Problem } from '../model/result';
import type { App, AppStore } from './app';
import type { Running } from './workers/workerClient';

export type OfferState<Offer extends object> =
  | { readonly kind: 'idle'; readonly problems: readonly Problem[] }
  | { readonly kind: 'running'; readonly share: number }
  | ({ readonly kind: 'offered' } & Offer);

export interface Offering<Offer extends object, Asked extends readonly unknown[]> {
  readonly state: OfferState<Offer>;
  readonly start: (...asked: Asked) => void;
  /** Ends the search and offers what was found so far. */
  readonly stop: () => void;
  /** Discards what is on offer. */
  readonly close: () => void;
}

interface Search<Answer, Offer, Asked> {
  /** Begins the search of a quilt; `hear` is told how far it is, 0 to 1. */
  readonly begin: (project: Project, asked: Asked, hear: (share: number) => void) => Running<Answer>;
  readonly offer: (answer: Answer) => Offer;
  /** What is said where a change of the quilt takes the search or its offer away. */
  readonly stale: Phrase;
  /** Whether anything is lost then; always unless given. */
  readonly isLost?: (kind: 'running' | 'offered', now: App) => boolean;
  /** Called once there is an offer. */
  readonly found?: (offer: Offer) => void;
}

/** The store of an app's search. One search runs at a time: a new one takes the place of the one before. */
export function createOffering<Answer, Offer extends object, Asked extends readonly unknown[]>(
  app: AppStore,
  { begin, offer, stale, isLost = () => true, found }: Search<Answer, Offer, Asked>,
): StoreApi<Offering<Offer, Asked>> {
  return createStore<Offering<Offer, Asked>>()((set, get) => {
    let running: Running<Answer> | null = null;
    const dismiss = (problems: readonly Problem[]) => {
      running?.cancel();
      running = null;
      set({ state: { kind: 'idle', problems } });
    };
    app.subscribe((now, before) => {
      const { kind } = get().state;
      if (now.revision === before.revision || kind === 'idle') return;
      if (stillFits(now.project, before.project)) return;
      const lost = now.project.id === before.project.id && isLost(kind, now);
      dismiss(lost ? [{ code: 'stale', path: '', message: stale }] : []);
    });
    const start = (...asked: Asked) => {
      dismiss([]);
      const search = begin(app.getState().project, asked, (share) => {
        if (running === search) set({ state: { kind: 'running', share } });
      });
      running = search;
      set({ state: { kind: 'running', share: 0 } });
      void search.answer.then((answer) => {
        if (running !== search || !answer) return;
        running = null;
        if (!answer.ok) return set({ state: { kind: 'idle', problems: answer.problems } });
        const made = offer(answer.value);
        set({ state: { kind: 'offered', ...made } });
        found?.(made);
      });
    };
    return {
      state: { kind: 'idle', problems: [] },
      start,
      stop: () => running?.stop(),
      close: () => dismiss([]),
    };
  });
}
