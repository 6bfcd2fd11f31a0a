// What one part of the attack counts and finds. The tally is written to a file after every try, so that it survives the part's end when
// a try never comes back.
import { writeFileSync } from 'node:fs';
import process from 'node:process';

/** A fault that was found: what it is, how often, and the number of the first try that shows it. */
export interface Found {
  readonly what: string;
  readonly times: number;
  readonly first: number;
}

export interface Counts {
  /** The try that runs, or that comes next; it is the seed of its chance. */
  next: number;
  done: number;
  /** Tries whose input was refused in words. */
  refused: number;
  /** Seconds of processor time of the slowest try, and its number. */
  slowest: number;
  slowestTry: number;
  found: Found[];
}

/** Nothing is counted yet; the first try is `next`. */
export function nothingCounted(next: number): Counts {
  return { next, done: 0, refused: 0, slowest: 0, slowestTry: next, found: [] };
}

/** What a try may say of itself. */
export interface Trying {
  /** The input was refused; wrong, where the refusal is not one sentence of at most 200 letters. */
  readonly refused: (sentences: readonly string[]) => void;
  readonly fault: (what: string) => void;
}

/** One try with everything drawn by its number. */
export type Try = (number: number, trying: Trying) => void | Promise<void>;

/** Seconds of processor time that a try may take. */
const MOST_SECONDS = 8;
/** The most letters of a sentence to the maker, and the most sentences at once. */
const MOST_LETTERS = 200;
const MOST_SENTENCES = 20;

/** Tries from `counts.next` up to `end`, or until `seconds` of processor time are used; notes the tally in `file`. */
export async function tryAll(
  attempt: Try,
  counts: Counts,
  end: number,
  seconds: number,
  file: string,
): Promise<void> {
  const start = process.cpuUsage();
  const find = (what: string) => {
    const before = counts.found.find((one) => one.what === what);
    const others = counts.found.filter((one) => one !== before);
    counts.found = [
      ...others,
      { what, times: (before?.times ?? 0) + 1, first: before?.first ?? counts.next },
    ];
  };
  const trying: Trying = {
    fault: find,
    refused: (sentences) => {
      counts.refused += 1;
      if (sentences.length === 0) find('a refusal without a reason');
      if (sentences.length > MOST_SENTENCES) find(`more than ${MOST_SENTENCES} reasons at once`);
      for (const sentence of sentences)
        if (sentence.length > MOST_LETTERS || !/\S/.test(sentence))
          find(`no sentence: ${firstWords(sentence)}`);
    },
  };
  process.on('unhandledRejection', (error) => find(`nobody caught: ${wordsOf(error)}`));
  process.on('uncaughtException', (error) => find(`nobody caught: ${wordsOf(error)}`));
  while (counts.next < end && secondsSince(start) < seconds) {
    writeFileSync(file, JSON.stringify(counts));
    const before = process.cpuUsage();
    try {
      await attempt(counts.next, trying);
    } catch (error) {
      find(`exception: ${wordsOf(error)}`);
    }
    const took = secondsSince(before);
    if (took > counts.slowest) Object.assign(counts, { slowest: took, slowestTry: counts.next });
    if (took > MOST_SECONDS) find(`longer than ${MOST_SECONDS} s of processor time`);
    counts.done += 1;
    counts.next += 1;
  }
  writeFileSync(file, JSON.stringify(counts));
}

function secondsSince(before: NodeJS.CpuUsage): number {
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1e6;
}

function wordsOf(error: unknown): string {
  if (!(error instanceof Error)) return firstWords(String(error));
  const place = /\(?([^\s(]*\/(?:src|attack)\/[^\s)]*)/.exec(error.stack ?? '')?.[1] ?? '';
  return firstWords(
    `${error.name}: ${error.message}${place ? ` in ${place.replace(/^.*\/(src|attack)\//, '$1/')}` : ''}`,
  );
}

function firstWords(text: string): string {
  return text.replace(/\s+/g, ' ').slice(0, 160);
}

/** The path of the first number in plain data that is none (NaN, infinite); null where all are. */
export function notFinite(value: unknown, path = ''): string | null {
  if (typeof value === 'number') return Number.isFinite(value) ? null : `${path} is ${value}`;
  if (typeof value !== 'object' || value === null) return null;
  if (ArrayBuffer.isView(value)) return null;
  for (const [key, part] of Object.entries(value)) {
    // Lists are one place, whatever the number of the item.
    const found = notFinite(part, Array.isArray(value) ? `${path}[]` : `${path}.${key}`);
    if (found) return found;
  }
  return null;
}
