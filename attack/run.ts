// npm run attack: goes at the tool with wrong files, whole chains of commands, a storage and workers that fail, and the command line; all by
// chance from numbered tries, so that a finding comes again by its number. Prints a table and writes it to docs/attack.md. Ends with status
// 1 where anything was found. `npm run attack -- SECONDS [PART FIRST]` gives each part so long, or goes at one part from one try on.
// Each part runs as a process of its own, which is ended where a try does not come back.
import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import net from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { type Counts, nothingCounted, type Try, tryAll } from './tally';

interface Part {
  readonly name: string;
  readonly tries: number;
  readonly load: () => Promise<Try>;
}

const PARTS: readonly Part[] = [
  { name: 'wrong files', tries: 20_000, load: async () => (await import('./files')).wrongFile },
  { name: 'whole chains', tries: 2_000, load: async () => (await import('./chains')).wholeChain },
  {
    name: 'a storage that fails',
    tries: 5_000,
    load: async () => (await import('./storage')).failingStorage,
  },
  { name: 'workers that fail', tries: 20_000, load: async () => (await import('./workers')).failingWorkers },
  { name: 'the command line', tries: 400, load: async () => (await import('./commandLine')).anyCommand },
];
/** Seconds of processor time that each part has, unless given; on the clock it may take so many times as long, beside other work. */
const SECONDS = 40;
const SLOWER = 4;
/** Seconds on the clock after which a try is taken not to come back, on a machine that has other work too. */
const FROZEN = 60;
const OWN = fileURLToPath(import.meta.url);

/** The process of one part: tries, and counts a connection to any server as a fault. */
async function workAt(name: string, seconds: number, file: string): Promise<void> {
  const part = PARTS.find((one) => one.name === name)!;
  const counts = JSON.parse(readFileSync(file, 'utf8')) as Counts;
  const attempt = await part.load();
  const guarded: Try = async (number, trying) => {
    net.Socket.prototype.connect = () => {
      trying.fault('asked something of a server');
      throw new Error('no server is there');
    };
    await attempt(number, trying);
  };
  await tryAll(guarded, counts, part.tries, seconds, file);
  process.exit(0);
}

/** Runs one part until its tries or its seconds are over; a try that does not come back is a finding, and the next one follows. */
async function goAt({ name, tries }: Part, first: number, seconds: number, folder: string): Promise<Counts> {
  const file = join(folder, 'counts.json');
  let counts = nothingCounted(first);
  const until = Date.now() + seconds * SLOWER * 1000;
  while (counts.next < tries && Date.now() < until) {
    writeFileSync(file, JSON.stringify(counts));
    const ended = await untilItEnds(name, seconds, until, file);
    counts = JSON.parse(readFileSync(file, 'utf8')) as Counts;
    if (ended !== 'alone') break;
    counts.found.push({
      what: `try ${counts.next} does not come back, or ends its process`,
      times: 1,
      first: counts.next,
    });
    counts.done += 1;
    counts.next += 1;
  }
  return counts;
}

/** Lets a part work; how it ended: as it should, because the clock said so, or `alone`, in the middle of a try. */
function untilItEnds(
  name: string,
  seconds: number,
  until: number,
  file: string,
): Promise<'well' | 'late' | 'alone'> {
  const words = ['--import', import.meta.resolve('tsx'), OWN, 'work', name, String(seconds), file];
  const child = spawn(process.execPath, words, { stdio: ['ignore', 'ignore', 'inherit'] });
  let last = '';
  let quiet = 0;
  let late = false;
  const watch = setInterval(() => {
    const now = readFileSync(file, 'utf8');
    quiet = now === last ? quiet + 1 : 0;
    last = now;
    late = quiet < FROZEN && Date.now() > until;
    if (late || quiet >= FROZEN) child.kill('SIGKILL');
  }, 1000);
  return new Promise((done) => {
    child.once('close', (status) => {
      clearInterval(watch);
      done(status === 0 ? 'well' : late ? 'late' : 'alone');
    });
  });
}

function tableOf(rows: readonly (readonly [string, Counts])[]): string {
  const lines = rows.map(([name, { done, refused, slowest, slowestTry, found }]) => {
    const findings = found.map(({ what, times, first }) =>
      `${times} × ${what} (try ${first})`.replaceAll('|', '/'),
    );
    const slow = `${slowest.toFixed(1)} s (try ${slowestTry})`;
    return `| ${name} | ${done} | ${refused} | ${slow} | ${findings.length === 0 ? 'none' : findings.join('; ')} |`;
  });
  return [
    '| part | tries | refusals in words | slowest | findings |',
    '| --- | ---: | ---: | --- | --- |',
    ...lines,
  ].join('\n');
}

const ABOUT = `# The attack

Written by \`npm run attack\`. Every try is drawn from its number: \`npm run attack -- 60 'wrong files' 1234\` begins at try 1234 again. A
finding is an exception, a number that is none, a word to a server, a refusal that is no sentence of at most 200 letters, a try of more
than eight seconds of processor time, one that does not come back, or what each part says is wrong at its own head (\`attack/\`).
`;

async function main(words: readonly string[]): Promise<void> {
  const [seconds = String(SECONDS), only, first = '0'] = words;
  const folder = mkdtempSync(join(tmpdir(), 'attack-'));
  const rows: [string, Counts][] = [];
  for (const part of PARTS) {
    if (only !== undefined && part.name !== only) continue;
    console.log(`${part.name} …`);
    rows.push([part.name, await goAt(part, Number(first), Number(seconds), folder)]);
  }
  rmSync(folder, { recursive: true, force: true });
  const table = tableOf(rows);
  console.log(table);
  if (only === undefined) writeFileSync('docs/attack.md', `${ABOUT}\n${table}\n`);
  process.exitCode = rows.every(([, { found }]) => found.length === 0) ? 0 : 1;
}

const [mode, ...rest] = process.argv.slice(2);
if (mode === 'work') await workAt(rest[0]!, Number(rest[1]), rest[2]!);
else await main(mode === undefined ? [] : [mode, ...rest]);
