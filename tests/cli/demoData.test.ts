// The demo quilts in demo-data: they open, and they are what the script writes from its tables and seeds.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { demoProjects } from '../../scripts/demo/projects';
import { sheetAnalysis } from '../../src/cli/report';
import { stripsUnused } from '../../src/cutting/sets/stripsUnused';
import { openProject } from '../../src/editing/openProject';
import { writeProject } from '../../src/model/reading/read';

const folder = join(import.meta.dirname, '..', '..', 'demo-data');
const demos = demoProjects();

describe('the demo quilts', () => {
  it('are the files of demo-data, no more and no fewer', () => {
    expect(readdirSync(folder).toSorted()).toEqual(demos.map((demo) => demo.file).toSorted());
  });

  it.each(demos)('$file opens and is what scripts/makeDemo.ts writes', ({ file, project }) => {
    const text = readFileSync(join(folder, file), 'utf8');
    expect(text).toBe(writeProject(project));
    expect(openProject(text)).toEqual({ ok: true, value: project, pictures: new Map(), remarks: [] });
  });

  it.each(demos)(
    '$file has 12 to 20 fabrics from near black to near white, and strips for its sets',
    ({ project }) => {
      expect(project.fabrics.length).toBeGreaterThanOrEqual(12);
      expect(project.fabrics.length).toBeLessThanOrEqual(20);
      const { lightness } = sheetAnalysis(project).model.cloths;
      expect(Math.min(...lightness)).toBeLessThan(20);
      expect(Math.max(...lightness)).toBeGreaterThan(90);
      for (const row of stripsUnused(project)) expect(row.left).toBeGreaterThanOrEqual(0);
    },
  );

  it('begin with six blocks that have rims meeting themselves, facing edges, and the dark blocks above the light', () => {
    const { clashes, model } = sheetAnalysis(demos[0]!.project);
    const plain = clashes.filter((clash) => clash.likeness === 1);
    expect(plain.filter((clash) => clash.kind === 'rim').length).toBeGreaterThanOrEqual(2);
    expect(plain.filter((clash) => clash.kind === 'facing').length).toBeGreaterThanOrEqual(2);
    const [one, two, three, four, five, six] = model.lightness;
    expect(Math.min(four!, five!, six!) - Math.max(one!, two!, three!)).toBeGreaterThan(10);
  });
});
