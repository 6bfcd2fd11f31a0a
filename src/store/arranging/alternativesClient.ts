// Seeks several good orders that differ. The workers share the searches; one of them chooses from what all have found.
import type { Alternative, CutShort } from '../../arrange/alternatives';
import type { ShuffleWish } from '../../arrange/shuffle';
import type { Project } from '../../model/project';
import { ok } from '../../model/result';
import type { Running, Settled } from '../workers/workerClient';
import { arrangeClients, type StartArrangeWorker, WORKERS } from './arrangeClients';

/** The orders found for the wall. */
export interface FoundAlternatives {
  readonly alternatives: readonly Alternative[];
  /** What ended the search early, so that another run may find others. */
  readonly cut: CutShort;
}

/**
 * Starts a search for `count` good orders that differ. With a budget in steps the answer is the same every time. `onShare`
 * gets the part of the budget that is spent, 0–1.
 */
export function startAlternatives(
  project: Project,
  wish: ShuffleWish,
  count: number,
  onShare: (share: number) => void = () => {},
  start?: StartArrangeWorker,
): Running<FoundAlternatives> {
  const clients = arrangeClients(start);
  const asked = { project, wish, count };
  const seek = async (): Promise<Settled<FoundAlternatives>> => {
    const shares = clients.map(() => 0);
    const tried = await Promise.all(
      clients.map((client, first) => {
        const ask = () => ({ ...asked, share: { first, of: WORKERS } });
        return client.ask('try', ask, (share) => {
          shares[first] = share;
          onShare(Math.min(...shares));
        });
      }),
    );
    const tries = tried.flatMap((one) => (one?.ok ? [one.value] : []));
    const chooser = clients[tried.findIndex((one) => one?.ok)];
    if (!chooser) return tried.find((one) => one?.ok === false) ?? null;
    const chosen = await chooser.ask('choose', () => ({ ...asked, tries }));
    return chosen?.ok
      ? ok({ alternatives: chosen.value, cut: tries.find((one) => one.cut)?.cut ?? null })
      : chosen;
  };
  const close = () => {
    for (const client of clients) client.close();
  };
  return {
    answer: seek().finally(close),
    stop: () => {
      for (const client of clients) client.stop();
    },
    cancel: close,
  };
}
