// The sheet of a quilt with photographed fabrics: its picture shows them, whatever kind of file they are, and what is refused is said.
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterEach, beforeEach, expect, it } from 'vitest';
import type { Pictures } from '../../src/model/picture/picture';
import type { Project } from '../../src/model/project';
import { writeProject } from '../../src/model/reading/read';
import { randomProject } from '../drawing/samples';
import { KINDS, keptPicture, photographed } from '../model/picture/images';
import { runSheet } from './runSheet';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'sheet-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** A wall of one fabric, photographed. */
function wallOf(id: string): Project {
  const project = randomProject(3, 8);
  return {
    ...project,
    fabrics: project.fabrics.map((fabric) => ({ ...photographed(id), id: fabric.id, name: fabric.name })),
  };
}

async function sheetOf(project: Project, pictures: Pictures) {
  writeFileSync(join(folder, 'quilt.json'), writeProject(project, pictures));
  const run = await runSheet(folder, 'quilt.json', '--out', 'sheet');
  return run;
}

it.each(KINDS)('shows fabric whose picture is a %s', async (kind) => {
  const at = () => [20, 140, 220] as const;
  const [id, picture] = await keptPicture({ kind, width: 40, height: 40, at });
  const run = await sheetOf(wallOf(id), new Map([[id, picture]]));
  expect(run).toMatchObject({ status: 0, error: '' });
  const { data, info } = await sharp(join(folder, 'sheet', 'wall.png'))
    .raw()
    .toBuffer({ resolveWithObject: true });
  let blue = 0;
  for (let pixel = 0; pixel < data.length; pixel += info.channels)
    if (data[pixel]! < 60 && data[pixel + 2]! > 150) blue += 1;
  expect(blue / (info.width * info.height)).toBeGreaterThan(0.8);
  const svg = readFileSync(join(folder, 'sheet', 'wall.svg'), 'utf8');
  expect(svg).toContain(`href="data:image/${kind};base64,`);
});

it('says which picture is missing, and shows its mean colour', async () => {
  const [id] = await keptPicture();
  const run = await sheetOf(wallOf(id), new Map());
  expect(run.status).toBe(0);
  expect(run.error).toContain('quilt.json: The picture of Cloth a was left out: it is not in the file.\n');
  const svg = readFileSync(join(folder, 'sheet', 'wall.svg'), 'utf8');
  expect(svg).toContain('fill="#b87a5c"');
  expect(svg).not.toContain('<image');
});
