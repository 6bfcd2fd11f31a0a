// What the commands share: their terminal and exit status, options that are given once, and what is said where nothing can be written.
import process from 'node:process';
import { type ParseArgsConfig, parseArgs } from 'node:util';
import { phrase, speak } from '../model/phrase';
import { failed, ok, type Problem, type Result } from '../model/result';
import { Stopped } from './writeAll';

/** The terminal of the command: its working folder, and how to write a line to standard output and to standard error. */
export interface Terminal {
  readonly folder: string;
  readonly print: (line: string) => void;
  readonly complain: (line: string) => void;
  /** The person's wish to stop; without it the command runs to its end. */
  readonly stop?: AbortSignal;
}

/** The status of a command ended by an interrupt (128 and the number of the signal, as shells have it). */
const STOPPED = 130;

/** Runs a command with this process's arguments, folder, output and exit status; an interrupt stops it. */
export async function runHere(
  command: (words: readonly string[], terminal: Terminal) => Promise<number>,
): Promise<void> {
  const stop = new AbortController();
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => stop.abort());
  process.exitCode = await command(process.argv.slice(2), {
    folder: process.cwd(),
    print: (line) => console.log(line),
    complain: (line) => console.error(line),
    stop: stop.signal,
  });
}

/** The words of a command by its options; refused where one is not known, lacks its value or is given twice. */
export function givenWords<Options extends NonNullable<ParseArgsConfig['options']>>(
  words: readonly string[],
  options: Options,
) {
  const parse = () => parseArgs({ args: [...words], allowPositionals: true, tokens: true, options });
  let parsed: ReturnType<typeof parse>;
  try {
    parsed = parse();
  } catch (error) {
    return failed('arguments', '', phrase('{reason}', { reason: (error as Error).message }));
  }
  const given = parsed.tokens.flatMap((token) => (token.kind === 'option' ? [token.name] : []));
  const again = given.find((name, index) => given.indexOf(name) !== index);
  if (again !== undefined) return failed('twice', `--${again}`, phrase('It is given twice; give it once.'));
  return ok(parsed);
}

/** Prints how a command is used, after what is wrong with its arguments where something is; gives the exit status. */
export function tellUsage(request: Result<unknown>, usage: string, terminal: Terminal): number {
  if (request.ok) {
    terminal.print(usage);
    return 0;
  }
  complain(terminal, '', request.problems);
  terminal.complain(usage);
  return 2;
}

/** Says why nothing was written to `out`; gives the exit status. */
export function notWritten(error: unknown, out: string, terminal: Terminal): number {
  if (error instanceof Stopped) {
    terminal.complain(error.message);
    return STOPPED;
  }
  const message = phrase('{reason}', { reason: (error as Error).message });
  complain(terminal, out, [{ code: 'write', path: '', message }]);
  return 2;
}

/** One line on standard error for each problem: file, place, reason. */
export function complain(terminal: Terminal, file: string, problems: readonly Problem[]): void {
  for (const problem of problems) {
    const where = [file, problem.path].filter((part) => part !== '');
    terminal.complain([...where, speak(problem.message)].join(': '));
  }
}
