// What a maker feels of the page, measured in the browser that the tests use.
import { firstWallRows } from './firstWall';
import { longTaskRows } from './longTasks';
import { openBrowser, served } from './page';
import type { BenchRow, Extent } from './row';
import { wallFrameRows } from './wallFrames';

export async function benchFelt(extent: Extent): Promise<BenchRow[]> {
  const tool = await served(4999);
  const browser = await openBrowser();
  try {
    return [
      ...(await firstWallRows(browser, tool)),
      ...(await longTaskRows(browser, tool.url)),
      ...(await wallFrameRows(browser, tool.url, extent)),
    ];
  } finally {
    await browser.close();
    await tool.close();
  }
}
