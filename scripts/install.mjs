// Brings node_modules in line with package.json, with nothing but Node and npm there. Used by start.mjs and test.mjs.
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import process from 'node:process';

/** Installs what package.json names unless it is there in the right version. Ends the program with a reason if it cannot. */
export function installPackages() {
  const refusal = nodeRefusal(process.versions.node, readJson('package.json').engines.node);
  if (refusal) stop(refusal);
  if (missingPackages().length === 0) return;
  console.log('Installing the packages Wedgewall is built with …');
  if (!npm('ci')) {
    console.log('The exact versions could not be installed; trying the ones package.json allows …');
    if (!npm('install')) stop('npm could not install the packages; its message stands above.');
  }
}

/**
 * Why this Node cannot be used, or null. `range` is written as in package.json: "^20.19.0 || >=24", each part the least
 * version, with ^ of that first number only. Nothing but Node is there yet, so no library reads it.
 */
export function nodeRefusal(node, range) {
  const [major, minor] = node.split('.').map(Number);
  const parts = range.split('||').map((part) => {
    const [, sign, first, second = '0'] = /^(\^|>=)(\d+)(?:\.(\d+)\.0)?$/.exec(part.trim());
    return { only: sign === '^', major: Number(first), minor: Number(second) };
  });
  const fits = parts.some(
    (part) => (major === part.major && minor >= part.minor) || (major > part.major && !part.only),
  );
  if (fits) return null;
  const names = parts.map(({ only, major, minor }) =>
    only ? `${major} (from ${major}.${minor})` : `${major} or newer`,
  );
  return `Wedgewall needs Node ${names.join(', ')}; this is Node ${node}.`;
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
