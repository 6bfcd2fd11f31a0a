import { expect, test } from 'vitest';
import { rimClashes } from '../../src/balance/clashes/wedgeClashes';
import { sheetAnalysis, sheetReport } from '../../src/cli/report';
import { drawProject } from '../../src/drawing/drawProject';
import type { Preferences, Project } from '../../src/model/project';
import { balanceAtOnce } from '../../src/store/analysis/atOnce';
import { awkwardTop } from '../arrange/awkwardTop';
import { demo } from '../demo';

const example = demo('harbour-reading-corner');

function wishing(preferences: Partial<Preferences>): Project {
  return { ...example, preferences: { ...example.preferences, ...preferences } };
}

interface Told {
  readonly clashes: { kind: string; against: string | null }[];
  readonly clashTotals: { count: number; weight: number; byKind: Record<string, { count: number }> };
  readonly findings: { id: string; kind: string }[];
}

function report(project: Project): Told {
  return sheetReport(project, drawProject(project), sheetAnalysis(project)) as Told;
}

test('the report counts more look-alikes the farther apart two cloths may be and still read as one', () => {
  const counts = [0, 20, 35].map((lookalikes) => report(wishing({ lookalikes })).clashTotals.count);
  expect(counts[0]).toBeLessThan(counts[1]!);
  expect(counts[1]).toBeLessThan(counts[2]!);
});

test('the report scores the top by the order of values that is wanted', () => {
  const terms = (['scattered', 'light middle'] as const).map(
    (value) => sheetAnalysis(wishing({ intent: { value, colour: 'scattered' } })).terms.valueSpread,
  );
  expect(terms[0]).not.toBeCloseTo(terms[1]!, 2);
});

test('report, screen and workshop find the same', () => {
  for (const lookalikes of [0, 5, 25]) {
    const project = wishing({ lookalikes });
    const told = report(project);
    const { clashes, findings } = balanceAtOnce(project);
    expect(told.clashTotals.count).toBe(clashes.length);
    expect(told.findings.map((one) => one.kind)).toEqual(
      findings.map((one) => (one.kind === 'setting' ? 'surround' : one.kind)),
    );
    const rims = clashes.filter((one) => one.kind === 'rim').length;
    const all = project.blocks.map((block) => block.id);
    expect(rimClashes(project, all, [])).toEqual({ now: rims, after: rims });
  }
});

test('version 1 of the report keeps the words its readers know for rims against the setting', () => {
  const against = new Set<string | null>();
  const kinds = new Set<string>();
  for (let seed = 0; seed < 8; seed += 1) {
    const top = awkwardTop(seed, 8);
    // The setting in a fabric that lies on rims, so that it meets itself in every part of the setting.
    const fabric = top.stripSets[0]!.strips[0]!.fabric;
    top.setting.plain = seed % 2 === 0 ? { fabric, cells: 'second' } : null;
    if (top.setting.layout.kind === 'onPoint') {
      top.setting.layout = { ...top.setting.layout, sides: fabric, corners: fabric };
      top.setting.sashing.where = 'none';
    }
    const { clashes, clashTotals, findings } = report(top);
    expect(Object.keys(clashTotals.byKind)).toEqual(['rim', 'radial', 'facing', 'surround']);
    for (const clash of clashes) {
      expect(clash.kind === 'surround').toBe(clash.against !== null);
      against.add(clash.against);
      kinds.add(clash.kind);
    }
    const surround = clashes.filter((clash) => clash.kind === 'surround').length;
    expect(clashTotals.byKind.surround!.count).toBe(surround);
    for (const finding of findings) {
      if (finding.id.endsWith(':together')) expect(finding.id).toBe(`${finding.kind}:together`);
      kinds.add(finding.kind);
    }
  }
  expect([...against].map(String).sort()).toEqual([
    'border',
    'corner',
    'null',
    'plain',
    'sashing',
    'setting',
  ]);
  expect(kinds.has('setting')).toBe(false);
});
