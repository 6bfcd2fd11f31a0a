// The command line with words and names by chance: it ends with 0 or 2 and a sentence, writes nothing outside the folder it was given, all
// or nothing there, and leaves no file half written; now and then as a process that is interrupted at any moment.
import { spawn } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import process from 'node:process';
import { dice } from '../tests/balance/tops';
import { root, runSheet } from '../tests/cli/runSheet';
import { demo } from '../tests/demo';
import { type Chance, mutatedBytes, one } from './mutate';
import { fileOf } from './quilts';
import type { Try, Trying } from './tally';

const SMALL = fileOf(demo('harbour-reading-corner'));
const NAMES = ['quilt.json', '..json', '...json', '.json', '🧵.json', 'a b.json', '-x.json', 'Quilt.JSON', 'ü.json', `${'n'.repeat(200)}.json`, 'con.json', '%2e%2e.json'] as const; // biome-ignore format: a list
const WIDTHS = [
  '64',
  '16',
  '200',
  '0x100',
  '1e2',
  ' 64 ',
  '-5',
  '12001',
  '',
  'NaN',
  '６４',
  '64.0',
  '+64',
] as const;
const OUTS = ['sheets', 'deep/er/sheets', './sheets', 'quilt.json', '', 'sheets/..', 'a\nb'] as const;
/** In every so many tries the command is a process of its own that is interrupted. */
const INTERRUPT_EVERY = 20;

/** Runs the command once. */
export const anyCommand: Try = async (number, trying) => {
  const chance = dice(number);
  const folder = mkdtempSync(join(tmpdir(), 'attack-'));
  const home = join(folder, 'home');
  try {
    mkdirSync(home);
    cpSync(join(root, 'LICENSE'), join(folder, 'beside.txt'));
    if (number % INTERRUPT_EVERY === 0) await interrupted(home, chance, trying);
    else await once(home, chance, trying);
    const outside = readdirSync(folder).filter((name) => name !== 'home' && name !== 'beside.txt');
    if (outside.length > 0) trying.fault(`written outside: ${outside.join()}`);
    const half = filesIn(home).filter((name) => name.endsWith('.part'));
    if (half.length > 0) trying.fault('a file half written');
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
};

function filesIn(folder: string): string[] {
  return readdirSync(folder, { recursive: true }).map(String);
}

async function once(home: string, chance: Chance, trying: Trying): Promise<void> {
  const names = Array.from({ length: 1 + chance.below(2) }, () => one(NAMES, chance));
  for (const name of names)
    writeFileSync(join(home, name), chance.below(4) === 0 ? mutatedBytes(SMALL, chance) : SMALL);
  const words = [...names, '--out', one(OUTS, chance), '--width', one(WIDTHS, chance)];
  if (chance.below(6) === 0) words.push('--out', 'again');
  if (chance.below(6) === 0)
    words.push(one(['--pattern', '--marks', '--colourways', '--paper', '--none', '-h', '--'], chance));
  const before = new Set(filesIn(home));
  const run = await runSheet(home, ...words);
  const made = filesIn(home).filter((name) => !before.has(name));
  if (run.status === 2) {
    trying.refused(run.error.trim() === '' ? [] : ['refused']);
    if (made.length > 0) trying.fault('refused, and yet something is written');
  } else if (run.status !== 0) trying.fault(`ended with ${run.status}`);
}

/** Starts the command and interrupts it after a while by chance: then all of it is there, or nothing. */
async function interrupted(home: string, chance: Chance, trying: Trying): Promise<void> {
  writeFileSync(join(home, 'quilt.json'), SMALL);
  const words = [
    '--import',
    import.meta.resolve('tsx'),
    join(root, 'src/cli/main.ts'),
    'quilt.json',
    '--out',
    'sheets',
    '--pattern',
  ];
  const child = spawn(process.execPath, words, { cwd: home, stdio: 'ignore' });
  const ended = new Promise<number | null>((done) => child.once('close', (status) => done(status)));
  const timer = setTimeout(() => child.kill(one(['SIGINT', 'SIGTERM'] as const, chance)), chance.below(6000));
  const status = await ended;
  clearTimeout(timer);
  const made = filesIn(home).filter((name) => name.startsWith('sheets'));
  if (status === 0 ? made.length !== 5 : made.length > 0)
    trying.fault(`interrupted (${status}) it left ${made.length} of 5`);
}
