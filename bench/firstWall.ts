// The first visit: how large the first script is, and how soon the wall is drawn, against a page of React and the drawing alone
// (bench/bare). Both are visited in turn by a browser that has nothing of them.
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import react from '@vitejs/plugin-react';
import type { Browser } from 'playwright';
import { BUDGET, firstScriptBytes } from '../scripts/firstScript';
import { demo } from '../tests/demo';
import { freshPage, type Served, served } from './page';
import type { BenchRow } from './row';

const VISITS = 7;
const MOST = 1.2;

/** Written as text, because what tsx makes of a function does not run in a page. Tells when the frame with the wall was painted. */
const WATCH = `
  globalThis.wallDrawn = new Promise((done) => {
    const look = () => {
      if (!document.querySelector('svg .seen path')) return void requestAnimationFrame(look);
      requestAnimationFrame(() => done(performance.now()));
    };
    requestAnimationFrame(look);
  });`;

export async function firstWallRows(browser: Browser, tool: Served): Promise<BenchRow[]> {
  const bare = await served(5099, { configFile: false, root: 'bench/bare', base: './', plugins: [react()], build: { target: 'es2022' } }, (folder) =>
    writeFileSync(join(folder, 'quilt.json'), JSON.stringify(demo('harbour-reading-corner'))),
  ); // biome-ignore format: short
  try {
    const times = { tool: [] as number[], bare: [] as number[] };
    for (let visit = 0; visit < VISITS; visit += 1) {
      times.bare.push(await drawnAfter(browser, bare.url));
      times.tool.push(await drawnAfter(browser, tool.url));
    }
    const [ours, theirs] = [median(times.tool), median(times.bare)];
    const ratio = ours / theirs;
    return [
      firstScriptRow(tool),
      {
        name: 'first wall drawn, against React and the drawing alone',
        toReach: `≤ ${MOST} ×`,
        measured: `${ratio.toFixed(2)} × (${ours.toFixed(0)} against ${theirs.toFixed(0)} ms, median of ${VISITS})`,
        ok: ratio <= MOST,
      },
    ];
  } finally {
    await bare.close();
  }
}

function firstScriptRow({ files }: Served): BenchRow {
  const page = files.find((file) => file.fileName === 'index.html');
  if (page?.type !== 'asset') throw new Error('firstScriptRow: the build has no index.html');
  const scripts = files.filter((file) => file.type === 'chunk');
  const bytes = firstScriptBytes(String(page.source), scripts);
  return {
    name: 'first script, gzip',
    toReach: `≤ ${BUDGET / 1000} kB`,
    measured: `${(bytes / 1000).toFixed(1)} kB`,
    ok: bytes <= BUDGET,
  };
}

/** Milliseconds from the start of the visit to the frame with the wall. */
async function drawnAfter(browser: Browser, url: string): Promise<number> {
  const page = await freshPage(browser);
  await page.addInitScript(WATCH);
  await page.goto(url);
  const time = await page.evaluate<number>('globalThis.wallDrawn');
  await page.close();
  return time;
}

function median(times: readonly number[]): number {
  return times.toSorted((one, other) => one - other)[Math.floor(times.length / 2)]!;
}
