import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import type { Project } from '../../src/model/project';
import { writeProject } from '../../src/model/reading/read';
import { readPdf } from '../drawing/pattern/readPdf';
import { randomProject } from '../drawing/samples';
import { runSheet } from './runSheet';

it('a shop gets the sheet of every colourway beside the quilt’s own', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'colourways-'));
  try {
    const quilt = randomProject(3, 8);
    const first = quilt.stripSets.find(({ id }) => id === quilt.blocks[0]!.places[0]!.set)!.strips[0]!.fabric;
    const second = quilt.fabrics.find(({ id }) => id !== first)!.id;
    const colourways: Project['colourways'] = [
      { id: 'c1', name: 'Night over / day', swaps: [{ fabric: first, by: second }], cloth: [] },
      { id: 'c2', name: '夜', swaps: [], cloth: [] },
      {
        id: 'c3',
        name: 'Made up',
        swaps: [{ fabric: first, by: 'made-up' }],
        cloth: [
          { ...quilt.fabrics.find(({ id }) => id === first)!, id: 'made-up', name: 'Cloth nobody has yet' },
        ],
      },
    ];
    writeFileSync(join(folder, 'quilt.json'), writeProject({ ...quilt, colourways }));
    const run = await runSheet(
      folder,
      'quilt.json',
      '--out',
      'out',
      '--width',
      '64',
      '--colourways',
      '--pattern',
    );
    // The typeface of the pattern has no letter for the night.
    expect(run.error).toBe('pattern.pdf: the typeface lacks 夜; a question mark stands there.\n');
    expect(run.status).toBe(0);
    expect(readdirSync(join(folder, 'out')).toSorted()).toEqual([
      'colourway-1-night-over-day',
      'colourway-2',
      'colourway-3-made-up',
      'pattern.pdf',
      'report.json',
      'wall.png',
      'wall.svg',
    ]);
    const svg = (path: string) => readFileSync(join(folder, 'out', path, 'wall.svg'), 'utf8');
    expect(svg('')).toContain(`data-fabric="${first}"`);
    expect(svg('')).not.toContain('data-fabric="made-up"');
    expect(svg('colourway-3-made-up')).toContain('data-fabric="made-up"');
    const report = readFileSync(join(folder, 'out', 'colourway-3-made-up', 'report.json'), 'utf8');
    expect(report).toContain('Cloth nobody has yet');
    const pdf = await readPdf(
      new Uint8Array(readFileSync(join(folder, 'out', 'colourway-3-made-up', 'pattern.pdf'))),
      { lines: false },
    );
    expect(pdf.pages.map((page) => page.text).join('')).toContain('Clothnobodyhasyet');
    expect(svg('colourway-1-night-over-day')).not.toContain(`data-fabric="${first}"`);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});
