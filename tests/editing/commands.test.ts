// Every command passes one shared test: it leaves the project it was given alone, its inverse brings it back, its patches
// make the change again, and it has words for undo.
import { applyPatches } from 'immer';
import { describe, expect, it } from 'vitest';
import { sizeOffers } from '../../src/cutting/top/sizeOffers';
import { apply, type Command } from '../../src/editing/apply';
import * as begin from '../../src/editing/commands/begin';
import * as blocks from '../../src/editing/commands/blocks';
import { addFilledBlocks } from '../../src/editing/commands/chooseWedges';
import * as cloth from '../../src/editing/commands/clothOnHand';
import * as fabrics from '../../src/editing/commands/fabrics';
import { layQuilt } from '../../src/editing/commands/layQuilt';
import { carryStrip } from '../../src/editing/commands/sets/carryStrip';
import { changeHeightEmptying, changeWedgesEmptying } from '../../src/editing/commands/sets/wedgesPerBlock';
import * as setting from '../../src/editing/commands/setting';
import * as stripGrid from '../../src/editing/commands/stripGrid';
import * as stripSets from '../../src/editing/commands/stripSets';
import * as wall from '../../src/editing/commands/wall';
import { enterBlocks } from '../../src/editing/entering/enterBlocks';
import { EMPTY_HISTORY, nextLabels, record, redo, undo } from '../../src/editing/history';
import { addPictured } from '../../src/editing/pictured/addPictured';
import { addAsPieced, makePieced } from '../../src/editing/pictured/makePieced';
import * as putRight from '../../src/editing/pictured/putRight';
import { tieToBlock, untiePhoto } from '../../src/editing/pictured/tieToBlock';
import { createProject } from '../../src/model/create';
import { phrase, speak } from '../../src/model/phrase';
import type { Project } from '../../src/model/project';
import { demo, unsewn } from '../demo';
import { picturedOf, withPictures } from '../geometry/pictured';
import { done, refusal } from './outcomes';

// Nothing sewn yet, so that every command has something it may do.
const project = unsewn(demo('harbour-reading-corner'));
const [first, second] = project.blocks as [Project['blocks'][0], Project['blocks'][0]];
const set = project.stripSets[0]!;
const spare = { name: 'Test cloth', colour: '#123456', cloth: { kind: 'plain' as const }, background: false };
const withSpare = done(project, fabrics.addFabric(spare));
const spareId = withSpare.fabrics.at(-1)!.id;
const halfYard = { fabric: spareId, kind: 'yardage' as const, stripLength: 40, depth: 18, count: 1 };
const withCloth = done(withSpare, cloth.addCloth(withSpare, halfYard));
const clothId = withCloth.clothOnHand.at(-1)!.id;

const pictured = withPictures(project, 1);
const read = { ...picturedOf(project, second), number: null, hang: 'firstEmpty' as const };
const tied = done(project, tieToBlock(project, second.id, read, 0));

const commands: [words: string, from: Project, command: Command][] = [
  ['add a block from its picture', project, addPictured([read])],
  ['add 2 blocks from their pictures', project, addPictured([read, { ...read, hang: 'sideTable' }])],
  [
    `put right place 3 of block ${first.number}`,
    pictured,
    putRight.putBandRight(pictured, first.id, 2, 0, project.fabrics[0]!.id),
  ],
  [`turn what was read of block ${first.number}`, pictured, putRight.turnReading(pictured, first.id, 1)],
  [`make block ${first.number} a pieced block`, pictured, makePieced(pictured, [first.id])],
  ['add a pieced block from its picture', project, addAsPieced(read)],
  [`tie a photograph to block ${first.number}`, pictured, tieToBlock(pictured, first.id, read, 1)],
  [`tie a photograph to block ${second.number}`, project, tieToBlock(project, second.id, read, 0)],
  [`remove the photograph of block ${second.number}`, tied, untiePhoto(tied, second.id)],
  ['add the fabric Test cloth', project, fabrics.addFabric(spare)],
  ['change the fabric Lake', withSpare, fabrics.changeFabric(withSpare, spareId, { name: 'Lake' })],
  ['remove the fabric Test cloth', withSpare, fabrics.removeFabric(withSpare, spareId)],
  [
    `replace ${project.fabrics[1]!.name} with Test cloth in 5 places`,
    withSpare,
    fabrics.replaceFabric(withSpare, project.fabrics[1]!.id, spareId),
  ],
  [
    'enter 3 strips of Test cloth, 1 1/2" wide',
    withSpare,
    stripGrid.enterStrips(withSpare, [{ fabric: spareId, width: 1.5, length: 40, count: 3 }]),
  ],
  [
    'enter 1 strip of Test cloth, 1 1/2" wide',
    withSpare,
    stripGrid.enterStrips(withSpare, [{ fabric: spareId, width: 1.5, length: 40, count: 1 }]),
  ],
  [
    'enter strips in 2 cells',
    withSpare,
    stripGrid.enterStrips(
      withSpare,
      [
        { fabric: spareId, width: 1.5, length: 40, count: 3 },
        { fabric: 0, width: 2, length: 40, count: 1 },
      ],
      [{ ...spare, name: 'Another' }],
    ),
  ],
  ['make the strips 1" wide 1 1/4" wide', project, stripGrid.changeWidth(1, 1.25)],
  [
    'make strips 36" long',
    project,
    stripGrid.changeLengths([{ fabric: project.stripsOnHand[0]!.fabric, length: 40 }], 36),
  ],
  ['add Test cloth to the fabric on hand', withSpare, cloth.addCloth(withSpare, halfYard)],
  ['change Test cloth on hand', withCloth, cloth.changeCloth(withCloth, clothId, { depth: 9, count: 2 })],
  ['remove Test cloth from the fabric on hand', withCloth, cloth.removeCloth(withCloth, clothId)],
  [
    `enter block ${second.number}`,
    project,
    enterBlocks(
      project,
      [{ block: second.id, number: null, places: first.places.toReversed(), progress: 'squared' }],
      project.stripSets.flatMap(({ id }) => [
        { set: id, tip: 'up' as const, count: 40 },
        { set: id, tip: 'down' as const, count: 40 },
      ]),
    ),
  ],
  ['empty the blocks for 6 wedges each', project, changeWedgesEmptying(6)],
  ['add a strip set', project, stripSets.addSet([{ fabric: project.fabrics[1]!.id, width: 2 }])],
  [`remove strip set ${set.label}`, project, stripSets.removeSet(project, set.id)],
  [
    `change the strips of set ${set.label}`,
    project,
    stripSets.layStrips(project, set.id, set.strips.toReversed()),
  ],
  [
    `change strip set ${set.label}`,
    project,
    stripSets.changeSet(project, set.id, { pressing: 'first', locked: true }),
  ],
  [
    `move a strip within set ${set.label}`,
    project,
    carryStrip(project, { kind: 'set', set: set.id, at: 0 }, { kind: 'set', set: set.id, at: 2 }),
  ],
  [
    'begin a strip set with a strip',
    project,
    carryStrip(
      project,
      { kind: 'left', strip: { fabric: project.fabrics[1]!.id, width: 2 }, length: 36 },
      { kind: 'new' },
    ),
  ],
  ['make 0 strip sets for wedges 9" high', project, stripSets.replaceSets(project, [], 4, 9)],
  ['empty the blocks for wedges 9" high', project, changeHeightEmptying(9)],
  ['change the wedge', project, stripSets.changeWedge({ assemblySeam: 0.3125 })],
  ['add 2 blocks', project, blocks.addBlocks(2)],
  ['add 2 blocks', project, addFilledBlocks(project, 2, 1).command],
  [
    'begin with 1 fabric',
    project,
    begin.beginWith([spare], {
      strips: [{ width: 2, length: 40, count: 3 }],
      cloth: [{ kind: 'fat quarter', depth: 18, stripLength: 20, count: 2 }],
    }),
  ],
  [
    'begin with 2 fabrics',
    project,
    begin.beginWithRoll([spare, spare], { width: 2.5, length: 40, count: 5 }),
  ],
  [
    'begin with 2 fabrics',
    createProject('new', 'New'),
    begin.beginAtSize([spare, spare], sizeOffers(createProject('new', 'New'), { width: 34, height: 48 })[0]!),
  ],
  ['lay out the whole quilt', project, layQuilt({ ...withCloth, seed: 5 })],
  ['remove block 1', project, blocks.removeBlock(project, first.id)],
  ['take the wedge from place 3 of block 1', project, blocks.putWedge(project, first.id, 2, null)],
  [
    'trade wedges between blocks 1 and 2',
    project,
    blocks.tradeWedges(project, { block: first.id, place: 0 }, { block: second.id, place: 2 }),
  ],
  ['empty block 1', project, blocks.emptyBlocks(project, [first.id])],
  ['update the progress of 2 blocks', project, blocks.setBlockProgress([first.id, second.id], 'squared')],
  [
    'change the corners of block 1',
    project,
    blocks.setCornerFabric(project, first.id, project.fabrics[2]!.id),
  ],
  ['turn block 1', project, wall.turnBlock(project, first.id, 1)],
  ['turn block 1 by one wedge', project, wall.turnByOneWedge(project, first.id, 1)],
  ['swap blocks 1 and 2', project, wall.swapCells(project, 0, 1)],
  ['take down block 1', project, wall.takeDown(project, first.id)],
  ['pin block 1', project, wall.pinBlocks(project, [first.id], true)],
  ['make the wall 2 down, 3 across', project, wall.resizeWall(2, 3)],
  ['change the sashing', project, setting.changeSashing({ where: 'around', width: 2 })],
  ['change the corner triangles', project, setting.changeCorners(project.fabrics[3]!.id)],
  ['add a border', project, setting.addBorder({ fabric: project.fabrics[1]!.id, width: 3 })],
  ['rename the quilt', project, setting.renameProject('Another')],
];

describe('every command', () => {
  it.each(commands)('“%s” can be undone and made again', (words, from, command) => {
    const before = structuredClone(from);
    const outcome = apply(from, command);
    expect(outcome.ok).toBe(true);
    if (!outcome.ok) return;
    const { change } = outcome;
    expect(from).toEqual(before);
    expect(outcome.project).not.toEqual(before);
    expect(speak(change.label)).toBe(words);
    expect(applyPatches(outcome.project, change.inverse as never)).toEqual(before);
    expect(applyPatches(before, change.patches as never)).toEqual(outcome.project);
  });
});

describe('the history', () => {
  it('undoes a long run of changes to the first state and makes them all again', () => {
    let now = project;
    let history = EMPTY_HISTORY;
    for (let step = 0; step < 60; step += 1) {
      const block = project.blocks[step % project.blocks.length]!;
      const command =
        step % 3 === 0 ? wall.swapCells(now, step % 6, (step + 1) % 6) : wall.turnBlock(now, block.id, 1);
      const outcome = apply(now, command);
      if (!outcome.ok) throw new Error('refused');
      now = outcome.project;
      history = record(history, outcome.change);
    }
    const end = now;
    expect(speak(phrase('Undo: {change}', { change: nextLabels(history).undo! }))).toBe('Undo: turn block 6');
    while (history.done.length > 0) ({ project: now, history } = undo(now, history)!);
    expect(now).toEqual(project);
    expect(undo(now, history)).toBeNull();
    while (history.undone.length > 0) ({ project: now, history } = redo(now, history)!);
    expect(now).toEqual(end);
    expect(redo(now, history)).toBeNull();
  });
});

describe('a sliding control', () => {
  it('is undone in one step, however far it slid', () => {
    let now = project;
    let history = EMPTY_HISTORY;
    for (const wallLightness of [40, 50, 60.5]) {
      const outcome = apply(now, setting.changePreferences({ wallLightness }, true));
      if (!outcome.ok) throw new Error('refused');
      now = outcome.project;
      history = record(history, outcome.change);
    }
    expect(history.done).toHaveLength(1);
    expect(undo(now, history)?.project).toEqual(project);
    expect(redo(project, undo(now, history)!.history)?.project).toEqual(now);
  });
});

describe('a command is refused with its reason, and nothing changes,', () => {
  const pinned = done(project, wall.pinBlocks(project, [first.id], true));
  const squared = done(project, blocks.setBlockProgress([first.id], 'squared'));

  it.each<[why: string, from: Project, command: Command]>([
    ['is pinned', pinned, wall.turnBlock(pinned, first.id, 1)],
    ['is pinned', pinned, wall.swapCells(pinned, 0, 1)],
    ['is pinned', pinned, wall.takeDown(pinned, first.id)],
    ['is pinned', pinned, wall.hangBlock(pinned, first.id, 3)],
    ['has its corners on', squared, wall.turnByOneWedge(squared, first.id, 1)],
    ['is sewn; its wedges stay', squared, blocks.putWedge(squared, first.id, 0, null)],
    ['is sewn with wedges of set', squared, stripSets.removeSet(squared, first.places[0]!.set)],
    ['The corner triangles are of', project, fabrics.removeFabric(project, project.setting.cornerFabric)],
    ['but the blocks use', project, stripSets.changeSet(project, set.id, { length: 7 })],
    ['but the blocks use', project, stripSets.layStrips(project, set.id, set.strips.slice(0, 3))],
    ['leave no block', project, stripSets.changeWedge({ cutHeight: 1, outerSeam: 0.5 })],
    ['leaves a hole in the middle', project, stripSets.changeWedge({ assemblySeam: 0.0625 })],
  ])('since it %s', (why, from, command) => {
    const before = structuredClone(from);
    expect(refusal(from, command)).toContain(why);
    expect(from).toEqual(before);
  });

  it('a block with an empty place cannot be sewn', () => {
    const open = done(project, blocks.putWedge(project, first.id, 0, null));
    expect(refusal(open, blocks.setBlockProgress([first.id], 'octagon'))).toContain('empty place');
  });

  it('a wall that would lose a pinned block keeps its size', () => {
    const last = project.wall.cells[5]!.block;
    const held = done(project, wall.pinBlocks(project, [last], true));
    expect(refusal(held, wall.resizeWall(2, 2))).toContain('where the wall would end');
  });
});

describe('a smaller wall', () => {
  it('sends the blocks that fall outside to the side table and keeps the others in their row and column', () => {
    const small = done(project, wall.resizeWall(2, 2));
    expect(small.wall.cells.map((cell) => cell?.block)).toEqual(
      project.wall.cells.slice(0, 4).map((cell) => cell?.block),
    );
    expect(small.blocks).toEqual(project.blocks);
  });
});

describe('turning by one wedge', () => {
  it('goes once round in eight steps and comes back', () => {
    let now = project;
    const seen = new Set<string>();
    for (let step = 0; step < 8; step += 1) {
      now = done(now, wall.turnByOneWedge(now, first.id, 1));
      seen.add(
        `${now.blocks[0]!.cornerShift} ${now.wall.cells.find((cell) => cell?.block === first.id)!.turn}`,
      );
    }
    expect(seen.size).toBe(8);
    expect(now).toEqual(project);
  });
});
