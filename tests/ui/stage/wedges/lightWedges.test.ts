// Wedges lit on the wall: as many as the ledger says are used, each of the area of one finished wedge, and in words where they are.
import { describe, expect, it } from 'vitest';
import { type LedgerRow, wedgeLedger } from '../../../../src/cutting/wedges/ledger';
import { cutsInUse, notDrawnWords, wedgeUses } from '../../../../src/cutting/wedges/uses';
import { apothem } from '../../../../src/geometry/wedge';
import { speak } from '../../../../src/model/phrase';
import { lightWedges, whereWords } from '../../../../src/ui/stage/wedges/lightWedges';
import { demo } from '../../../demo';

const DEMOS = ['harbour-reading-corner', 'plum-orchard'] as const;

/** Area of a polygon by the shoelace formula. */
function area(outline: readonly { x: number; y: number }[]): number {
  const twice = outline.reduce((sum, { x, y }, at) => {
    const next = outline[(at + 1) % outline.length]!;
    return sum + x * next.y - y * next.x;
  }, 0);
  return Math.abs(twice) / 2;
}

describe.each(DEMOS)('wedges of %s', (name) => {
  const project = demo(name);
  const hangs = new Set(project.wall.cells.flatMap((cell) => cell?.block ?? []));

  it('are lit wherever a block that hangs uses them', () => {
    // A regular block of N wedges with apothem a has the area N·a²·tan(π/N).
    const one = apothem(project.wedge) ** 2 * Math.tan(Math.PI / project.wedge.perBlock);
    for (const { set } of wedgeLedger(project)) {
      for (const tip of ['up', 'down'] as const) {
        const places = project.blocks
          .filter(({ id }) => hangs.has(id))
          .flatMap(({ places: all }) => all.filter((place) => place?.set === set.id && place.tip === tip));
        const { marks } = lightWedges(project, set.id, tip);
        expect(marks).toHaveLength(places.length);
        for (const mark of marks) expect(mark.kind === 'light' ? area(mark.outline) : 0).toBeCloseTo(one, 6);
      }
    }
  });

  it('are told apart in the diagram: as many used as the ledger says, none twice', () => {
    const uses = wedgeUses(project);
    const seen = new Set<string>();
    for (const { set, used } of wedgeLedger(project)) {
      const cuts = cutsInUse(set, project.wedge, uses);
      for (const tip of ['up', 'down'] as const) {
        expect(cuts.filter((cut) => cut.tip === tip && cut.use)).toHaveLength(used[tip]);
        expect(uses(set.id, tip)).toHaveLength(used[tip]);
      }
      for (const { use } of cuts) {
        if (!use) continue;
        const key = `${use.block} ${use.place}`;
        expect(seen.has(key)).toBe(false);
        seen.add(key);
      }
    }
  });
});

it('of a set counted by hand as many are left in its diagram as in the ledger: the last of a tip are lost', () => {
  const project = demo('harbour-reading-corner');
  const stripSets = wedgeLedger(project).map(({ set, used, available }) => ({
    ...set,
    cut: { up: used.up, down: Math.max(used.down, available.down - 1) },
  }));
  const counted = { ...project, stripSets };
  const uses = wedgeUses(counted);
  let lost = 0;
  for (const { set, left, available } of wedgeLedger(counted)) {
    const cuts = cutsInUse(set, counted.wedge, uses);
    for (const tip of ['up', 'down'] as const) {
      const mine = cuts.filter((cut) => cut.tip === tip);
      expect(mine.filter((cut) => cut.use === null && !cut.lost)).toHaveLength(left[tip]);
      expect(mine.filter((cut) => cut.lost)).toHaveLength(mine.length - available[tip]);
      lost += mine.length - available[tip];
    }
  }
  expect(lost).toBeGreaterThan(0);
});

it.each([
  [{ up: 2, down: 0 }, 'Not drawn: 2 tip up more than fit on set A.'],
  [{ up: 0, down: 1 }, 'Not drawn: 1 tip down more than fit on set A.'],
  [{ up: -1, down: 3 }, 'Not drawn: 3 tip down more than fit on set A.'],
  [{ up: 1, down: 1 }, 'Not drawn: 1 tip up and 1 tip down more than fit on set A.'],
  [{ up: -1, down: 0 }, null],
])('of a set counted by hand what is not in its diagram is told: %j', (by, told) => {
  const project = demo('harbour-reading-corner');
  const [{ set, available }] = wedgeLedger({ ...project, blocks: [] }) as [LedgerRow];
  const counted = { ...set, cut: { up: available.up + by.up, down: available.down + by.down } };
  const drawn = cutsInUse(counted, project.wedge, () => []).filter(({ lost }) => !lost);
  const missing = counted.cut.up + counted.cut.down - drawn.length;
  const words = notDrawnWords(counted, project.wedge);
  expect(words === null ? null : speak(words)).toBe(told);
  expect(missing).toBe(Math.max(0, by.up) + Math.max(0, by.down));
  // A set that is too low gives no wedge, and has no diagram.
  const low = { ...counted, strips: counted.strips.slice(0, 1), cut: { up: 1, down: 0 } };
  expect(speak(notDrawnWords(low, project.wedge)!)).toBe('Not drawn: 1 tip up more than fit on set A.');
});

it('says in which blocks they are, and which of those wait on the side table', () => {
  const project = demo('harbour-reading-corner');
  const down = { ...project, wall: { ...project.wall, cells: [null, ...project.wall.cells.slice(1)] } };
  const first = project.wall.cells[0]!.block;
  const { number, places } = project.blocks.find(({ id }) => id === first)!;
  const wedge = places.find((place) => place !== null)!;
  expect(speak(whereWords(down, wedge.set, wedge.tip))).toContain(`On the side table: block ${number}.`);
  const spare = { ...project, blocks: [] };
  expect(speak(whereWords(spare, wedge.set, wedge.tip))).toBe('In no block: all are left.');
});
