// Beginning an empty quilt: what is put on the lists, and that each way makes a whole top.
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { standIns } from '../../../src/cloth/standIns';
import { sizeOffers } from '../../../src/cutting/top/sizeOffers';
import { apply, type Command } from '../../../src/editing/apply';
import { beginAtSize, beginWith, beginWithRoll, type NewFabric } from '../../../src/editing/commands/begin';
import { layQuilt } from '../../../src/editing/commands/layQuilt';
import type { BlocksWanted } from '../../../src/editing/whole/sewSets';
import { layOut } from '../../../src/geometry/setting';
import { createProject } from '../../../src/model/create';
import { holdsNothing } from '../../../src/model/find';
import { speak } from '../../../src/model/phrase';
import type { Project } from '../../../src/model/project';
import { runs } from '../../runs';
import { laidOut } from '../whole/toTheEnd';
import { after } from '../workshopProject';

const empty = createProject('new', 'New');
const fabrics = (count: number) =>
  standIns(count).map(({ colour, name }): NewFabric => ({ name: speak(name), colour, cloth: { kind: 'plain' }, background: false })); // biome-ignore format: a row

function begun(command: Command): Project {
  const outcome = apply(empty, command);
  if (!outcome.ok) throw new Error(speak(outcome.problems[0]!.message));
  return outcome.project;
}

/** The quilt laid out, with every cell full of a whole block. */
function wholeTop(project: Project, want: BlocksWanted = 'most'): Project {
  const { parts } = laidOut(project, { want, budget: { steps: 200 } });
  const laid = parts ? after(project, () => layQuilt(parts)) : project;
  expect(laid.wall.cells.length).toBeGreaterThan(0);
  expect(laid.wall.cells.filter((cell) => cell === null)).toEqual([]);
  expect(laid.blocks.flatMap((block) => block.places).filter((place) => place === null)).toEqual([]);
  return laid;
}

describe('a size that is wanted', () => {
  it('becomes a whole top of that size, with a border of another fabric than what it lies against', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 26, max: 75 }),
        fc.integer({ min: 26, max: 75 }),
        fc.integer({ min: 5, max: 16 }),
        (width, height, count) => {
          const [offer] = sizeOffers(empty, { width, height });
          if (!offer) return;
          const project = begun(beginAtSize(fabrics(count), offer));
          expect(layOut(project).width).toBeCloseTo(offer.width, 9);
          for (const border of project.setting.borders) expect(border.fabric).not.toBe('f1');
          const laid = wholeTop(project, { blocks: offer.blocks });
          expect(laid.blocks).toHaveLength(offer.blocks);
          expect([laid.wall.rows, laid.wall.columns]).toEqual([offer.rows, offer.columns]);
        },
      ),
      { numRuns: runs(3, 12) },
    );
  });
});

it.each([
  [8, 40, 2.5],
  [20, 40, 2.5],
  [13, 80, 1.5],
])(
  '%i fabrics in a roll of %i strips are shared as evenly as they go, and make a whole top',
  (count, strips, width) => {
    const project = begun(beginWithRoll(fabrics(count), { width, length: 42, count: strips }));
    const each = project.stripsOnHand.map((row) => row.count);
    expect(each.reduce((sum, one) => sum + one, 0)).toBe(strips);
    expect(Math.max(...each) - Math.min(...each)).toBeLessThanOrEqual(1);
    expect(wholeTop(project).blocks.length).toBeGreaterThanOrEqual(8);
  },
);

test('eight fabrics with five strips each, and eight fat quarters, make whole tops of several blocks', () => {
  const strips = [1, 1.5, 2].map((width, at) => ({ width, length: 40, count: [2, 2, 1][at]! }));
  expect(wholeTop(begun(beginWith(fabrics(8), { strips }))).blocks.length).toBeGreaterThanOrEqual(4);
  const cloth = [{ kind: 'fat quarter' as const, depth: 18, stripLength: 20, count: 1 }];
  expect(wholeTop(begun(beginWith(fabrics(8), { cloth }))).blocks.length).toBeGreaterThanOrEqual(6);
});

test('rows of nothing are left out', () => {
  const none = { width: 2, length: 40, count: 0 };
  const project = begun(beginWith(fabrics(2), { strips: [none], cloth: [{ kind: 'remnant', depth: 9, stripLength: 20, count: 0 }] })); // biome-ignore format: short
  expect([project.stripsOnHand, project.clothOnHand]).toEqual([[], []]);
});

describe('a quilt that holds nothing', () => {
  it('is a new one, whatever its background fabrics and its wall', () => {
    expect(holdsNothing(empty)).toBe(true);
    const grounds = [...empty.fabrics, { ...empty.fabrics[0]!, id: 'f2' }];
    expect(holdsNothing({ ...empty, fabrics: grounds, wall: { rows: 1, columns: 1, cells: [null] } })).toBe(
      true,
    );
  });

  it('holds something with its first fabric, strip, piece of fabric, set or block', () => {
    const full = wholeTop(begun(beginWithRoll(fabrics(8), { width: 2.5, length: 42, count: 40 })));
    expect(holdsNothing(begun(beginWith(fabrics(1), {})))).toBe(false);
    const piece = { id: 'c1', fabric: 'f1', kind: 'remnant' as const, depth: 9, stripLength: 20, count: 1 };
    expect(holdsNothing({ ...empty, clothOnHand: [piece] })).toBe(false);
    for (const part of ['stripsOnHand', 'stripSets', 'blocks'] as const) {
      expect(holdsNothing({ ...empty, [part]: full[part] }), part).toBe(false);
    }
  });
});
