import { openBrowser, served, freshPage, openFile, PAUSE, printed } from './page';
import { writeProject } from '../src/model/reading/read';
import { writeFileSync } from 'node:fs';
const tool = await served(4999, { build: { minify: false } }); const browser = await openBrowser();
const page = await freshPage(browser);
await page.goto(tool.url); await page.waitForTimeout(2*PAUSE);
const press = (name: string) => page.getByRole('button', { name, exact: true }).first().click();
const go = (list: string, name: string) => page.getByRole('navigation', { name: list }).getByRole('button', { name }).first().click();
await openFile(page, writeProject(printed(10, 8)));
await go('Order of work', 'Finishing');
for (const [part, button] of [['Pattern','Make the pattern (PDF)'],['Picture','Save the picture (PNG)']] as const) {
  await go('Parts of finishing', part);
  if (part === 'Pattern') await page.getByText(/^Page 1 of \d+$/).waitFor({ timeout: 60_000 });
  await page.waitForTimeout(3 * PAUSE);
  await browser.startTracing(page, { categories: ['toplevel','devtools.timeline','disabled-by-default-devtools.timeline','v8','disabled-by-default-v8.cpu_profiler'] });
  const made = page.waitForEvent('download', { timeout: 120_000 });
  await press(button); await made;
  writeFileSync(`/tmp/speed/t-${part}.json`, await browser.stopTracing());
}
await browser.close(); await tool.close();
