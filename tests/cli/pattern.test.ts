// The written pattern from the command line: the file beside the others, and bad requests refused before anything is written.
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { writeProject } from '../../src/model/reading/read';
import { readPdf } from '../drawing/pattern/readPdf';
import { randomProject } from '../drawing/samples';
import { runSheet, startSheet } from './runSheet';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'pattern-'));
  writeFileSync(join(folder, 'quilt.json'), writeProject(randomProject(3, 8)));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

it('writes pattern.pdf beside the sheets, on Letter for a quilt in inches', async () => {
  const words = ['quilt.json', '--width', '300', '--marks'];
  const run = startSheet(folder, ...words, '--out', 'out', '--pattern');
  expect(run).toMatchObject({ status: 0, error: '' });
  expect(run.out).toContain('pattern.pdf');
  const pdf = await readPdf(new Uint8Array(readFileSync(join(folder, 'out', 'pattern.pdf'))), {
    lines: false,
  });
  expect([pdf.pages[0]!.width, pdf.pages[0]!.height]).toEqual([612, 792]);
  expect(pdf.bookmarks[0]).toBe('Sample');
  // What a process of its own writes is what this one writes, to the letter.
  expect((await runSheet(folder, ...words, '--out', 'again')).status).toBe(0);
  for (const file of ['wall.svg', 'wall.png', 'report.json']) {
    const [first, second] = ['out', 'again'].map((out) => readFileSync(join(folder, out, file)));
    expect(first!.equals(second!)).toBe(true);
  }
}, 60_000);

it('writes no pattern unless it is asked for, and refuses a paper it does not know', async () => {
  expect((await runSheet(folder, 'quilt.json', '--out', 'out', '--width', '64')).status).toBe(0);
  expect(existsSync(join(folder, 'out', 'pattern.pdf'))).toBe(false);
  const run = await runSheet(folder, 'quilt.json', '--out', 'other', '--pattern', '--paper', 'foolscap');
  expect(run.status).toBe(2);
  expect(run.error).toContain('--paper: foolscap is not a paper: write a4 or letter.');
  expect(existsSync(join(folder, 'other'))).toBe(false);
}, 60_000);
