// Has photographs decoded and read in a worker, one job after another, so that the page stays free; in the page where workers have no
// canvas. A photograph is sent once and named by its key from then on.
import { phrase } from '../../model/phrase';
import { inPage, type WorkerLike } from '../workers/protocol';
import { type Settled, WorkerClient } from '../workers/workerClient';
import { hasCanvas } from './decode';
import type { PhotoJobs } from './photoJobs';
import type { PhotoProgress } from './sentPhoto';

/** A photograph on this page: its key, and its file's bytes. */
export interface PhotoFile {
  readonly key: number;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

type Without<Ask> = Omit<Ask, 'photo'>;
type Answer<K extends keyof PhotoJobs> = Settled<
  PhotoJobs[K]['answer'] extends { readonly ok: true } | { readonly ok: false }
    ? Extract<PhotoJobs[K]['answer'], { readonly ok: true }>['value']
    : never
>;

/** Seconds without a word after which the worker counts as hanging: a photograph of 64 million pixels takes some to decode. */
const PATIENCE = 40;

export type PhotoReader = ReturnType<typeof createPhotoReader>;

export function createPhotoReader(start: () => WorkerLike<PhotoJobs> = newPhotoWorker) {
  /** The photograph the worker has at hand. */
  let held: number | null = null;
  let last: Promise<unknown> = Promise.resolve();
  const client = new WorkerClient<PhotoJobs>({
    start,
    explain: (reason) =>
      phrase('The photograph could not be read: {reason}. Nothing has changed.', { reason }),
    patience: PATIENCE,
    standIn: () => inPage(answersInPage),
    onStart: () => {
      held = null;
    },
  });
  let round = 0;
  return {
    /**
     * Asks for a job on a photograph, after those asked before. The answer is null where it was put aside by `stop`; a problem
     * where the photograph cannot be read, or the worker failed.
     */
    ask<K extends keyof PhotoJobs>(
      job: K,
      photo: PhotoFile,
      ask: Without<PhotoJobs[K]['ask']>,
      hear: (progress: PhotoProgress) => void = () => {},
    ): Promise<Answer<K>> {
      const mine = round;
      const send = () => {
        const sent = { key: photo.key, bytes: held === photo.key ? null : photo.bytes };
        held = photo.key;
        return { ...ask, photo: sent } as unknown as PhotoJobs[K]['ask'];
      };
      const answer = last.then(async () => {
        if (mine !== round) return null;
        const settled = await client.ask(job, send, hear);
        const outcome = settled?.ok ? settled.value : settled;
        // What it could not open it does not have at hand.
        if (!outcome?.ok) held = null;
        return outcome as Answer<K>;
      });
      last = answer;
      return answer;
    },
    /** Ends the job at hand at once, and all that wait. */
    stop(): void {
      round += 1;
      client.putAside();
    },
    close(): void {
      round += 1;
      client.close();
    },
  };
}

function newPhotoWorker(): WorkerLike<PhotoJobs> {
  if (!hasCanvas()) return inPage(answersInPage);
  return new Worker(new URL('./photoWorker.ts', import.meta.url), { type: 'module' });
}

async function answersInPage() {
  const { photoAnswers } = await import('./photoAnswers');
  return photoAnswers();
}
