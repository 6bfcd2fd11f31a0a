// Turning and swapping on a wall of printed cloth in a real browser: the frames must come as they do on an empty page, however
// many blocks hang. Both are measured in one run, so that the machine does not matter.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium, type Page } from 'playwright';
import sharp from 'sharp';
import { build, preview } from 'vite';
import { findChromium } from '../scripts/browser.mjs';
import type { PictureId, StoredPicture } from '../src/model/picture/picture';
import { takePicture } from '../src/model/picture/takePicture';
import { PRINT_MOTIFS, type Project } from '../src/model/project';
import { writeProject } from '../src/model/reading/read';
import { scrappyTop } from '../tests/balance/tops';
import { longestTask } from './longTasks';
import type { BenchRow } from './row';

/** Rows and columns of the walls, the first as the yardstick for the others. */
const WALLS = [
  [5, 4],
  [10, 8],
  [14, 10],
  [20, 20],
] as const;
/** Milliseconds in which a turn or a swap is played. */
const PLAYED = 450;
/** Milliseconds between two of them, in which the analysis comes. */
const PAUSE = 1000;
const TIMES = 6;
/** Pixels on a side of the tile of a photographed fabric. */
const TILE = 256;
/** How much longer than on an empty page the 95th of 100 frames may take. */
const MOST = 3;

/** Written as text, because what tsx makes of a function does not run in a page. */
const WATCH = `
  globalThis.frames = [];
  (() => {
    const frames = globalThis.frames;
    let last = performance.now();
    const next = (now) => {
      frames.push(now - last);
      last = now;
      if (globalThis.frames === frames && frames.length < 1000) requestAnimationFrame(next);
    };
    requestAnimationFrame(next);
  })()`;

/** Frames of one wall, milliseconds: 95 of 100 are shorter than `p95`. */
interface Frames {
  readonly median: number;
  readonly p95: number;
  readonly worst: number;
}

/** Builds the page, plays turns and swaps by keys, and measures from frame to frame. */
export async function benchWallFrames(): Promise<BenchRow[]> {
  const folder = mkdtempSync(join(tmpdir(), 'wedgewall-bench-'));
  const quiet = { logLevel: 'silent' as const, build: { outDir: folder, emptyOutDir: true } };
  await build(quiet);
  const server = await preview({ ...quiet, preview: { port: 4999, strictPort: false } });
  const executablePath = findChromium();
  const browser = await chromium.launch({
    ...(executablePath ? { executablePath } : {}),
    args: ['--no-sandbox', '--disable-gpu', '--disable-quic'],
  });
  const open = async () => {
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 }, serviceWorkers: 'block' });
    return page;
  };
  try {
    const url = server.resolvedUrls!.local[0]!;
    const blank = await open();
    await blank.goto('about:blank');
    const empty = await framesOf(blank, async () => {});
    await blank.close();
    const rows: BenchRow[] = [];
    rows.push(...(await longTaskRows(browser, await open(), url)));
    rows.push(...(await photographedRows(await open(), url, empty)));
    for (const [down, across] of WALLS) {
      const page = await open();
      await page.goto(url);
      await openFile(page, writeProject(printed(down, across)));
      const turned = await framesOf(page, (time) => turn(page, time));
      const swapped = await framesOf(page, () => swap(page));
      rows.push(
        row(`a turn among ${down * across} printed blocks`, turned, empty),
        row(`a swap among ${down * across} printed blocks`, swapped, empty),
      );
      await page.close();
    }
    return rows;
  } finally {
    await browser.close();
    await server.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

/** What takes long in the page: a large quilt opened, a whole new order hung, the pattern and the picture made. */
async function longTaskRows(browser: Browser, page: Page, url: string): Promise<BenchRow[]> {
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

/** Frames of the largest wall in photographed fabrics. */
async function photographedRows(page: Page, url: string, empty: Frames): Promise<BenchRow[]> {
  const [down, across] = WALLS[WALLS.length - 1]!;
  await page.goto(url);
  await openFile(page, await photographed(down, across));
  const wall = `${down * across} photographed blocks`;
  const rows = [
    row(`a turn among ${wall}`, await framesOf(page, (time) => turn(page, time)), empty),
    row(`a swap among ${wall}`, await framesOf(page, () => swap(page)), empty),
    row(`a drag among ${wall}`, await framesOf(page, (time) => drag(page, time)), empty),
  ];
  await page.close();
  return rows;
}

function row(name: string, frames: Frames, empty: Frames): BenchRow {
  const ratio = frames.p95 / empty.p95;
  const said = [frames.median, frames.p95, frames.worst].map((one) => one.toFixed(0)).join(', ');
  return {
    name: `frames of ${name}, 95 of 100 (median, p95, worst: ${said} ms)`,
    toReach: `≤ ${MOST} × an empty page`,
    measured: `${ratio.toFixed(1)} × ${empty.p95.toFixed(0)} ms`,
    ok: ratio <= MOST,
  };
}

async function openFile(page: Page, text: string): Promise<void> {
  await page.getByRole('button', { name: /^Quilt:/ }).click();
  await page.getByLabel('Project file').setInputFiles({
    name: 'bench.wedgewall.json',
    mimeType: 'application/json',
    buffer: Buffer.from(text),
  });
  await page.getByRole('dialog').waitFor({ state: 'hidden' });
  await page.waitForTimeout(2 * PAUSE);
}

/** Carries a block over its neighbours and lets it go where it was. */
async function drag(page: Page, time: number): Promise<void> {
  const box = (await page.locator(`[data-block="${time + 2}"]`).boundingBox())!;
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let step = 1; step <= 12; step += 1) await page.mouse.move(x + step * 12, y + step * 4);
  for (let step = 12; step >= 0; step -= 1) await page.mouse.move(x + step * 12, y + step * 4);
  await page.mouse.up();
}

async function turn(page: Page, time: number): Promise<void> {
  await page.locator(`[data-block="${time + 2}"]`).focus();
  await page.keyboard.press('r');
}

/** Swaps two blocks side by side. */
async function swap(page: Page): Promise<void> {
  await page.locator('[data-cell="5"]').focus();
  await page.keyboard.press('Space');
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('Space');
}

/** Acts some times and measures the frames just after each. */
async function framesOf(page: Page, act: (time: number) => Promise<void>): Promise<Frames> {
  const all: number[] = [];
  for (let time = 0; time < TIMES; time += 1) {
    await page.evaluate(WATCH);
    await act(time);
    await page.waitForTimeout(PLAYED);
    const frames = await page.evaluate<number[]>('frames.splice(0)');
    all.push(...frames.slice(1));
    await page.waitForTimeout(PAUSE);
  }
  const sorted = all.toSorted((one, other) => one - other);
  const at = (share: number) => sorted[Math.floor(share * (sorted.length - 1))] ?? 0;
  return { median: at(0.5), p95: at(0.95), worst: at(1) };
}

/** A top by chance in which every fabric is printed. */
function printed(rows: number, columns: number): Project {
  const project = scrappyTop({ rows, columns, seed: 5 });
  return {
    ...project,
    fabrics: project.fabrics.map((fabric, at) => ({
      ...fabric,
      cloth: {
        kind: 'print',
        print: {
          motif: PRINT_MOTIFS[at % PRINT_MOTIFS.length]!,
          inks: ['#f4efe2', '#22303c', '#a9603a'],
          repeat: 1.8,
          angle: 0,
          seed: at + 1,
        },
      },
    })),
  };
}

/** The file of a top in which every fabric is photographed, each from a tile of its own. */
async function photographed(rows: number, columns: number): Promise<string> {
  const project = scrappyTop({ rows, columns, seed: 5 });
  const pictures = new Map<PictureId, StoredPicture>();
  const fabrics = await Promise.all(
    project.fabrics.map(async (fabric, at) => {
      const data = new Uint8Array(TILE * TILE * 3).map(
        (_, byte) => (byte * (at + 3) + (byte >> 8) * 7) % 251,
      );
      const raw = { width: TILE, height: TILE, channels: 3 as const };
      const taken = takePicture(await sharp(data, { raw }).blur(2).jpeg({ quality: 85 }).toBuffer());
      if (!taken.ok) throw new Error(taken.problems[0]!.message.say);
      pictures.set(taken.value.id, taken.value.picture);
      const colours = [{ hex: fabric.colour, share: 1 }];
      const photo = {
        picture: taken.value.id,
        width: 3,
        height: 3,
        angle: 0,
        colours,
        spread: 5,
        scale: null,
      };
      return { ...fabric, cloth: { kind: 'photo' as const, photo } };
    }),
  );
  return writeProject({ ...project, fabrics }, pictures);
}
