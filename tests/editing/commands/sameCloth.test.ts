// A new quilt from the cloth of another: sound, and with no strip counted that is sewn already.
import { expect, test } from 'vitest';
import { fromSameCloth } from '../../../src/editing/commands/sameCloth';
import { openProject } from '../../../src/editing/openProject';
import { writeProject } from '../../../src/model/reading/read';
import { demo } from '../../demo';

const demos = ['harbour-reading-corner', 'keepers-winter', 'kiln-shed', 'plum-orchard'];

test.each(demos)('%s gives its cloth to a quilt of six wedges that opens', (name) => {
  const project = demo(name);
  const begun = fromSameCloth(project, 6);
  const again = openProject(writeProject(begun));
  expect(again).toEqual({ ok: true, value: begun, pictures: new Map(), remarks: [] });
  expect(begun.fabrics).toEqual(project.fabrics);
  expect([begun.blocks, begun.stripSets]).toEqual([[], []]);
  const strips = (rows: typeof project.stripsOnHand) => rows.reduce((sum, row) => sum + row.count, 0);
  const sewn = project.stripSets
    .filter((set) => set.progress !== 'planned')
    .reduce((sum, set) => sum + set.strips.length, 0);
  expect(strips(begun.stripsOnHand)).toBeGreaterThanOrEqual(strips(project.stripsOnHand) - sewn);
  expect(strips(begun.stripsOnHand)).toBeLessThanOrEqual(strips(project.stripsOnHand));
});
