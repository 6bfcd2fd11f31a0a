// Finds a Chromium for the browser tests, and gets one where there is none; gets the other engines too. Used by scripts/test.mjs and
// playwright.config.ts.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { delimiter, join } from 'node:path';
import process from 'node:process';

/** Chromium without a window of its own: a test takes little more than half of the processor that it takes in the whole one. */
const SHELL = '/usr/lib/chromium/chromium-headless-shell';
const NAMES = [
  'chromium-headless-shell',
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'chrome',
  'microsoft-edge',
];
const USUAL_PLACES = [
  SHELL,
  '/usr/bin/chromium',
  '/usr/bin/google-chrome',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
];

/** The path of a Chromium on this machine, or null. CHROMIUM_PATH comes first and must exist when it is set. */
export function findChromium() {
  const chosen = process.env.CHROMIUM_PATH;
  if (chosen) {
    if (!existsSync(chosen)) throw new Error(`CHROMIUM_PATH is ${chosen}, but there is no such file.`);
    return chosen;
  }
  const onPath = (process.env.PATH ?? '')
    .split(delimiter)
    .filter(Boolean)
    .flatMap((folder) => NAMES.map((name) => join(folder, name)));
  return [...USUAL_PLACES, ...onPath, playwrightsOwn()].find((path) => path && existsSync(path)) ?? null;
}

/** Where Playwright keeps the browser it downloads, whether it is there or not; null before Playwright is installed. */
function playwrightsOwn() {
  try {
    return createRequire(import.meta.url)('playwright-core').chromium.executablePath();
  } catch {
    return null;
  }
}

/**
 * Finds a Chromium or installs one, the one without a window where that can be had; the Playwright package must be installed. Null
 * when neither works.
 */
export function provideChromium() {
  if (!process.env.CHROMIUM_PATH && !existsSync(SHELL)) installWithApt('chromium-headless-shell');
  return findChromium() ?? (installWithApt('chromium') || installWithPlaywright() ? findChromium() : null);
}

/** What WebKit and Firefox need to be driven, by the file that shows it is there: Debian's package. */
const ENGINES = {
  '/usr/bin/WebKitWebDriver': 'webkit2gtk-driver',
  '/usr/bin/firefox-esr': 'firefox-esr',
  '/usr/bin/Xvfb': 'xvfb',
};

/** Installs what is missing for the story in WebKit and Firefox. Without it e2e/engines tells which engine it leaves out. */
export function provideEngines() {
  const missing = Object.keys(ENGINES).filter((path) => !existsSync(path));
  if (missing.length > 0) installWithApt(...missing.map((path) => ENGINES[path]));
}

function installWithApt(...packages) {
  if (process.platform !== 'linux' || process.getuid?.() !== 0) return false;
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  console.log(`Installing with apt-get: ${packages.join(', ')} …`);
  return (
    succeeds('apt-get', ['update', '-qq'], env) &&
    succeeds('apt-get', ['install', '-y', '-qq', '--no-install-recommends', '--no-remove', ...packages], env)
  );
}

function installWithPlaywright() {
  console.log('No Chromium found; asking Playwright for its own …');
  const env = { ...process.env };
  delete env.PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD;
  return succeeds(process.execPath, ['node_modules/playwright/cli.js', 'install', 'chromium'], env);
}

function succeeds(command, words, env) {
  return spawnSync(command, words, { env, stdio: ['ignore', 'inherit', 'inherit'] }).status === 0;
}
