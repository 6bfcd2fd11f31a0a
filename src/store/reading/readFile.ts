// Reads a project file in a worker, so that the page stays free whatever the file is, and can stop it.
import { bytesOf, type ReadableFile } from '../../editing/openFile';
import { phrase } from '../../model/phrase';
import type { Opened } from '../../model/reading/readText';
import { inPage, type WorkerLike } from '../workers/protocol';
import { WorkerClient } from '../workers/workerClient';
import type { ReadingJobs } from './readingJobs';

/** Seconds: a file is read in one piece, and the largest takes half a minute on a slow machine. */
const PATIENCE = 120;

export interface RunningReading {
  /** The project, why there is none, or null where it was stopped. Never rejects. */
  readonly opened: Promise<Opened | null>;
  readonly stop: () => void;
}

/** Starts reading a chosen file. */
export function startReading(
  file: ReadableFile,
  start: () => WorkerLike<ReadingJobs> = newWorker,
): RunningReading {
  const client = readingClient(start);
  return { opened: read(client, file).finally(() => client.close()), stop: () => client.close() };
}

/** A client of a worker of its own, to be closed when it has answered. */
export function readingClient(start: () => WorkerLike<ReadingJobs> = newWorker): WorkerClient<ReadingJobs> {
  return new WorkerClient<ReadingJobs>({
    start,
    patience: PATIENCE,
    standIn: () => inPage(async () => (await import('./readingAnswers')).READING),
    explain: (reason) => phrase('The file could not be read: {reason}.', { reason }),
  });
}

async function read(client: WorkerClient<ReadingJobs>, file: ReadableFile): Promise<Opened | null> {
  const bytes = await bytesOf(file);
  if (!bytes.ok) return bytes;
  const answer = await client.ask('read', () => bytes.value);
  if (!answer?.ok) return answer;
  const opened = answer.value;
  if (!opened.ok) return opened;
  return { ...opened, pictures: new Map(opened.pictures.map(({ id, picture }) => [id, picture])) };
}

function newWorker(): WorkerLike<ReadingJobs> {
  return new Worker(new URL('./readingWorker.ts', import.meta.url), { type: 'module' });
}
