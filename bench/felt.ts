// What a maker feels of the page, measured in the browser that the tests use.
import { firstWallRows } from './firstWall';
import { framesIn } from './frames';
import { longTaskRows } from './longTasks';
import { freshPage, openBrowser, served } from './page';
import { readingFrameRows } from './readingFrames';
import type { BenchRow, Extent } from './row';
import { wallFrameRows } from './wallFrames';

export async function benchFelt(extent: Extent): Promise<BenchRow[]> {
  const tool = await served(4999);
  const browser = await openBrowser();
  try {
    const blank = await freshPage(browser);
    const empty = await framesIn(4)(blank, async () => {});
    await blank.close();
    return [
      ...(await firstWallRows(browser, tool)),
      ...(await longTaskRows(browser, tool.url)),
      ...(await wallFrameRows(browser, tool.url, empty, extent)),
      ...(await readingFrameRows(browser, tool.url, empty)),
    ];
  } finally {
    await browser.close();
    await tool.close();
  }
}
