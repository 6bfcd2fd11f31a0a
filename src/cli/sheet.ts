// Makes sheets on the command line: PROJECT.json → wall.svg, wall.png, report.json and, if requested, pattern.pdf. All
// projects are read and checked before anything is written. Bad input gives status 2, a message that names the place, and no
// files. main.ts calls makeSheets.
import { readFileSync, statSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { drawProject } from '../drawing/drawProject';
import { dataHrefs } from '../drawing/photos';
import { drawingToSvg } from '../drawing/svg';
import { openFile, type ReadableFile } from '../editing/openFile';
import { inColourway } from '../model/colourway';
import { phrase, speak } from '../model/phrase';
import type { Pictures } from '../model/picture/picture';
import type { Project } from '../model/project';
import type { Opened } from '../model/reading/readText';
import { failed } from '../model/result';
import { readArguments, type SheetRequest, USAGE } from './arguments';
import { complain, notWritten, type Terminal, tellUsage } from './command';
import { drawable, pngOf, tooLarge, usualWidth } from './picture';
import { sheetAnalysis, sheetReport } from './report';
import { checkFolder, type OutputFile, writeAll } from './writeAll';

/** A project with the pictures of its file. */
interface Quilt {
  readonly project: Project;
  readonly pictures: Pictures;
  /** The same as a PNG can be drawn with them. */
  readonly forPng: Pictures;
}

/** Makes the sheets that the command's arguments `words` request. Returns the exit status: 0, 2 for bad input, or 130 where it was stopped. */
export async function makeSheets(words: readonly string[], terminal: Terminal): Promise<number> {
  const request = readArguments(words);
  if (!request.ok || request.value.help) return tellUsage(request, USAGE, terminal);
  const { files, out } = request.value;
  const folder = checkFolder(resolve(terminal.folder, out));
  if (!folder.ok) complain(terminal, '', folder.problems);
  const opened = await Promise.all(
    files.map(({ file }) => openRequested(resolve(terminal.folder, file), request.value)),
  );
  const projects: Quilt[] = [];
  for (const [index, read] of opened.entries()) {
    const { file } = files[index]!;
    if (read.ok) {
      for (const sentence of read.remarks) terminal.complain(`${file}: ${speak(sentence)}`);
      const { value: project, pictures } = read;
      projects.push({ project, pictures, forPng: await drawable(pictures) });
    } else complain(terminal, file, read.problems);
  }
  if (!folder.ok || projects.length < files.length) return 2;
  try {
    const folders = await writeSheets(projects, request.value, terminal);
    const names = `wall.svg, wall.png, report.json${request.value.pattern ? ', pattern.pdf' : ''}`;
    for (const path of folders) terminal.print(`${path}: ${names}`);
    return 0;
  } catch (error) {
    return notWritten(error, out, terminal);
  }
}

/** Writes the sheets of all projects and, if requested, of their colourways; returns their folders. Throws where it cannot write. */
async function writeSheets(
  quilts: readonly Quilt[],
  request: SheetRequest,
  terminal: Terminal,
): Promise<readonly string[]> {
  const sheets = quilts.flatMap((quilt, index) => {
    const { project } = quilt;
    const folder = join(request.out, request.files[index]!.folder);
    const colourways = request.colourways ? project.colourways : [];
    return [
      { folder, quilt },
      ...colourways.map((colourway, at) => ({
        folder: join(folder, colourwayFolder(at, colourway.name)),
        quilt: { ...quilt, project: inColourway(project, colourway) },
      })),
    ];
  });
  const folders = sheets.map((sheet) => sheet.folder);
  const pattern = request.pattern ? await patternMaker(request, terminal) : () => [];
  const places = folders.map((path) => resolve(terminal.folder, path));
  const make = (index: number) => {
    const { quilt } = sheets[index]!;
    return [...sheetOf(quilt, request), ...pattern(quilt)];
  };
  await writeAll(places, make, terminal.stop);
  return folders;
}

/** Loads the code and fonts of the pattern, and returns a function that makes pattern.pdf. */
async function patternMaker(
  request: SheetRequest,
  terminal: Terminal,
): Promise<(quilt: Quilt) => OutputFile[]> {
  const { patternFile, patternKit } = await import('./pattern');
  const kit = await patternKit();
  return ({ project, pictures }) => {
    const paper = request.paper ?? (project.preferences.unit === 'in' ? 'letter' : 'a4');
    const made = patternFile(project, pictures, paper, kit);
    if (!made.ok) throw new Error(speak(made.problems[0]!.message));
    const { bytes, missing } = made.value;
    if (missing.length > 0) {
      const say = 'pattern.pdf: the typeface lacks {letters}; a question mark stands there.';
      terminal.complain(speak(phrase(say, { letters: missing.join(' ') })));
    }
    return [{ path: 'pattern.pdf', content: bytes }];
  };
}

async function openRequested(path: string, request: SheetRequest): Promise<Opened> {
  const opened = await openFile(fileAt(path));
  if (opened.ok && request.width !== null && tooLarge(request.width, drawProject(opened.value))) {
    return failed(
      'width',
      '--width',
      phrase('A picture {width} pixels wide would be too large to draw.', { width: request.width }),
    );
  }
  return opened;
}

/** A file on disk for openFile; reading it throws an error with the reason in words. */
export function fileAt(path: string): ReadableFile {
  const reading = <T>(read: () => T): T => {
    try {
      return read();
    } catch (error) {
      throw new Error(reasonOf(error), { cause: error });
    }
  };
  return {
    get size() {
      return reading(() => statSync(path).size);
    },
    arrayBuffer: async () => reading(() => readFileSync(path)),
  };
}

/** A folder name such as colourway-1-night: the number keeps equal names apart; only letters that every file system takes. */
function colourwayFolder(index: number, name: string): string {
  const safe = name
    .toLowerCase()
    .normalize('NFKD')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60);
  return ['colourway', index + 1, safe].filter((part) => part !== '').join('-');
}

function reasonOf(error: unknown): string {
  const code = (error as NodeJS.ErrnoException).code;
  if (code === 'ENOENT' || code === 'ENOTDIR') return 'there is no such file';
  if (code === 'EISDIR') return 'it is a folder';
  return error instanceof Error ? error.message : String(error);
}

function sheetOf({ project, pictures, forPng }: Quilt, request: SheetRequest): OutputFile[] {
  const drawing = drawProject(project);
  const analysis = sheetAnalysis(project);
  const pools = analysis.findings.flatMap((finding) => finding.marks.filter((mark) => mark.kind === 'pool'));
  const marks = request.marks ? [...analysis.clashes.flatMap((clash) => clash.marks), ...pools] : [];
  const svgWith = (shown: Pictures) =>
    drawingToSvg(drawing, { title: project.name || 'Quilt top', marks, hrefOf: dataHrefs(shown) });
  const report = sheetReport(project, drawing, analysis);
  return [
    { path: 'wall.svg', content: svgWith(pictures) },
    { path: 'wall.png', content: pngOf(svgWith(forPng), request.width ?? usualWidth(drawing)) },
    { path: 'report.json', content: `${JSON.stringify(report, null, 1)}\n` },
  ];
}
