// Seams nest where neighbours are pressed opposite ways: common practice, no source.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { seamLie, seamsNotNesting, wantedTip } from '../../../src/cutting/wedges/nesting';
import { createBlock } from '../../../src/model/create';
import type { Place } from '../../../src/model/project';
import { workshopProject } from '../../editing/workshopProject';

const up: Place = { set: 's1', tip: 'up' };
const down: Place = { set: 's1', tip: 'down' };

test('a tip-up wedge of a set pressed towards its first strip has its seams towards the rim', () => {
  expect(seamLie({ pressing: 'first' }, 'up')).toBe('rim');
  expect(seamLie({ pressing: 'first' }, 'down')).toBe('middle');
  expect(seamLie({ pressing: 'last' }, 'up')).toBe('middle');
  expect(seamLie({ pressing: 'last' }, 'down')).toBe('rim');
});

test('an empty block wants tip up on place 1 and the tips in turn after it', () => {
  const places = Array.from({ length: 8 }, () => null);
  expect(places.map((_, place) => wantedTip(places, place))).toEqual([
    'up', 'down', 'up', 'down', 'up', 'down', 'up', 'down',
  ]); // biome-ignore format: a ring
});

test('a block begun with tip down on place 1 is carried on that way', () => {
  const places = [down, null, null, up, null, null, null, null];
  expect(wantedTip(places, 1)).toBe('up');
  expect(wantedTip(places, 2)).toBe('down');
  expect(wantedTip(places, 0)).toBe('down');
});

test('filling the places one by one, in any order, always ends in tips in turn', () => {
  const orders = fc.shuffledSubarray([0, 1, 2, 3, 4, 5, 6, 7], { minLength: 8 });
  fc.assert(
    fc.property(orders, (order) => {
      const places: (Place | null)[] = Array.from({ length: 8 }, () => null);
      for (const place of order) places[place] = { set: 's1', tip: wantedTip(places, place) };
      places.forEach((place, at) => {
        expect(place!.tip).not.toBe(places[(at + 1) % 8]!.tip);
      });
    }),
    { seed: 4 },
  );
});

test('two neighbours pressed the same way are told, across place 8 to place 1 too', () => {
  const project = workshopProject();
  const block = { ...createBlock(project), places: [up, down, down, null, null, null, down, up] };
  expect(seamsNotNesting(project, block)).toEqual([
    [1, 2],
    [7, 0],
  ]);
});

test('wedges of one tip nest where one of their sets is pressed the other way', () => {
  const project = workshopProject();
  const [first, second] = project.stripSets;
  const pressed = { ...project, stripSets: [first!, { ...second!, pressing: 'first' as const }] };
  const block = {
    ...createBlock(project),
    places: [up, { set: 's2', tip: 'up' as const }, null, null, null, null, null, null],
  };
  expect(seamsNotNesting(project, block)).toEqual([[0, 1]]);
  expect(seamsNotNesting(pressed, block)).toEqual([]);
});
