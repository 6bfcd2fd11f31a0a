import { expect, test } from 'vitest';
import { analyse } from '../../../src/balance/analyse';
import { setBlockProgress } from '../../../src/editing/commands/blocks';
import {
  blocksAllowed,
  chooseWedges,
  fillEmpty,
  openBlocks,
} from '../../../src/editing/commands/chooseWedges';
import { findBlock } from '../../../src/model/find';
import { speak } from '../../../src/model/phrase';
import type { Project } from '../../../src/model/project';
import { after, withWedges, workshopProject } from '../workshopProject';

const rims = (project: Project) => analyse(project).clashes.filter((clash) => clash.kind === 'rim').length;

test('two sets of eleven wedges make two whole blocks, not three', () => {
  // H = 8 1/2": each pair takes a base, 6.5473"; five pairs and one wedge take 39.28 of 40". One set begins tip up, the
  // other tip down: 11 up and 11 down in all, four of each to a block.
  expect(blocksAllowed(workshopProject())).toBe(2);
});

test('all wedges are chosen, none twice, and what is said about the rims is true', () => {
  const project = workshopProject();
  const { command, words } = chooseWedges(project, openBlocks(project), 7);
  const chosen = after(project, () => command);
  expect(chosen.blocks.every((block) => !block.places.includes(null))).toBe(true);
  expect(chosen.preferences.seed).toBe(7);
  const said = words.map((one) => speak(one)).join(' ');
  expect(said.includes('No fabric meets itself')).toBe(rims(chosen) === 0);
});

test('the same seed chooses the same wedges', () => {
  const project = workshopProject();
  const once = after(project, (now) => chooseWedges(now, openBlocks(now), 3).command);
  const again = after(project, (now) => chooseWedges(now, openBlocks(now), 3).command);
  expect(again.blocks).toEqual(once.blocks);
});

test('filling the empty places leaves the wedges that are there', () => {
  const begun = withWedges(workshopProject(), 's1 up', 's2 down', 's1 up');
  const filled = after(begun, (now) => fillEmpty(now, 2).command);
  expect(findBlock(filled, 'b1')!.places.slice(0, 3)).toEqual(findBlock(begun, 'b1')!.places.slice(0, 3));
  expect(filled.blocks.every((block) => !block.places.includes(null))).toBe(true);
});

test('a sewn block is not among those whose wedges are chosen', () => {
  const project = workshopProject();
  const chosen = after(
    project,
    (now) => chooseWedges(now, openBlocks(now), 1).command,
    () => setBlockProgress(['b1'], 'octagon'),
  );
  expect(openBlocks(chosen)).toEqual(['b2']);
  const again = after(chosen, (now) => chooseWedges(now, openBlocks(now), 99).command);
  expect(findBlock(again, 'b1')).toEqual(findBlock(chosen, 'b1'));
});
