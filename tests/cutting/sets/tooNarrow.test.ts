// A strip is too narrow or it is not: whatever asks (a file opened, sets made at random, a plan, strips left after cutting,
// a set to be mended, strips to be split) answers alike, to a hair's breadth either side of two seams.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { afterCutting } from '../../../src/cutting/plan/afterCutting';
import { totalsTable } from '../../../src/cutting/plan/setTotals';
import { mendHeight } from '../../../src/cutting/sets/mendHeight';
import { makeSets } from '../../../src/cutting/sets/randomSets';
import { apply } from '../../../src/editing/apply';
import { splitStrips } from '../../../src/editing/commands/stripsOnHand';
import { checkReferences } from '../../../src/model/check';
import { createProject } from '../../../src/model/create';
import { isTooNarrow } from '../../../src/model/lengths';
import type { Project } from '../../../src/model/project';
import { plainFabrics, stripSet } from '../fabrics';

const SEAMS = [0.0625, 0.1875, 0.25, 0.3, 0.375, 0.5];
/** Off two seams: on either side of a hair (a thousand-millionth of an inch), a ruler's divisions, and anything. */
const off = fc.oneof(
  fc.constantFrom(-1 / 16, -1e-6, -2e-9, -5e-10, 0, 5e-10, 2e-9, 1e-6, 1 / 16),
  fc.double({ min: -0.1, max: 2, noNaN: true }),
);

function onTable(width: number, seam: number): Project {
  const project = createProject('p', 'P');
  const fabrics = plainFabrics(1);
  const wedge = { ...project.wedge, seam };
  return {
    ...project,
    fabrics,
    wedge,
    stripsOnHand: [{ id: 'h1', fabric: 'f1', width, length: 40, count: 30 }],
  };
}

/** What each part of the tool says of strips cut so wide. */
function verdicts(width: number, seam: number): Record<string, boolean> {
  const project = onTable(width, seam);
  const { fabrics, stripsOnHand, wedge } = project;
  const has = (problems: readonly { readonly code: string }[]) =>
    problems.some(({ code }) => code === 'strip-too-narrow');
  const inSet = { ...project, stripsOnHand: [], stripSets: [stripSet('a', [{ fabric: 'f1', width }])] };
  const wide = { ...stripsOnHand[0]!, width: 8, count: 1 };
  const split = apply({ ...project, stripsOnHand: [wide] }, splitStrips(project, 'h1', 1, width));
  const made = makeSets({
    fabrics,
    lookalikes: project.preferences.lookalikes,
    stripsOnHand,
    wedge,
    keep: [],
    want: { sets: 1 },
    seed: 1,
  });
  const cut = { width, count: 1, parts: 1, length: 40 };
  const table = { clothOnHand: [{ id: 'c1', fabric: 'f1', kind: 'yardage', stripLength: 40, depth: 9, count: 1 }], stripsOnHand: [] } as const; // biome-ignore format: one row
  const after = afterCutting(table, [{ of: 'cloth', row: 'c1', strips: [cut] }] as never, seam);
  // Just low enough for the strip to reach, if it adds anything.
  const low = { ...wedge, cutHeight: 1 + Math.max(3e-9, width - 2 * seam) / 2 };
  const mend = mendHeight(stripSet('a', [{ fabric: 'f1', width: 1 }]), low, stripsOnHand);
  return {
    'on hand': has(checkReferences(project)),
    'in a set': has(checkReferences(inSet)),
    'split off': !split.ok && has(split.problems),
    'made at random': made.whyLeft.some(({ rule }) => rule === 'narrow'),
    'left after cutting': after.stripsOnHand.length === 0,
    planned: totalsTable([{ width, part: 1 }], 2 * seam + Math.max(1e-6, width - 2 * seam), seam)(1) === null,
    mending: (mend?.add.length ?? 0) === 0,
  };
}

it('is the same verdict everywhere', () => {
  fc.assert(
    fc.property(fc.constantFrom(...SEAMS), off, (seam, more) => {
      const width = 2 * seam + more;
      fc.pre(width > 0.01);
      const narrow = isTooNarrow(width, seam);
      const said = verdicts(width, seam);
      expect(said).toEqual(Object.fromEntries(Object.keys(said).map((place) => [place, narrow])));
    }),
    { seed: 20260412, numRuns: 150 },
  );
});
