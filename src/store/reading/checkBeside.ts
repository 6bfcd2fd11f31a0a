// Has a saved quilt checked in the worker that reads files.
import { openDocument } from '../../editing/openDocument';
import type { Project } from '../../model/project';
import type { Result } from '../../model/result';
import type { WorkerLike } from '../workers/protocol';
import { readingClient } from './readFile';
import type { ReadingJobs } from './readingJobs';

/** What openDocument says of the document; where no worker can be had the page works it out itself. */
export async function checkBeside(
  document: object,
  start?: () => WorkerLike<ReadingJobs>,
): Promise<Result<Project>> {
  const client = readingClient(start);
  const answer = await client.ask('check', () => document);
  client.close();
  return answer?.ok ? answer.value : openDocument(document);
}
