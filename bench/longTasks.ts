// The longest task of the page while something is done in it, in processor time, which other work of the machine does not lengthen.
import type { Browser, Page } from 'playwright';
import { writeProject } from '../src/model/reading/read';
import { freshPage, openFile, PAUSE, printed } from './page';
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
async function longestTask(
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

/** What takes long in the page: a large quilt opened, a whole new order hung, the pattern and the picture made. */
export async function longTaskRows(browser: Browser, url: string): Promise<BenchRow[]> {
  const page = await freshPage(browser);
  await page.goto(url);
  await page.waitForTimeout(3 * PAUSE);
  const press = (name: string) => page.getByRole('button', { name, exact: true }).first().click();
  const go = (list: string, name: string) =>
    page.getByRole('navigation', { name: list }).getByRole('button', { name }).first().click();
  const measure = (name: string, act: () => Promise<void>) => longestTask(name, browser, page, act);
  const rows = [
    await measure('400 printed blocks are opened', () => openFile(page, writeProject(printed(20, 20)))),
  ];
  await go('Order of work', 'Wall');
  await press('Shuffle');
  await page.getByRole('button', { name: 'Use this layout' }).waitFor({ timeout: 90_000 });
  rows.push(
    await measure('a new order of 400 blocks is hung and undone', async () => {
      await press('Use this layout');
      await page.waitForTimeout(PAUSE);
      await page.getByRole('button', { name: /^Undo:/ }).click();
      await page.waitForTimeout(PAUSE);
    }),
  );
  await openFile(page, writeProject(printed(10, 8)));
  await go('Order of work', 'Finishing');
  for (const [part, button, name] of [
    ['Pattern', 'Make the pattern (PDF)', 'the pattern of 80 blocks is made'],
    ['Picture', 'Save the picture (PNG)', 'the picture of 80 blocks is made'],
  ] as const) {
    await go('Parts of finishing', part);
    // What is on show comes first, so that only the making is measured.
    if (part === 'Pattern') await page.getByText(/^Page 1 of \d+$/).waitFor({ timeout: 60_000 });
    await page.waitForTimeout(3 * PAUSE);
    rows.push(
      await measure(name, async () => {
        const made = page.waitForEvent('download', { timeout: 120_000 });
        await press(button);
        await made;
      }),
    );
  }
  await page.close();
  return rows;
}
