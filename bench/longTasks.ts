// The longest task of the page while something is done in it, in processor time, which other work of the machine does not lengthen.
import type { Browser, Locator, Page } from 'playwright';
import { writeProject } from '../src/model/reading/read';
import { freshPage, openFile, PAUSE, printed, quiltFile } from './page';
import type { BenchRow } from './row';

/** Milliseconds of the processor that one task of the page may take. */
const MOST = 100;

/** Kinds of work that a task may consist of, as the trace calls them. */
const WORK = new Set([
  'FunctionCall',
  'Layout',
  'UpdateLayoutTree',
  'PrePaint',
  'Paint',
  'MajorGC',
  'ParseHTML',
  'v8.compile',
]);
/** Milliseconds that a shuffle goes on before it is stopped, which offers what it has found. */
const SHUFFLED = 3000;

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  /** Microseconds on the clock: from when, and for how long. */
  readonly ts: number;
  readonly dur?: number;
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
  await browser.startTracing(page, {
    categories: ['toplevel', 'devtools.timeline', 'disabled-by-default-devtools.timeline'],
  });
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
  const longest = tasks.reduce((most, task) => (task.tdur! > most.tdur! ? task : most));
  const took = longest.tdur! / 1000;
  return {
    name: `longest task while ${name}, processor time`,
    toReach: `≤ ${MOST} ms`,
    measured: `${took.toFixed(0)} ms (${mainlyIn(longest, traceEvents)})`,
    ok: took <= MOST,
  };
}

/** What of the browser's work took most of a task, with its milliseconds. */
function mainlyIn(task: TraceEvent, all: readonly TraceEvent[]): string {
  const inside = all.filter(
    ({ name, pid, tid, ts, tdur }) =>
      WORK.has(name) &&
      pid === task.pid &&
      tid === task.tid &&
      tdur &&
      ts >= task.ts &&
      ts < task.ts + task.dur!,
  );
  const [most] = inside.toSorted((one, other) => other.tdur! - one.tdur!);
  return most ? `${most.name} ${(most.tdur! / 1000).toFixed(0)}` : 'the browser’s own';
}

/**
 * What presses a control, found beforehand: to look for it by its name asks the whole page, in a task of its own that takes 100 ms at 400
 * blocks and is the test's, not the tool's.
 */
async function pressing(page: Page, control: Locator): Promise<() => Promise<void>> {
  const box = await control.first().boundingBox();
  if (!box) throw new Error('pressing: the control is not on the page');
  return () => page.mouse.click(box.x + box.width / 2, box.y + box.height / 2);
}

/** What takes long in the page: a large quilt opened, a whole new order hung, the pattern and the picture made. */
export async function longTaskRows(browser: Browser, url: string): Promise<BenchRow[]> {
  const page = await freshPage(browser);
  await page.goto(url);
  await page.waitForTimeout(2 * PAUSE);
  const button = (name: string) => page.getByRole('button', { name, exact: true });
  const go = (list: string, name: string) =>
    page.getByRole('navigation', { name: list }).getByRole('button', { name }).first().click();
  const measure = (name: string, act: () => Promise<void>) => longestTask(name, browser, page, act);
  const rows: BenchRow[] = [];
  const large = writeProject(printed(20, 20));
  await page.getByRole('button', { name: /^Quilt:/ }).click();
  const field = page.getByLabel('Quilt file');
  await field.waitFor({ state: 'attached' });
  const handle = (await field.elementHandle())!;
  rows.push(
    await measure('400 printed blocks are opened', async () => {
      await handle.setInputFiles(quiltFile(large));
      await page.waitForSelector('[data-cell="399"]', { state: 'attached' });
      await page.waitForTimeout(2 * PAUSE);
    }),
  );
  await go('Order of work', 'Wall');
  await button('Shuffle').first().click();
  await page.waitForTimeout(SHUFFLED);
  await button('Stop').click();
  await button('Use this layout').waitFor({ timeout: 90_000 });
  const use = await pressing(page, button('Use this layout'));
  const undo = await pressing(page, page.locator('.top-bar .history .button'));
  rows.push(
    await measure('a new order of 400 blocks is hung and undone', async () => {
      await use();
      await page.waitForTimeout(2 * PAUSE);
      await undo();
      await page.waitForTimeout(PAUSE);
    }),
  );
  rows.push(
    await measure('400 printed blocks are opened again from the browser', async () => {
      await page.reload({ waitUntil: 'commit' });
      await page.waitForSelector('[data-cell="399"]', { state: 'attached' });
      await page.waitForTimeout(2 * PAUSE);
    }),
  );
  await openFile(page, writeProject(printed(10, 8)));
  await go('Order of work', 'Finishing');
  rows.push(
    await measure('the pages of the pattern of 80 blocks are laid out and shown', async () => {
      await go('Parts of finishing', 'Pattern');
      await page.getByText(/^Page 1 of \d+$/).waitFor({ timeout: 60_000 });
      await page.waitForTimeout(PAUSE);
    }),
  );
  for (const [part, control, name] of [
    ['Pattern', 'Make the pattern (PDF)', 'the pattern of 80 blocks is made'],
    ['Picture', 'Save the picture (PNG)', 'the picture of 80 blocks is made'],
  ] as const) {
    await go('Parts of finishing', part);
    await page.waitForTimeout(2 * PAUSE);
    const make = await pressing(page, button(control));
    rows.push(
      await measure(name, async () => {
        const made = page.waitForEvent('download', { timeout: 120_000 });
        await make();
        await made;
      }),
    );
  }
  await page.close();
  return rows;
}
