// The longest task of the page while something is done in it, in processor time, which other work of the machine does not lengthen.
import type { Browser, Page } from 'playwright';
import type { BenchRow } from './row';

/** Milliseconds of the processor that one task of the page may take. */
const MOST = 100;

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  /** Microseconds of the processor. */
  readonly tdur?: number;
  readonly args?: { readonly name?: string };
}

/** Traces the page during `act`. */
export async function longestTask(
  name: string,
  browser: Browser,
  page: Page,
  act: () => Promise<void>,
): Promise<BenchRow> {
  await browser.startTracing(page, { categories: ['toplevel', 'disabled-by-default-devtools.timeline'] });
  await act();
  const { traceEvents } = JSON.parse(String(await browser.stopTracing())) as { traceEvents: TraceEvent[] };
  const thread = ({ pid, tid }: TraceEvent) => `${pid} ${tid}`;
  const pages = new Set(
    traceEvents
      .filter((event) => event.name === 'thread_name' && event.args?.name === 'CrRendererMain')
      .map(thread),
  );
  const tasks = traceEvents.filter(
    (event) => event.name.endsWith('RunTask') && event.tdur !== undefined && pages.has(thread(event)),
  );
  if (tasks.length === 0) throw new Error(`longestTask: the trace of ${name} has no task with its time`);
  const longest = tasks.reduce((most, { tdur = 0 }) => Math.max(most, tdur / 1000), 0);
  return {
    name: `longest task while ${name}, processor time`,
    toReach: `≤ ${MOST} ms`,
    measured: `${longest.toFixed(0)} ms`,
    ok: longest <= MOST,
  };
}
