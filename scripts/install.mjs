// Brings node_modules in line with package.json, with nothing but Node and npm there. Used by start.mjs and test.mjs.
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import process from 'node:process';

const LEAST_NODE = [20, 11];

/** Installs what package.json names unless it is there in the right version. Ends the program with a reason if it cannot. */
export function installPackages() {
  const [major, minor] = process.versions.node.split('.').map(Number);
  if (major < LEAST_NODE[0] || (major === LEAST_NODE[0] && minor < LEAST_NODE[1])) {
    stop(`Node ${LEAST_NODE.join('.')} or newer is needed; this is Node ${process.versions.node}.`);
  }
  if (missingPackages().length === 0) return;
  console.log('Installing the packages Wedgewall is built with …');
  if (!npm('ci')) {
    console.log('The exact versions could not be installed; trying the ones package.json allows …');
    if (!npm('install')) stop('npm could not install the packages; its message stands above.');
  }
}

/** Names in package.json whose pinned version is not in node_modules. */
function missingPackages() {
  const { dependencies, devDependencies } = readJson('package.json');
  return Object.entries({ ...dependencies, ...devDependencies })
    .filter(([name, wanted]) => readJson(`node_modules/${name}/package.json`)?.version !== wanted)
    .map(([name]) => name);
}

function readJson(path) {
  try {
    return JSON.parse(readFileSync(path, 'utf8'));
  } catch {
    return null;
  }
}

function npm(command) {
  // Browsers are the business of browser.mjs; Playwright must not fetch its own here.
  const env = { ...process.env, PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD: '1' };
  const words = [command, '--no-audit', '--no-fund', '--include=dev'];
  return spawnSync('npm', words, { env, stdio: 'inherit', shell: process.platform === 'win32' }).status === 0;
}

function stop(reason) {
  console.error(reason);
  process.exit(1);
}
