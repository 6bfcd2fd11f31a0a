// Reads pictures on the command line: PICTURE… → read.json. Bad arguments and a bad project give status 2 and no file; a picture that
// cannot be read has its sentence in read.json and gives status 2 as well, and the rest goes on. readMain.ts calls readPictures.
import { resolve } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import { openFile } from '../editing/openFile';
import { speak } from '../model/phrase';
import { knowledgeOf } from '../photo/block/readLook';
import { complain, notWritten, type Terminal, tellUsage } from './command';
import { decodePicture } from './decode';
import { READ_USAGE, type ReadRequest, readReadArguments } from './readArguments';
import { readRow } from './readRows';
import { fileAt } from './sheet';
import { checkFolder, Stopped, writeAll } from './writeAll';

/** Reads the pictures that the command's arguments `words` name. Returns the exit status: 0, 2 for bad input, or 130 where it was stopped. */
export async function readPictures(words: readonly string[], terminal: Terminal): Promise<number> {
  const request = readReadArguments(words);
  if (!request.ok || request.value.help) return tellUsage(request, READ_USAGE, terminal);
  const { out, project } = request.value;
  const folder = checkFolder(resolve(terminal.folder, out));
  if (!folder.ok) complain(terminal, '', folder.problems);
  const opened = await openFile(fileAt(resolve(terminal.folder, project)));
  if (!opened.ok) complain(terminal, project, opened.problems);
  if (!folder.ok || !opened.ok) return 2;
  try {
    const knowledge = knowledgeOf(opened.value);
    const rows: Row[] = [];
    for (const file of request.value.pictures)
      rows.push(await rowOf(file, request.value, knowledge, terminal));
    const { what } = request.value;
    const content = `${JSON.stringify(rounded({ project, what, pictures: rows }), null, 1)}\n`;
    await writeAll([folder.value], () => [{ path: 'read.json', content }], terminal.stop);
    terminal.print(`${out}: read.json`);
    return rows.every(({ problem }) => problem === null) ? 0 : 2;
  } catch (error) {
    return notWritten(error, out, terminal);
  }
}

interface Row {
  readonly file: string;
  /** Why it cannot be read; null where it was. */
  readonly problem: string | null;
}

async function rowOf(
  file: string,
  { what }: ReadRequest,
  knowledge: ReturnType<typeof knowledgeOf>,
  terminal: Terminal,
): Promise<Row> {
  const pixels = await decodePicture(resolve(terminal.folder, file));
  const read = pixels.ok ? await heard(readRow(pixels.value, what, knowledge), terminal.stop) : pixels;
  if (!read.ok) {
    complain(terminal, file, read.problems);
    return { file, problem: speak(read.problems[0]!.message) };
  }
  const size = pixels.ok ? { width: pixels.value.width, height: pixels.value.height } : {};
  return { file, problem: null, ...size, ...read.value };
}

/** Runs work in parts, between which the wish to stop is heard. Throws Stopped then. */
async function heard<Answer>(
  work: Generator<unknown, Answer>,
  stop: AbortSignal | undefined,
): Promise<Answer> {
  for (;;) {
    await setImmediate();
    if (stop?.aborted) throw new Stopped('Stopped; nothing is written.');
    const part = work.next();
    if (part.done) return part.value;
  }
}

/** Numbers to four places: pixels and confidences have no more to say. */
function rounded(given: unknown): unknown {
  if (typeof given === 'number') return Math.round(given * 1e4) / 1e4;
  if (Array.isArray(given)) return given.map(rounded);
  if (typeof given !== 'object' || given === null) return given;
  return Object.fromEntries(Object.entries(given).map(([key, one]) => [key, rounded(one)]));
}
