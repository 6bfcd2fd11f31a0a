// The first visit: how large the first script is, and how soon the wall is drawn, against a page of React and the drawing alone
// (bench/bare). Both are visited in turn by a browser that has nothing of them.
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import react from '@vitejs/plugin-react';
import type { Browser } from 'playwright';
import { BUDGET, firstScriptBytes, scriptsOf } from '../scripts/firstScript';
import { demo } from '../tests/demo';
import { freshPage, type Served, served } from './page';
import type { BenchRow } from './row';

const VISITS = 3;
const MOST = 1.2;
/**
 * Written as text, because what tsx makes of a function does not run in a page. Tells when the frames were painted in which the wall is first
 * seen, and in which it takes hands.
 */
const WATCH = `
  const painted = (selector) => new Promise((done) => {
    const look = () => {
      const there = document.querySelector(selector);
      if (!there || there.getClientRects().length === 0) return void requestAnimationFrame(look);
      requestAnimationFrame(() => done(performance.now()));
    };
    requestAnimationFrame(look);
  });
  globalThis.wallDrawn = painted('svg .seen path');
  globalThis.wallInHand = painted('svg [data-cell]');`;

export async function firstWallRows(browser: Browser, tool: Served): Promise<BenchRow[]> {
  const bare = await served(5099, { configFile: false, root: 'bench/bare', base: './', plugins: [react()], build: { target: 'es2022' } }, (folder) =>
    writeFileSync(join(folder, 'quilt.json'), JSON.stringify(demo('harbour-reading-corner'))),
  ); // biome-ignore format: short
  try {
    const times = { drawn: [] as number[], inHand: [] as number[], bare: [] as number[] };
    for (let visit = 0; visit < VISITS; visit += 1) {
      times.bare.push(await timeOf(browser, bare.url, ['wallDrawn']).then(([drawn]) => drawn!));
      const [drawn, inHand] = await timeOf(browser, tool.url, ['wallDrawn', 'wallInHand']);
      times.drawn.push(drawn!);
      times.inHand.push(inHand!);
    }
    const [ours, inHand, theirs] = [median(times.drawn), median(times.inHand), median(times.bare)];
    const ratio = ours / theirs;
    return [
      firstScriptRow(tool),
      {
        name: 'first wall drawn, against React and the drawing alone',
        toReach: `≤ ${MOST} ×`,
        measured: `${ratio.toFixed(2)} × (${ours.toFixed(0)} against ${theirs.toFixed(0)} ms, median of ${VISITS})`,
        ok: ratio <= MOST,
      },
      {
        name: 'first wall that takes hands, against the same',
        toReach: 'reported',
        measured: `${(inHand / theirs).toFixed(2)} × (${inHand.toFixed(0)} ms)`,
        ok: true,
      },
    ];
  } finally {
    await bare.close();
  }
}

function firstScriptRow({ files }: Served): BenchRow {
  const page = files.find((file) => file.fileName === 'index.html');
  if (page?.type !== 'asset') throw new Error('firstScriptRow: the build has no index.html');
  const bytes = firstScriptBytes(String(page.source), scriptsOf(files));
  return {
    name: 'first script, gzip',
    toReach: `≤ ${BUDGET / 1000} kB`,
    measured: `${(bytes / 1000).toFixed(1)} kB`,
    ok: bytes <= BUDGET,
  };
}

/** Milliseconds from the start of the visit to the frames that WATCH tells of. */
async function timeOf(browser: Browser, url: string, watched: readonly string[]): Promise<number[]> {
  const page = await freshPage(browser);
  await page.addInitScript(WATCH);
  await page.goto(url);
  const times = await page.evaluate<number[]>(
    `Promise.all([${watched.map((one) => `globalThis.${one}`).join()}])`,
  );
  await page.close();
  return times;
}

function median(times: readonly number[]): number {
  return times.toSorted((one, other) => one - other)[Math.floor(times.length / 2)]!;
}
