// Commands on blocks in pictures, and what holds for any quilt that mixes them with pieced blocks: cutting and kits do not see them,
// making them pieced changes nothing of the analysis, and a file holds all of them.

import fc from 'fast-check';
import { applyPatches } from 'immer';
import { describe, expect, it } from 'vitest';
import { analyse } from '../../../src/balance/analyse';
import { borderFabric } from '../../../src/cloth/borderFabric';
import { kits } from '../../../src/cutting/kits/kits';
import { wedgeLedger } from '../../../src/cutting/wedges/ledger';
import { yardage } from '../../../src/cutting/yardage/yardage';
import { apply } from '../../../src/editing/apply';
import { removeBlock, setBlockProgress, setCornerFabric } from '../../../src/editing/commands/blocks';
import { removeFabric, replaceFabric } from '../../../src/editing/commands/fabrics';
import { changeWedge } from '../../../src/editing/commands/stripSets';
import { writeBlockList } from '../../../src/editing/entering/blockList';
import { openDocument } from '../../../src/editing/openDocument';
import { addPictured, type NewPictured } from '../../../src/editing/pictured/addPictured';
import { addAsPieced, makePieced } from '../../../src/editing/pictured/makePieced';
import { putBandRight, turnReading } from '../../../src/editing/pictured/putRight';
import { apothem } from '../../../src/geometry/wedge';
import {
  exchangeForColourway,
  fabricsInUse,
  inColourway,
  picturesInQuilt,
} from '../../../src/model/colourway';
import { findBlock, stepsPerTurn, turnsOf } from '../../../src/model/find';
import { speak } from '../../../src/model/phrase';
import { picturesUsed } from '../../../src/model/picture/picture';
import type { PicturedBlock, Project, ShownBand } from '../../../src/model/project';
import { awkwardTop, ruledTop } from '../../arrange/awkwardTop';
import { figures, rounded } from '../../balance/figures';
import { inMask, pictureNumber, withPictures } from '../../geometry/pictured';
import { runs } from '../../runs';
import { done, refusal } from '../outcomes';

const RUNS = { numRuns: runs(5, 40), seed: 1207 };
const mask = fc.integer({ min: 1, max: 2 ** 20 - 1 });
const top = fc
  .tuple(fc.integer({ min: 0, max: 400 }), fc.constantFrom(6, 8, 10, 12), fc.boolean())
  .map(([seed, perBlock, ruled]) => (ruled ? ruledTop : awkwardTop)(seed, perBlock as 6 | 8 | 10 | 12));

const pictures = (project: Project) =>
  project.blocks.filter((block): block is PicturedBlock => block.kind === 'pictured');
const pictured = (project: Project, id: string) => pictures(project).find((block) => block.id === id)!;

/** With other bands in a place of a pictured block. */
function showing(project: Project, id: string, place: number, bands: ShownBand[]): Project {
  const wedges = pictured(project, id).wedges.map((wedge, at) => (at === place ? { bands } : wedge));
  return {
    ...project,
    blocks: project.blocks.map((block) =>
      block.id === id && block.kind === 'pictured' ? { ...block, wedges } : block,
    ),
  };
}

/** Without the blocks of the mask: they are gone, and their cells are empty. */
function without(project: Project, masked: number): Project {
  const gone = new Set(project.blocks.filter((_, at) => inMask(masked, at)).map(({ id }) => id));
  return {
    ...project,
    blocks: project.blocks.filter(({ id }) => !gone.has(id)),
    wall: {
      ...project.wall,
      cells: project.wall.cells.map((cell) => (cell && gone.has(cell.block) ? null : cell)),
    },
  };
}

describe('any quilt with blocks in pictures', () => {
  it('is cut, bought and packed as the quilt without those blocks', () => {
    fc.assert(
      fc.property(top, mask, fc.constantFrom('whole' as const, 'left' as const), (project, some, scope) => {
        const mixed = withPictures(project, some);
        const rest = without(project, some);
        // What it says of empty places and of sewn blocks differs.
        const { remarks: _, ...list } = yardage(mixed, scope);
        const { remarks: __, ...restList } = yardage(rest, scope);
        expect(list).toEqual(restList);
        const { remarks: ___, ...kit } = kits(mixed);
        const { remarks: ____, ...restKit } = kits(rest);
        expect(kit).toEqual(restKit);
        expect(wedgeLedger(mixed)).toEqual(wedgeLedger(rest));
      }),
      RUNS,
    );
  });

  it('stands the same once its pictures are made pieced, and one undo brings them back', () => {
    fc.assert(
      fc.property(top, mask, (project, some) => {
        const mixed = withPictures(project, some);
        const whole = pictures(mixed).filter(({ wedges }) => wedges.every(({ bands }) => bands.length > 0));
        const outcome = apply(
          mixed,
          makePieced(
            mixed,
            whole.map(({ id }) => id),
          ),
        );
        if (!outcome.ok) throw new Error(speak(outcome.problems[0]!.message));
        const after = outcome.project;
        expect(pictures(after).length).toBe(pictures(mixed).length - whole.length);
        expect(rounded(figures(analyse(after)))).toEqual(rounded(figures(analyse(mixed))));
        for (const { set, left } of wedgeLedger(after).slice(project.stripSets.length))
          expect([set.progress, left]).toEqual(['cut', { up: 0, down: 0 }]);
        expect(applyPatches(after, [...outcome.change.inverse])).toEqual(mixed);
      }),
      RUNS,
    );
  });

  it('gets a pieced block from a picture as if its picture had been added and made pieced', () => {
    fc.assert(
      fc.property(top, mask, fc.nat(3), (project, some, from) => {
        const shown = pictures(withPictures(project, 2 ** 20 - 1)).filter(({ wedges }) =>
          wedges.every(({ bands }) => bands.length > 0),
        );
        fc.pre(shown.length > from);
        const { picture, wedges, cornerShift } = shown[from]!;
        const block = {
          picture,
          wedges,
          cornerShift,
          cornerFabric: null,
          number: null,
          hang: 'firstEmpty' as const,
        };
        const mixed = withPictures(project, some);
        const added = done(mixed, addPictured([block]));
        const after = done(mixed, addAsPieced(block));
        expect(after).toEqual(done(added, makePieced(added, [added.blocks.at(-1)!.id])));
        expect(pictures(after)).toEqual(pictures(mixed));
        expect(after.blocks.at(-1)).toMatchObject({ photo: { picture, turn: 0 } });
        expect(picturesUsed(after)).toContain(picture);
      }),
      RUNS,
    );
  });

  it('shares a set between wedges that show the same', () => {
    const project = awkwardTop(2, 8);
    const mixed = withPictures(project, 2 ** 20 - 1);
    const whole = pictures(mixed).filter(({ wedges }) => wedges.every(({ bands }) => bands.length > 0));
    const after = done(
      mixed,
      makePieced(
        mixed,
        whole.map(({ id }) => id),
      ),
    );
    // Six sets were cut tip up and tip down: there are no more than twelve ways in which a wedge can look.
    const made = after.stripSets.length - project.stripSets.length;
    expect(made).toBeGreaterThan(6);
    expect(made).toBeLessThanOrEqual(12);
    expect(after.stripSets.slice(-made).reduce((sum, set) => sum + set.cut!.up, 0)).toBe(8 * whole.length);
  });

  it('comes out of its file as it went in', () => {
    fc.assert(
      fc.property(top, mask, fc.nat(3), (project, some, known) => {
        const mixed = withPictures(project, some, (_, place) => (place % 3 === 0 ? known : Infinity));
        const opened = openDocument(JSON.parse(JSON.stringify(mixed)));
        expect(opened).toEqual({ ...opened, ok: true, value: mixed });
      }),
      RUNS,
    );
  });

  it('looks the same where a colourway exchanges every fabric', () => {
    fc.assert(
      fc.property(top, mask, (project, some) => {
        const mixed = withPictures(project, some);
        const swaps = project.fabrics.map(({ id }) => ({ fabric: id, by: project.fabrics[0]!.id }));
        const other = inColourway(mixed, { id: 'w', name: 'Other', swaps });
        expect(pictures(other).map(({ wedges }) => wedges)).toEqual(pictures(mixed).map(({ wedges }) => wedges));
        const corners = (one: Project) => {
          const { corner, cloths } = analyse(one).model;
          return pictures(one).map(({ id }) => cloths.fabrics[corner[one.blocks.findIndex((block) => block.id === id)]!]!.id);
        };
        expect(corners(other)).toEqual(corners(mixed));
        expect(picturesInQuilt(other)).toBe(pictures(mixed).length);
      }),
      RUNS,
    );
  }); // biome-ignore format: short

  it('follows a fabric that is replaced, and keeps one that only a picture shows', () => {
    const mixed = withPictures(awkwardTop(3, 8), 5);
    const only = {
      ...mixed,
      fabrics: [...mixed.fabrics, { ...mixed.fabrics[1]!, id: 'only', name: 'Only' }],
    };
    const shown = done(only, putBandRight(only, 'b0', 0, 0, 'only'));
    expect(fabricsInUse(shown).map(({ id }) => id)).not.toContain('only');
    expect(refusal(shown, removeFabric(shown, 'only'))).toContain('The picture of block 1 shows Only.');
    const replaced = done(shown, replaceFabric(shown, 'only', 'c1'));
    expect(pictured(replaced, 'b0').wedges[0]!.bands[0]!.fabric).toBe('c1');
    const draft = structuredClone(shown);
    exchangeForColourway(draft, { id: 'w', name: '', swaps: [{ fabric: 'only', by: 'c1' }] });
    expect(pictured(draft, 'b0').wedges[0]!.bands[0]!.fabric).toBe('only');
  });
});

describe('the commands on blocks in pictures', () => {
  const project = awkwardTop(0, 8);
  const mixed = withPictures(project, 0b110);
  const read: NewPictured = {
    picture: pictureNumber(77),
    wedges: pictured(mixed, 'b1').wedges,
    cornerShift: 1,
    cornerFabric: null,
    number: null,
    hang: 'firstEmpty',
  };

  it('add one in the first empty cell, or many of a wall in their cells, what hung there to the side table', () => {
    const one = done(project, addPictured([read]));
    const added = pictures(one)[0]!;
    expect(added).toMatchObject({ number: 21, progress: 'squared', cornerShift: 1, places: [] });
    expect(one.wall.cells[0]).toEqual({ block: added.id, turn: 0, pinned: false });
    const many = done(
      project,
      addPictured([3, 4, 5].map((cell) => ({ ...read, hang: { cell, turn: cell % 4 }, number: 100 + cell }))),
    );
    expect(pictures(many).map(({ number }) => number)).toEqual([103, 104, 105]);
    expect([3, 4, 5].map((cell) => many.wall.cells[cell]!.turn)).toEqual([3, 0, 1]);
    expect(many.blocks.length).toBe(23);
    const hung = many.wall.cells.map((cell) => cell?.block);
    expect([3, 4, 5].every((at) => !hung.includes(`b${at}`))).toBe(true);
  });

  it('refuse a cell that is pinned, not there or a plain square, and a number or a fabric that is wrong', () => {
    const pinned = structuredClone(project);
    pinned.wall.cells[3]!.pinned = true;
    const into = (cell: number) => addPictured([{ ...read, hang: { cell, turn: 0 } }]);
    expect(refusal(pinned, into(3))).toContain('is pinned');
    expect(refusal(project, into(99))).toContain('no block has its place');
    expect(refusal(project, addPictured([{ ...read, number: 4 }]))).toContain(
      'Two blocks have the number 4.',
    );
    expect(refusal(project, addPictured([{ ...read, cornerFabric: 'gone' }]))).toContain(
      'There is no fabric',
    );
    expect(refusal(project, addPictured([{ ...read, wedges: read.wedges.slice(1) }]))).toContain(
      'is a picture of 7 wedges',
    );
    const most = addPictured(Array.from({ length: 1600 }, () => read));
    expect(refusal(project, most)).toContain('1,600 blocks at most');
  });

  it('put a band and an unknown rim right, each of them sure', () => {
    const one = done(mixed, putBandRight(mixed, 'b1', 2, 1, 'c4'));
    expect(pictured(one, 'b1').wedges[2]!.bands[1]).toMatchObject({ fabric: 'c4', sure: 1 });
    const bare = showing(mixed, 'b1', 0, []);
    const told = pictured(done(bare, putBandRight(bare, 'b1', 0, 0, 'c5')), 'b1').wedges[0]!.bands;
    expect(told[0]).toMatchObject({ fabric: 'c5', sure: 1 });
    expect(told[1]!.fabric).toBeNull();
    expect(told[0]!.width + told[1]!.width).toBeCloseTo(apothem(mixed.wedge), 9);
    expect(refusal(mixed, putBandRight(mixed, 'b0', 0, 0, 'c1'))).toBe('Block 1 has no picture.');
  }); // biome-ignore format: short

  it('turn the reading under the picture as the block would have been turned', () => {
    fc.assert(
      fc.property(top, fc.integer({ min: -4, max: 8 }), (given, by) => {
        const before = withPictures(given, 0b1110);
        const at = before.wall.cells.findIndex((cell) => cell?.block === 'b2');
        const turns = turnsOf(given.wedge.perBlock);
        const read = done(before, turnReading(before, 'b2', by));
        expect(pictured(read, 'b2').picture).toBe(pictured(before, 'b2').picture);
        // Turned back on the wall, it lies against its neighbours as before.
        const cells = read.wall.cells.map((cell, index) =>
          cell && index === at ? { ...cell, turn: (((cell.turn - by) % turns) + turns) % turns } : cell,
        );
        const back = { ...read, wall: { ...read.wall, cells } };
        const told = (one: Project) => analyse(one).clashes.filter(({ kind }) => kind === 'facing').map(({ inches, fabrics }) => [inches, fabrics]);
        expect(told(back)).toEqual(told(before));
        expect(stepsPerTurn(given.wedge.perBlock) * turns).toBe(given.wedge.perBlock);
      }),
      RUNS,
    );
  }); // biome-ignore format: short

  it('refuse to make a block pieced of which not all is known, and name the place', () => {
    const part = withPictures(project, 0b10, (_, place) => (place === 4 ? 1 : Infinity));
    expect(refusal(part, makePieced(part, ['b1']))).toBe(
      'Block 2, place 5: tell all its fabrics first, from the rim to the middle.',
    );
    const short = showing(mixed, 'b1', 0, [{ fabric: 'c1', width: 2, sure: 1 }]);
    expect(refusal(short, makePieced(short, ['b1']))).toContain('Block 2, place 1');
    const bare = { ...read, wedges: pictured(part, 'b1').wedges };
    expect(refusal(project, addAsPieced(bare))).toContain('Block 21, place 5: tell all its fabrics first');
  });

  it('keep a picture sewn, let it be removed, and its corners told', () => {
    expect(refusal(mixed, setBlockProgress(['b1'], 'octagon'))).toContain('its corners are on');
    expect(findBlock(done(mixed, setBlockProgress(['b1'], 'joined')), 'b1')!.progress).toBe('joined');
    expect(findBlock(done(mixed, removeBlock(mixed, 'b1')), 'b1')).toBeUndefined();
    expect(findBlock(done(mixed, setCornerFabric(mixed, 'b1', 'c2')), 'b1')!.cornerFabric).toBe('c2');
    expect(refusal(mixed, changeWedge({ perBlock: 12 }))).toContain('is sewn with 8 wedges');
    expect(writeBlockList(mixed, { planned: 'p', octagon: 'o', squared: 's', joined: 'j' }).split('\n').length).toBe(18);
  }); // biome-ignore format: short

  it('keep the shares of the bands where the height of the wedge is corrected', () => {
    const share = (one: Project) =>
      pictured(one, 'b1').wedges[0]!.bands.map(({ width }) => width / apothem(one.wedge));
    const taller = done(mixed, changeWedge({ cutHeight: mixed.wedge.cutHeight + 0.375 }));
    for (const [at, one] of share(taller).entries()) expect(one).toBeCloseTo(share(mixed)[at]!, 9);
    const lower = done(mixed, changeWedge({ cutHeight: mixed.wedge.cutHeight - 2 }));
    for (const [at, one] of share(lower).entries()) expect(one).toBeCloseTo(share(mixed)[at]!, 9);
  });

  it('offer a border that is told apart from the rims of pictures', () => {
    fc.assert(
      fc.property(top, mask, (given, some) => {
        expect(borderFabric(withPictures(given, some))).toBe(borderFabric(given));
      }),
      { ...RUNS, numRuns: runs(3, 15) },
    );
  });
});

/** The way to the first band of a block. */
const BAND = ['wedges', 0, 'bands', 0] as const;

describe('a damaged document with pictures', () => {
  const sound = withPictures(awkwardTop(0, 8), 0b10);
  const cases: [what: string, path: (string | number)[], value: unknown, says: string][] = [
    ['no id of a picture', ['picture'], 'cat.png', 'At block 2, picture: the id of a picture is 64 digits'],
    ['wedges lost', ['wedges'], [], 'Block 2 is a picture of 0 wedges'],
    ['a band as wide as a house', [...BAND, 'width'], 400, 'At block 2, wedge 1, band 1, width: must be at most 60 in'],
    ['a band past the middle', [...BAND, 'width'], 30, 'Block 2, place 1: the bands show'],
    ['a certainty above 1', [...BAND, 'sure'], 2, 'At block 2, wedge 1, band 1, how sure it is'],
    ['a fabric that is gone', [...BAND, 'fabric'], 'gone', 'At block 2, wedge 1, band 1, fabric: There is no fabric with the id gone.'],
    ['a plan to sew it', ['progress'], 'planned', 'Block 2 is a picture of a sewn block'],
    ['wedges of the quilt’s sets', ['places'], [{ set: 's1', tip: 'up' }], 'At block 2, places'],
    ['a corner shift too far', ['cornerShift'], 3, 'Block 2: the corner shift must be less than 2'],
    ['a kind nobody knows', ['kind'], 'painted', 'At block 2, kind'],
  ]; // biome-ignore format: a table

  it.each(cases)('with %s is refused in words', (_what, path, value, says) => {
    const document = JSON.parse(JSON.stringify(sound)) as Project;
    let at = document.blocks[1] as unknown as Record<string | number, unknown>;
    for (const step of path.slice(0, -1)) at = at[step] as Record<string | number, unknown>;
    at[path.at(-1)!] = value;
    const opened = openDocument(document);
    expect(opened.ok ? [] : opened.problems.map(({ message }) => speak(message))).toContainEqual(
      expect.stringContaining(says),
    );
  });
});
