// npm test: sets up what is missing (packages, a browser), then checks everything. Ends with "N passed, N failed" on a line
// of its own; a step that fails without a failing test of its own (types, lint, build) counts as one failure. Every
// quarter of a minute a line tells what runs and how far it is. There are three lanes for two cores, as a browser waits
// now and then: each takes the next step that can run as soon as it is free.
import { spawn } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { delimiter, dirname, join } from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { stripVTControlCharacters } from 'node:util';
import { provideChromium, provideEngines } from './browser.mjs';
import { installPackages } from './install.mjs';

process.chdir(dirname(dirname(fileURLToPath(import.meta.url))));
const RESULTS = 'test-results';
const UNIT_REPORT = `${RESULTS}/unit.json`;
const TELL_EVERY = 15_000;
/** Where playwright.config.ts has it put. */
const BROWSER_REPORT = `${RESULTS}/browser.json`;
const LANES = 3;

const startedAt = Date.now();
installPackages();
rmSync(RESULTS, { recursive: true, force: true });
mkdirSync(RESULTS, { recursive: true });
const steps = [];
/** Tests that passed only at a second try, each with its first error. */
const secondTries = [];
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

/** What is still to run, in order; what waits for the build runs when that is done. */
const waiting = [
  {
    name: 'unit tests',
    command: `vitest run --reporter=default --reporter=json --outputFile.json=${UNIT_REPORT}`,
    count: countUnitTests,
    done: unitFilesDone,
  },
  { name: 'build', command: 'vite build' },
  // Its two workers (playwright.config.ts) share out the tests among themselves until the last.
  ...(chromium ? [browserTests(chromium)] : []),
  { name: 'types', command: 'npm run --silent typecheck' },
  { name: 'lint', command: 'npm run --silent lint' },
  { name: 'unused code', command: 'npm run --silent unused' },
  { name: 'known holes', command: 'npm run --silent audit', count: tellLeftOut },
  ...['WebKit', 'Firefox'].map((engine) => ({
    name: `story in ${engine}`,
    command: `npm run --silent test:engines -- ${engine}`,
    onBuild: true,
    count: countEngineTests,
    done: linesDone,
  })),
];
/** Resolves once the build has ended, well or not. */
let buildEnded;
const buildEnds = new Promise((resolve) => (buildEnded = resolve));

await Promise.all(Array.from({ length: LANES }, lane));
if (!chromium) skip('browser tests', lacking);
clearInterval(telling);
report();

function browserTests(path) {
  return {
    name: 'browser tests',
    command: 'playwright test',
    onBuild: true,
    env: { CHROMIUM_PATH: path },
    count: countBrowserTests,
    done: browserTestsDone,
  };
}

/** Takes one step after another as long as there are any. */
async function lane() {
  while (waiting.length > 0) {
    const ended = steps.some(({ name }) => name === 'build');
    const at = waiting.findIndex(({ onBuild }) => ended || !onBuild);
    if (at < 0) {
      await buildEnds;
      continue;
    }
    const [step] = waiting.splice(at, 1);
    if (step.onBuild && !built()) skip(step.name, 'Not run: there is no build to test.');
    else await run(step);
    if (step.name === 'build') buildEnded();
  }
}

/** Runs one step to its end, keeps what it prints, and shows it whole if it failed. `done` reads from that how far it is. */
async function run({ name, command, count = () => ({ passed: 0, failed: 0 }), done = () => '', env = {} }) {
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
  for (const [, what] of printed.matchAll(/^# Needed a second try: (.*)$/gm)) secondTries.push(what);
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

/** Playwright's report; a test that passes at a second try counts as passed, and is named with what it failed by first. */
function countBrowserTests() {
  const read = readReport(BROWSER_REPORT);
  const { expected = 0, flaky = 0, unexpected = 0 } = read?.stats ?? {};
  for (const { file, title, tests } of specsOf(read?.suites ?? []))
    for (const { status, projectName, results } of tests)
      if (status === 'flaky')
        secondTries.push(`${file} [${projectName}] ${title}: ${firstLines(results[0].error?.message)}`);
  return { passed: expected + flaky, failed: unexpected };
}

function specsOf(suites) {
  return suites.flatMap(({ specs = [], suites: within = [] }) => [...specs, ...specsOf(within)]);
}

/** The beginning of an error in one line. */
function firstLines(message = 'no error was told') {
  return stripVTControlCharacters(message)
    .split('\n')
    .filter(Boolean)
    .slice(0, 4)
    .join(' ')
    .replace(/\s+/g, ' ');
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
  if (secondTries.length > 0) console.log(`Needed a second try:\n  ${secondTries.join('\n  ')}`);
  if (bad.length > 0) console.log(`Not in order: ${bad.map((step) => step.name).join(', ')}`);
  console.log(`${passed} passed, ${failed} failed`);
  process.exitCode = failed > 0 || bad.length > 0 ? 1 : 0;
}
