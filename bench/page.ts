// The page under measurement: a build of its own, a server, and the browser that the tests use.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium, type Page } from 'playwright';
import { build, type InlineConfig, preview, type Rolldown } from 'vite';
import { findChromium } from '../scripts/browser.mjs';
import { PRINT_MOTIFS, type Project } from '../src/model/project';
import { scrappyTop } from '../tests/balance/tops';

/** Milliseconds after something is done, in which the analysis comes. */
export const PAUSE = 1000;

/** A built page that is served. */
export interface Served {
  readonly url: string;
  readonly files: Rolldown.RolldownOutput['output'];
  readonly close: () => Promise<void>;
}

/** Builds a page into a folder that is gone afterwards, and serves it. `prepare` gets the folder. */
export async function served(
  port: number,
  config: InlineConfig = {},
  prepare: (folder: string) => void = () => undefined,
): Promise<Served> {
  const folder = mkdtempSync(join(tmpdir(), 'wedgewall-bench-'));
  const into = { ...config.build, outDir: folder, emptyOutDir: true };
  const quiet = { ...config, logLevel: 'silent' as const, build: into };
  const built = (await build(quiet)) as Rolldown.RolldownOutput;
  prepare(folder);
  const server = await preview({ ...quiet, preview: { port, strictPort: false } });
  return {
    url: server.resolvedUrls!.local[0]!,
    files: built.output,
    close: async () => {
      await server.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

export function openBrowser(): Promise<Browser> {
  const executablePath = findChromium();
  return chromium.launch({
    ...(executablePath ? { executablePath } : {}),
    args: ['--no-sandbox', '--disable-gpu', '--disable-quic'],
  });
}

/** A page of a visitor who was never here. */
export function freshPage(browser: Browser): Promise<Page> {
  return browser.newPage({ viewport: { width: 1440, height: 900 }, serviceWorkers: 'block' });
}

/** The text of a quilt as a file that is chosen. */
export function quiltFile(text: string) {
  return { name: 'bench.wedgewall.json', mimeType: 'application/json', buffer: Buffer.from(text) };
}

/** Opens a quilt from the text of its file, and waits until it is analysed. */
export async function openFile(page: Page, text: string): Promise<void> {
  await page.getByRole('button', { name: /^Quilt:/ }).click();
  await page.getByLabel('Quilt file').setInputFiles(quiltFile(text));
  await page.getByRole('dialog').waitFor({ state: 'hidden' });
  await page.waitForTimeout(2 * PAUSE);
}

/** A top by chance in which every fabric is printed. */
export function printed(rows: number, columns: number): Project {
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
