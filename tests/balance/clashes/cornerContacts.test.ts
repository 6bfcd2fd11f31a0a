// Corner triangles and borders against the polygons of the exported picture: corners of cloths that are no background, so
// that they count, mixed over the top; and borders straight on the blocks, with no sashing in between.
import { describe, expect, it } from 'vitest';
import type { Clash } from '../../../src/balance/clashes/clashes';
import { drawProject } from '../../../src/drawing/drawProject';
import { drawingToSvg } from '../../../src/drawing/svg';
import { checkReferences } from '../../../src/model/check';
import type { Project } from '../../../src/model/project';
import { runs } from '../../runs';
import { clashList } from '../clashList';
import { dice, scrappyTop } from '../tops';
import { piecesOfSvg, sameClothContacts } from './measuredContacts';

/** A top whose blocks have corners of one of a few cloths that its wedges are cut from too. */
function mixedCorners(seed: number, perBlock: 6 | 8 | 10 | 12 = 8): Project {
  const top = scrappyTop({ rows: 3, columns: 4, seed, fabrics: 5, perBlock });
  const random = dice(seed + 500);
  const blocks = top.blocks.map((block) => ({ ...block, cornerFabric: `c${1 + random.below(3)}` }));
  return { ...top, blocks };
}

function bordered(project: Project): Project {
  const borders = [{ fabric: 'c2', width: 3 }];
  return { ...project, setting: { ...project.setting, borders } };
}

function names(clash: Clash): string {
  if (clash.kind === 'facing' && clash.places.length === 0) {
    return clash.numbers
      .map((number) => `${number}.corner`)
      .sort()
      .join(' | ');
  }
  const first = `${clash.numbers[0]}.${clash.places[0]}`;
  const against = clash.settingPart === 'corner' ? `${clash.numbers[0]}.corner` : clash.settingPart;
  const second = against ?? `${clash.numbers[1] ?? clash.numbers[0]}.${clash.places[1]}`;
  return [first, second].sort().join(' | ');
}

function listed(project: Project): Map<string, number> {
  const found = new Map<string, number>();
  for (const clash of clashList(project)) {
    if (clash.likeness < 1) continue;
    found.set(names(clash), (found.get(names(clash)) ?? 0) + clash.inches);
  }
  return found;
}

function inThePicture(project: Project): Map<string, number> {
  return sameClothContacts(piecesOfSvg(drawingToSvg(drawProject(project))));
}

/** Compares the two and returns how many contacts of the wanted kind there were. */
function expectSame(project: Project, about: RegExp): number {
  expect(checkReferences(project)).toEqual([]);
  // What frames the blocks may lie against their corners by design (clashes.ts): no clash, so it is left out here too.
  const measured = [...inThePicture(project)].filter(([key]) => !/^\d+\.corner \| [a-z]+$/.test(key));
  const found = listed(project);
  expect([...found.keys()].sort()).toEqual(measured.map(([key]) => key).sort());
  for (const [key, inches] of measured) expect(found.get(key), key).toBeCloseTo(inches, 2);
  return measured.filter(([key]) => about.test(key)).length;
}

describe('clashes are as long as in the exported picture', () => {
  for (const perBlock of [6, 8, 10, 12] as const) {
    it(`between corner triangles of two blocks, and of a block with its rims, with ${perBlock} wedges to the block`, () => {
      const tops = [31, 32, 33, 34].slice(0, runs(2, 4)).map((seed) => mixedCorners(seed, perBlock));
      const count = (about: RegExp) => tops.reduce((sum, top) => sum + expectSame(top, about), 0);
      expect(count(/^\d+\.corner \| \d+\.corner$/)).toBeGreaterThan(runs(5, 10));
      expect(count(/^\d+\.\d+ \| \d+\.corner$/)).toBeGreaterThan(runs(0, 2));
    });
  }

  it('between rims and a border straight on the blocks', () => {
    const tops = [33, 34, 35, 36, 37].map((seed) => bordered(mixedCorners(seed)));
    const met = tops.reduce((sum, top) => sum + expectSame(top, /\| border$/), 0);
    expect(met).toBeGreaterThan(2);
  });
});
