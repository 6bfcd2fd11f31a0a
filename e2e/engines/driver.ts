// What WebKit and Firefox have in common when a test drives them: the commands of W3C WebDriver by their names, and what went wrong
// in the page meanwhile.
import { type ChildProcess, type SpawnOptions, spawn } from 'node:child_process';
import { createServer } from 'node:net';

/** The commands the story needs, named as both protocols name them. */
export type Command =
  | 'Navigate'
  | 'ExecuteScript'
  | 'PerformActions'
  | 'SetWindowRect'
  | 'FindElement'
  | 'ElementSendKeys';

export interface Driver {
  readonly version: string;
  /** Sends a command and gives its value; rejects with the engine's own words when it fails. */
  readonly send: (command: Command, body: object) => Promise<unknown>;
  /** Errors of the page and ends of its process, in the engine's own words. */
  readonly faults: readonly string[];
  readonly close: () => Promise<void>;
}

/** How an engine is started: where it may write, and on which screen. It asks for the dark theme, as Chromium's tests mostly for the light. */
export interface Start {
  readonly folder: string;
  readonly display: string;
}

const FAULT =
  /CONSOLE.*ERROR|JavaScript error: http|console\.error: \(?http|WebProcess CRASHED|exited on signal/;

/** Starts a program and collects the faults among the lines it prints. */
export function started(
  command: string,
  words: readonly string[],
  options: SpawnOptions,
  faults: string[],
): ChildProcess {
  const child = spawn(command, words, { stdio: ['ignore', 'pipe', 'pipe'], ...options });
  for (const pipe of [child.stdout, child.stderr]) {
    pipe?.on('data', (text) => {
      for (const line of String(text).split('\n'))
        if (FAULT.test(line)) faults.push(line.trim().slice(0, 300));
    });
  }
  return child;
}

export function pause(milliseconds: number): Promise<void> {
  return new Promise((done) => {
    setTimeout(done, milliseconds);
  });
}

/** Tries until it works; rejects with the last error after `tries`. */
export async function patiently<T>(attempt: () => Promise<T>, tries: number, wait: number): Promise<T> {
  for (let left = tries; ; left -= 1) {
    try {
      return await attempt();
    } catch (error) {
      if (left <= 1) throw error;
      await pause(wait);
    }
  }
}

/** A port of this machine that nothing uses. */
export function freePort(): Promise<number> {
  return new Promise((done, refuse) => {
    const server = createServer().listen(0, '127.0.0.1', () => {
      const address = server.address();
      server.close(() =>
        address && typeof address === 'object' ? done(address.port) : refuse(new Error('freePort: no port')),
      );
    });
  });
}
