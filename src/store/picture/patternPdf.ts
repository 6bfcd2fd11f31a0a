// Has the written pattern laid out, and its PDF made, in a worker, so that the page stays free. patternAnswers.ts does the work.
import type { PatternOptions } from '../../drawing/pattern/options';
import type { PageShapes } from '../../drawing/pattern/pageShapes';
import { phrase } from '../../model/phrase';
import type { Pictures } from '../../model/picture/picture';
import type { Project } from '../../model/project';
import { ok, type Result } from '../../model/result';
import { inPage, type WorkerLike } from '../workers/protocol';
import { type Running, type Settled, WorkerClient } from '../workers/workerClient';
import type { MadePdf, PatternJobs, PatternOutline, PdfProgress, Writing } from './patternJobs';

export interface PatternPdf extends Omit<MadePdf, 'bytes'> {
  readonly file: Blob;
}

/** A pattern that is being made; the answer is null once it was cancelled. */
export type RunningPdf = Omit<Running<PatternPdf>, 'stop'>;

/** Seconds of patience: packing a large pattern with many pictures is one part of the work. */
const PATIENCE = 90;

/** The worker for the pages on screen; it keeps them, and what it has measured. */
let screen: WorkerClient<PatternJobs> | null = null;
/** Settles when the last pages asked for are there, or given up. */
let last: Promise<unknown> = Promise.resolve();
/** Patterns laid out so far; each is kept under its number. */
let count = 0;

/** A pattern that is laid out; what is on its pages comes when it is asked for. */
export interface LaidOut extends PatternOutline {
  /** What is on a page, from 0; null where `isStale` said so before its turn came, or other pages are wanted. Never rejects. */
  readonly page: (index: number, isStale: () => boolean) => Promise<Result<PageShapes> | null>;
}

/** The pages as the file would have them, to be looked at; null where `isStale` said so on the way. Never rejects. */
export async function layOutPattern(
  project: Project,
  options: PatternOptions,
  writing: Writing,
  isStale: () => boolean,
): Promise<Result<LaidOut> | null> {
  // Late already, it must not stop what came after it.
  if (isStale()) return null;
  count += 1;
  const ask = { project, options, writing, number: count };
  // What was asked before is no longer wanted.
  screen?.stop();
  const answer = await afterLast(async () =>
    isStale() ? null : inner(await onScreen().ask('layOut', () => ask)),
  );
  if (!answer?.ok) return answer;
  laid.set(project, { by: choicesOf(options, writing), number: ask.number, worker: screen });
  const page: LaidOut['page'] = (index, stale) =>
    afterLast(async () => (stale() ? null : pageOf(ask, index)));
  return ok({ ...answer.value, page });
}

/** Asks for what is on a page; laid out once more where the worker has gone, or makes the file. */
async function pageOf(ask: PatternJobs['layOut']['ask'], page: number): Promise<Result<PageShapes> | null> {
  const { number } = ask;
  const there = async () => {
    const settled = await onScreen().ask('page', () => ({ number, page }));
    return settled?.ok ? settled.value && ok(settled.value) : settled;
  };
  const first = await there();
  if (first) return first;
  const again = inner(await onScreen().ask('layOut', () => ask));
  return again?.ok ? there() : again;
}

/** Does it once what was asked before is done: a worker has one ask at a time. */
function afterLast<T>(work: () => Promise<T>): Promise<T> {
  const done = last.then(work);
  last = done.catch(() => undefined);
  return done;
}

function onScreen(): WorkerClient<PatternJobs> {
  screen ??= client();
  return screen;
}

/** Which pages are on screen, by their project: the file has the very same, so they are not laid out again for it. */
const laid = new WeakMap<
  Project,
  { readonly by: string; readonly number: number; readonly worker: WorkerClient<PatternJobs> | null }
>();

/** What pages of one project differ by. */
function choicesOf({ paper, parts }: PatternOptions, { unit, numbers }: Writing): string {
  return JSON.stringify([paper, parts, unit, numbers]);
}

/** Starts making the file, in the worker that keeps these pages if there is one. `tell` gets the progress. */
export function makePatternPdf(
  project: Project,
  pictures: Pictures,
  options: PatternOptions,
  writing: Writing,
  tell: (progress: PdfProgress) => void = () => {},
): RunningPdf {
  const there = laid.get(project);
  const keeps = there?.worker && there.worker === screen && there.by === choicesOf(options, writing);
  const laidOut = keeps ? there.number : null;
  const making = (keeps && screen) || client();
  // Pages that are asked for meanwhile come from another worker.
  if (keeps) screen = null;
  const ask = { project, options, writing, pictures: [...pictures], laidOut };
  const make = async () => {
    const settled = await making.ask('make', () => ask, tell);
    if (keeps && settled && screen === null) screen = making;
    else making.close();
    const made = inner(settled);
    if (!made?.ok) return made;
    const { bytes, ...rest } = made.value;
    return ok({ ...rest, file: new Blob([bytes as Uint8Array<ArrayBuffer>], { type: 'application/pdf' }) });
  };
  return { answer: keeps ? last.then(make) : make(), cancel: () => making.close() };
}

function client(): WorkerClient<PatternJobs> {
  return new WorkerClient<PatternJobs>({
    start: newWorker,
    explain: (reason, job) =>
      phrase(
        job === 'make'
          ? 'The pattern could not be made ({reason}). The quilt is untouched; try again.'
          : 'The pages could not be laid out ({reason}).',
        { reason },
      ),
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
