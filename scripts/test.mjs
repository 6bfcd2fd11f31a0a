// npm test: sets up what is missing (packages, a browser), then checks everything. Ends with "N passed, N failed" on a line
// of its own; a step that fails without a failing test of its own (types, lint, build) counts as one failure. Every
// quarter of a minute a line tells what runs and how far it is.
import { spawn } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { delimiter, dirname, join } from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { provideChromium, provideEngines } from './browser.mjs';
import { installPackages } from './install.mjs';

process.chdir(dirname(dirname(fileURLToPath(import.meta.url))));
const RESULTS = 'test-results';
const UNIT_REPORT = `${RESULTS}/unit.json`;
const BROWSER_REPORT = `${RESULTS}/browser.json`;
const TELL_EVERY = 15_000;

const startedAt = Date.now();
installPackages();
rmSync(RESULTS, { recursive: true, force: true });
mkdirSync(RESULTS, { recursive: true });
const steps = [];
/** What runs now: how far each step is, in words, by its name. */
const running = new Map();
const telling = setInterval(tellHowFar, TELL_EVERY);
/** Why there is no browser, in words; empty when there is one. */
let lacking = 'No Chromium was found and none could be installed. Install one, or set CHROMIUM_PATH.';
let chromium = null;
try {
  chromium = provideChromium();
} catch (error) {
  lacking = error.message;
}

provideEngines();

// Two lanes for two cores: the unit tests in one, in the other all else up to the build, then the story in WebKit and Firefox.
// The browser tests come last and alone, because they wait for frames.
await Promise.all([
  run(
    'unit tests',
    `vitest run --reporter=default --reporter=json --outputFile.json=${UNIT_REPORT}`,
    countUnitTests,
    unitFilesDone,
  ),
  (async () => {
    await run('types', 'npm run --silent typecheck');
    await run('lint', 'npm run --silent lint');
    await run('unused code', 'npm run --silent unused');
    await run('known holes', 'npm run --silent audit', tellLeftOut);
    await run('build', 'vite build');
    if (built()) await run('other engines', 'npm run --silent test:engines', countEngineTests, linesDone);
  })(),
]);
if (!chromium) {
  skip('browser tests', lacking);
} else if (!built()) {
  skip('browser tests', 'Not run: there is no build to test.');
} else {
  await run('browser tests', 'playwright test', countBrowserTests, browserTestsDone, {
    CHROMIUM_PATH: chromium,
  });
}
clearInterval(telling);
report();

/** Runs one step to its end, keeps what it prints, and shows it whole if it failed. `done` reads from that how far it is. */
async function run(name, command, count = () => ({ passed: 0, failed: 0 }), done = () => '', env = {}) {
  const from = Date.now();
  const path = `${join(process.cwd(), 'node_modules/.bin')}${delimiter}${process.env.PATH}`;
  const child = spawn(command, {
    shell: true,
    // Without colours, which some programs would put on for any FORCE_COLOR.
    env: { ...process.env, FORCE_COLOR: undefined, NO_COLOR: '1', ...env, PATH: path },
  });
  let printed = '';
  running.set(name, () => done(printed));
  for (const stream of [child.stdout, child.stderr]) stream.on('data', (data) => (printed += data));
  const status = await new Promise((resolve) => {
    child.on('error', (error) => {
      printed += String(error);
      resolve(1);
    });
    child.on('close', resolve);
  });
  running.delete(name);
  finish(name, status === 0, count(printed), (Date.now() - from) / 1000, printed);
}

function built() {
  return steps.some((step) => step.name === 'build' && step.good);
}

function tellHowFar() {
  const words = Array.from(running, ([name, done]) => [name, done()].filter(Boolean).join(' '));
  console.log(`${secondsSince(startedAt)} s: ${words.join('; ')}`);
}

/** Vitest prints a line for every file it has done; how many there are is in the folder. */
function unitFilesDone(printed) {
  const files = readdirSync('tests', { recursive: true }).filter((path) => /\.test\.tsx?$/.test(path));
  return `${countLines(printed, /^ \S+ tests\/\S+ \(\d+ test/gm)} of ${files.length} files`;
}

/** Playwright says how many tests there are, and prints a numbered line for each it has done. */
function browserTestsDone(printed) {
  const all = /^Running (\d+) tests?/m.exec(printed)?.[1];
  return all ? `${countLines(printed, /^ +\S+ +\d+ \[/gm)} of ${all}` : '';
}

/** The story prints a line for every check it has done. */
function linesDone(printed) {
  return `${countLines(printed, /^(ok|not ok) /gm)} checks`;
}

function countLines(text, line) {
  return (text.match(line) ?? []).length;
}

function secondsSince(from) {
  return ((Date.now() - from) / 1000).toFixed(0);
}

function skip(name, reason) {
  finish(name, false, { passed: 0, failed: 0 }, 0, reason);
}

function finish(name, good, counts, seconds, printed) {
  steps.push({ name, good, ...counts });
  const tests = counts.passed + counts.failed > 0 ? `, ${counts.passed} passed, ${counts.failed} failed` : '';
  console.log(`${good ? 'ok    ' : 'FAILED'} ${name} (${seconds.toFixed(1)} s${tests})`);
  if (!good) console.log(`${printed.trimEnd()}\n`);
}

/** Shows what a step left out, and why; it counts no tests. */
function tellLeftOut(printed) {
  for (const line of printed.match(/^# (?:No registry told|.* is not on this machine).*$/gm) ?? [])
    console.log(line);
  return { passed: 0, failed: 0 };
}

/** The story's last line: "N passed, N failed". */
function countEngineTests(printed) {
  tellLeftOut(printed);
  const [, passed = 0, failed = 0] = /^(\d+) passed, (\d+) failed$/m.exec(printed) ?? [];
  return { passed: Number(passed), failed: Number(failed) };
}

/** Vitest's report: tests, and files that could not be loaded (they have no tests to fail). */
function countUnitTests() {
  const read = readReport(UNIT_REPORT);
  const unloaded = (read?.testResults ?? []).filter(
    (file) => file.status === 'failed' && file.assertionResults.length === 0,
  );
  return { passed: read?.numPassedTests ?? 0, failed: (read?.numFailedTests ?? 0) + unloaded.length };
}

/** Playwright's report; a test that passes only at a second try counts as failed. */
function countBrowserTests() {
  const stats = readReport(BROWSER_REPORT)?.stats;
  return { passed: stats?.expected ?? 0, failed: (stats?.unexpected ?? 0) + (stats?.flaky ?? 0) };
}

function readReport(path) {
  try {
    return JSON.parse(readFileSync(path, 'utf8'));
  } catch {
    return null;
  }
}

function report() {
  const bad = steps.filter((step) => !step.good);
  const passed = steps.reduce((sum, step) => sum + step.passed, 0);
  const failed = steps.reduce((sum, step) => sum + (step.good ? step.failed : Math.max(1, step.failed)), 0);
  console.log(`\n${secondsSince(startedAt)} s in all`);
  if (bad.length > 0) console.log(`Not in order: ${bad.map((step) => step.name).join(', ')}`);
  console.log(`${passed} passed, ${failed} failed`);
  process.exitCode = failed > 0 || bad.length > 0 ? 1 : 0;
}
