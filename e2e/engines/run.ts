// Walks the story in WebKit and Firefox, side by side, on the built tool in dist/. Ends with "N passed, N failed"; an engine that this
// machine has not and cannot get is told and not counted.
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import process from 'node:process';
import { photograph } from '../photos';
import { serveBuild } from '../serve.mjs';
import { Browser } from './browser';
import { type Driver, freePort, type Start } from './driver';
import { firefoxBrowser, openFirefox } from './firefox';
import { type Place, STORY } from './story';
import { openWebKit, webkitBrowser } from './webkit';

interface Engine {
  readonly name: string;
  readonly there: () => string | null;
  readonly open: (start: Start) => Promise<Driver>;
  readonly finger: Place['finger'];
}

const ENGINES: readonly Engine[] = [
  { name: 'WebKit', there: webkitBrowser, open: openWebKit, finger: 'mouse' },
  { name: 'Firefox', there: firefoxBrowser, open: openFirefox, finger: 'touch' },
];
const folder = mkdtempSync(join(tmpdir(), 'engines-'));
const PHOTOGRAPH = join(folder, 'checks.jpg');
writeFileSync(PHOTOGRAPH, await photograph());
const TWELVE = resolve('demo-data/keepers-winter.json');

/** What a check gave, as it is printed. */
interface Verdict {
  readonly good: boolean;
  readonly line: string;
}

async function check(name: string, work: () => Promise<void>): Promise<Verdict> {
  const from = Date.now();
  try {
    await work();
    return { good: true, line: `ok     ${name} (${Date.now() - from} ms)` };
  } catch (error) {
    return { good: false, line: `not ok ${name}: ${error instanceof Error ? error.message : String(error)}` };
  }
}

/** Serves the built tool; gives its address and what stops it. */
async function serve(): Promise<{ url: string; stop: () => void }> {
  const port = await freePort();
  const server = await serveBuild(port);
  const stop = () => {
    server.close();
    server.closeAllConnections();
  };
  return { url: `http://localhost:${port}/`, stop };
}

/** The story in one fresh browser; null when the engine's own process ended under it. */
async function walk(engine: Engine, start: Start): Promise<readonly Verdict[] | null> {
  const { url, stop } = await serve();
  const driver = await engine.open(start);
  const browser = new Browser(driver);
  const verdicts: Verdict[] = [];
  try {
    console.log(`# ${engine.name} ${driver.version}`);
    await browser.resize(1024, 680);
    await browser.go(url);
    const place: Place = {
      browser,
      finger: engine.finger,
      url,
      stopServer: stop,
      twelve: TWELVE,
      photograph: PHOTOGRAPH,
    };
    for (const [name, tell] of Object.entries(STORY)) {
      const verdict = await check(`${engine.name}: ${name}`, () => tell(place));
      verdicts.push(verdict);
      console.log(verdict.line);
      if (driver.faults.some((fault) => fault.includes('CRASHED'))) return null;
    }
    return verdicts;
  } finally {
    await browser.close();
    stop();
  }
}

/**
 * Walks the story; once more where a check failed, which is told, or the engine's process ended (WebKitGTK's does, about once in 40
 * visits, on any page).
 */
async function walkSurely(engine: Engine, start: Start): Promise<readonly Verdict[]> {
  const first = await walk(engine, start);
  const failed = first?.find(({ good }) => !good);
  if (first && !failed) return first;
  console.log(`# Needed a second try: ${failed?.line ?? `the process of ${engine.name} ended by itself`}`);
  const second = await walk(engine, start);
  return second ?? [{ good: false, line: `not ok ${engine.name}: its process ended twice` }];
}

/** Everything in one engine; an engine that cannot even be opened fails. */
async function walkAll(engine: Engine, start: Start): Promise<readonly Verdict[]> {
  try {
    return await walkSurely(engine, start);
  } catch (error) {
    console.log(`not ok ${engine.name}: ${error instanceof Error ? error.message : String(error)}`);
    return [{ good: false, line: engine.name }];
  }
}

/** A screen that nobody sees, which WebKitGTK needs: its name, and what takes it away. */
function unseenScreen(): Promise<{ display: string; close: () => void }> {
  return new Promise((done, refuse) => {
    const server = spawn('Xvfb', ['-displayfd', '3', '-screen', '0', '1600x1000x24', '-nolisten', 'tcp'], {
      stdio: ['ignore', 'ignore', 'ignore', 'pipe'],
    });
    server.once('error', refuse);
    server.stdio[3]?.once('data', (number) => {
      done({ display: `:${String(number).trim()}`, close: () => server.kill('SIGKILL') });
    });
  });
}

const wanted = process.argv.slice(2);
const engines = ENGINES.filter(({ name }) => wanted.length === 0 || wanted.includes(name));
for (const { name, there } of engines)
  if (!there()) console.log(`# ${name} is not on this machine: its story was not walked`);
const here = engines.filter(({ there }) => there() !== null);
const screen = here.length > 0 ? await unseenScreen() : null;
const start: Start = { folder, display: screen?.display ?? '' };
let verdicts: readonly Verdict[] = [];
try {
  verdicts = (await Promise.all(here.map((engine) => walkAll(engine, start)))).flat();
} finally {
  screen?.close();
  try {
    rmSync(folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
  } catch {
    // A process of an engine may still write while it ends; the system empties its own folder for such files.
  }
}
const failed = verdicts.filter(({ good }) => !good).length;
console.log(`${verdicts.length - failed} passed, ${failed} failed`);
process.exit(failed > 0 ? 1 : 0);
