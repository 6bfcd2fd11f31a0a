// Has the written pattern laid out, and its PDF made, in a worker, so that the page stays free. patternAnswers.ts does the work.
import type { PatternOptions } from '../../drawing/pattern/options';
import type { Pattern } from '../../drawing/pattern/page';
import { type Phrase, phrase } from '../../model/phrase';
import type { Pictures } from '../../model/picture/picture';
import type { Project } from '../../model/project';
import { ok, type Result } from '../../model/result';
import { inPage, type WorkerLike } from '../workers/protocol';
import { type Running, type Settled, WorkerClient } from '../workers/workerClient';
import type { MadePdf, PatternJobs, PdfProgress, Writing } from './patternJobs';

export interface PatternPdf extends Omit<MadePdf, 'bytes'> {
  readonly file: Blob;
}

/** A pattern that is being made; the answer is null once it was cancelled. */
export type RunningPdf = Omit<Running<PatternPdf>, 'stop'>;

/** Seconds of patience: packing a large pattern with many pictures is one part of the work. */
const PATIENCE = 90;

/** The worker for the pages on screen; it keeps what it has measured. */
let screen: WorkerClient<PatternJobs> | null = null;
/** Settles when the last pages asked for are there, or given up. */
let last: Promise<unknown> = Promise.resolve();

/** The pages as the file would have them, to be looked at; null where `isStale` said so on the way. Never rejects. */
export async function layOutPattern(
  project: Project,
  options: PatternOptions,
  writing: Writing,
  isStale: () => boolean,
): Promise<Result<Pattern> | null> {
  screen ??= client((reason) => phrase('The pages could not be laid out ({reason}).', { reason }));
  // What was asked before is no longer wanted.
  screen.stop();
  const pages = last.then(() =>
    isStale() ? null : screen!.ask('layOut', () => ({ project, options, writing })),
  );
  last = pages;
  const answer = inner(await pages);
  if (answer?.ok) laid.set(project, { by: choicesOf(options, writing), pattern: answer.value });
  return answer;
}

/** The pages on screen by their project: the file has the very same, so they are not laid out again for it. */
const laid = new WeakMap<Project, { readonly by: string; readonly pattern: Pattern }>();

/** What pages of one project differ by. */
function choicesOf({ paper, parts }: PatternOptions, { unit, numbers }: Writing): string {
  return JSON.stringify([paper, parts, unit, numbers]);
}

/** Starts making the file. `tell` gets the progress. */
export function makePatternPdf(
  project: Project,
  pictures: Pictures,
  options: PatternOptions,
  writing: Writing,
  tell: (progress: PdfProgress) => void = () => {},
): RunningPdf {
  const making = client((reason) =>
    phrase('The pattern could not be made ({reason}). The quilt is untouched; try again.', { reason }),
  );
  const there = laid.get(project);
  const laidOut = there?.by === choicesOf(options, writing) ? there.pattern : null;
  const ask = { project, options, writing, pictures: [...pictures], laidOut };
  const answer = making
    .ask('make', () => ask, tell)
    .then((settled) => {
      making.close();
      const made = inner(settled);
      if (!made?.ok) return made;
      const { bytes, ...rest } = made.value;
      return ok({ ...rest, file: new Blob([bytes as Uint8Array<ArrayBuffer>], { type: 'application/pdf' }) });
    });
  return { answer, cancel: () => making.close() };
}

function client(explain: (reason: string | Phrase) => Phrase): WorkerClient<PatternJobs> {
  return new WorkerClient<PatternJobs>({
    start: newWorker,
    explain,
    patience: PATIENCE,
    standIn: () => inPage<PatternJobs>(async () => (await import('./patternAnswers')).PATTERN_ANSWERS),
  });
}

/** What the worker answered, or why it did not. */
function inner<T>(settled: Settled<Result<T> | null>): Result<T> | null {
  return settled?.ok ? settled.value : settled;
}

function newWorker(): WorkerLike<PatternJobs> {
  return new Worker(new URL('./patternWorker.ts', import.meta.url), { type: 'module' });
}
