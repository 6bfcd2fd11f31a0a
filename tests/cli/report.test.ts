import { expect, test } from 'vitest';
import { rimMeetings } from '../../src/arrange/mend/wedgeOffers';
import { sheetAnalysis, sheetReport } from '../../src/cli/report';
import { drawProject } from '../../src/drawing/drawProject';
import type { Preferences, Project } from '../../src/model/project';
import { balanceAtOnce } from '../../src/store/analysis/analysis';
import { demo } from '../demo';

const example = demo('harbour-reading-corner');

function wishing(preferences: Partial<Preferences>): Project {
  return { ...example, preferences: { ...example.preferences, ...preferences } };
}

interface Told {
  readonly clashTotals: { count: number; weight: number };
  readonly findings: { kind: string }[];
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
    expect(told.findings.map((one) => one.kind)).toEqual(findings.map((one) => one.kind));
    const rims = clashes.filter((one) => one.kind === 'rim').length;
    const all = project.blocks.map((block) => block.id);
    expect(rimMeetings(project, all, [])).toEqual({ now: rims, after: rims });
  }
});
