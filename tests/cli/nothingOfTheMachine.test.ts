// What the tool hands out holds nothing of the machine it was made on, and nothing a camera wrote: no path, no name of a computer, no place,
// no time zone. The photograph is written by sharp (libvips) with camera data; its parts are those of Exif 2.32 (CIPA DC-008) and the PNG
// specification (W3C, chapter 11).
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { homedir, hostname, tmpdir } from 'node:os';
import { join } from 'node:path';
import { inflateSync } from 'node:zlib';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { readPictures } from '../../src/cli/read';
import type { Pictures } from '../../src/model/picture/picture';
import { takePicture } from '../../src/model/picture/takePicture';
import { writeProject } from '../../src/model/reading/read';
import { randomProject } from '../drawing/samples';
import { imageFile, KINDS, photographed } from '../model/picture/images';
import { runs } from '../runs';
import { root, runSheet } from './runSheet';

const TELLING = 'annas-own-folder';
let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), TELLING));
  // West of Greenwich, so that a time zone would show.
  vi.stubEnv('TZ', 'America/Caracas');
});
afterEach(() => {
  vi.unstubAllEnvs();
  rmSync(folder, { recursive: true, force: true });
});

/** What must be in no file: of the camera (images.ts), of this machine, of the place. */
const words = () =>
  [TELLING, folder, root, tmpdir(), homedir(), hostname(), 'A telephone', 'Known by its number', 'at home', 'Exif\0', 'GPSLatitude'].filter((word) => word.length > 2); // biome-ignore format: a list

/** Those of the words that the bytes hold, plain, in a data URL, or in a compressed part of a PDF. */
function held(bytes: Uint8Array): string[] {
  const plain = Buffer.from(bytes).toString('latin1');
  const pictures = plain.matchAll(/base64,([A-Za-z0-9+/=]+)/g);
  const streams = plain.matchAll(/stream\r?\n([\s\S]*?)\r?\nendstream/g);
  const parts = [
    plain,
    ...Array.from(pictures, ([, text]) => Buffer.from(text!, 'base64').toString('latin1')),
    ...Array.from(streams, ([, text]) => inflated(text!)),
  ];
  return words().filter((word) => parts.some((part) => part.includes(word)));
}

function inflated(stream: string): string {
  try {
    return inflateSync(Buffer.from(stream, 'latin1')).toString('latin1');
  } catch {
    return '';
  }
}

/** A quilt with a photographed fabric, as its saved file has it. */
async function savedFile(kind: (typeof KINDS)[number]): Promise<string> {
  const taken = takePicture(await imageFile({ kind, camera: true }));
  if (!taken.ok) throw new Error(JSON.stringify(taken.problems));
  const { id, picture } = taken.value;
  const project = randomProject(3, 8);
  const pictures: Pictures = new Map([[id, picture]]);
  const fabrics = project.fabrics.map(({ id: own, name }) => ({ ...photographed(id), id: own, name }));
  return writeProject({ ...project, fabrics }, pictures);
}

it('finds in the photograph itself what is looked for', async () => {
  const file = await imageFile({ kind: 'jpeg', camera: true });
  expect(held(file)).toEqual(
    expect.arrayContaining(['A telephone', 'Known by its number', 'at home', 'Exif\0']),
  );
});

// One kind of picture every day: that each kind loses what its camera wrote is held in model/picture/image.test.ts.
it.each(KINDS.slice(0, runs(1, KINDS.length)))(
  'the saved file, its sheet, pictures and pattern hold none of it: %s',
  async (kind) => {
    const text = await savedFile(kind);
    expect(text).toContain('base64,');
    expect(held(Buffer.from(text))).toEqual([]);
    writeFileSync(join(folder, 'quilt.json'), text);
    const run = await runSheet(
      folder,
      join(folder, 'quilt.json'),
      '--out',
      join(folder, 'sheet'),
      '--pattern',
    );
    expect(run.status).toBe(0);
    const made = (name: string) => readFileSync(join(folder, 'sheet', name));
    for (const name of ['wall.svg', 'wall.png', 'report.json', 'pattern.pdf'])
      expect([name, held(made(name))]).toEqual([name, []]);
    expect(pngParts(made('wall.png')).filter((part) => /^[a-z]|^eXIf/.test(part) && part !== 'pHYs')).toEqual(
      [],
    );
    expect(/CreationDate \(([^)]*)\)/.exec(made('pattern.pdf').toString('latin1'))?.[1]).toMatch(
      /^D:\d{14}\+00'00'$/,
    );
  },
);

it('what is read of pictures names their files without their folders', async () => {
  writeFileSync(join(folder, 'quilt.json'), await savedFile('jpeg'));
  writeFileSync(
    join(folder, 'block.jpg'),
    await imageFile({ kind: 'jpeg', camera: true, width: 120, height: 120 }),
  );
  const silent = { folder, print: () => {}, complain: () => {} };
  const given = [
    join(folder, 'block.jpg'),
    '--what',
    'fabric',
    '--project',
    join(folder, 'quilt.json'),
    '--out',
    folder,
  ];
  await readPictures(given, silent);
  const read = readFileSync(join(folder, 'read.json'));
  expect(held(read)).toEqual([]);
  expect(JSON.parse(read.toString())).toMatchObject({
    project: 'quilt.json',
    pictures: [{ file: 'block.jpg' }],
  });
});

/** The types of a PNG's chunks in order. */
function pngParts(png: Buffer): string[] {
  const parts: string[] = [];
  for (let at = 8; at < png.length; at += 12 + png.readUInt32BE(at))
    parts.push(png.toString('latin1', at + 4, at + 8));
  return parts;
}
