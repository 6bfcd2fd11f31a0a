// Commands on layout, plain squares, corners, sashing, borders and binding: each can be undone and made again; what is pinned
// or cannot be sewn is refused with the reason; blocks keep their places or wait on the side table, and none is lost.
import { applyPatches } from 'immer';
import { describe, expect, it } from 'vitest';
import { apply, type Command } from '../../../src/editing/apply';
import { addBlocks, setBlockProgress } from '../../../src/editing/commands/blocks';
import * as edges from '../../../src/editing/commands/edges';
import { replaceFabric } from '../../../src/editing/commands/fabrics';
import * as layout from '../../../src/editing/commands/layout';
import { addBorder, changeCorners, changeSashing } from '../../../src/editing/commands/setting';
import { hangAll, pinBlocks, resizeWall } from '../../../src/editing/commands/wall';
import { checkReferences } from '../../../src/model/check';
import { quiltUses } from '../../../src/model/fabricUses';
import { whereUsed } from '../../../src/model/fabricUseWords';
import { sideTable } from '../../../src/model/find';
import { speak } from '../../../src/model/phrase';
import type { Project } from '../../../src/model/project';
import { writeProject } from '../../../src/model/reading/read';
import { readProject } from '../../../src/model/reading/readText';
import { cornerFabricOf, isPlain } from '../../../src/model/wallCells';
import { demo } from '../../demo';
import { done, refusal } from '../outcomes';

const opened = demo('harbour-reading-corner');
/** 3 rows of 2, nothing sewn in. */
const project: Project = {
  ...opened,
  blocks: opened.blocks.map((block) => ({ ...block, progress: 'octagon' as const })),
};
const [ground, dark, light] = project.fabrics.map((fabric) => fabric.id) as [string, string, string];
const onPoint = done(project, layout.setLayout('onPoint'));
const bordered = done(
  done(project, addBorder({ fabric: ground, width: 2 })),
  changeSashing({ where: 'around', width: 1 }),
);
const keys = [
  { fabric: dark, width: 1.5 },
  { fabric: light, width: 2 },
];

const commands: [words: string, from: Project, command: Command][] = [
  ['set the blocks on point', bordered, layout.setLayout('onPoint')],
  ['set the blocks straight', onPoint, layout.setLayout('straight')],
  ['change the side triangles', onPoint, layout.changeSettingTriangles('sides', dark)],
  ['change the setting corners', onPoint, layout.changeSettingTriangles('corners', dark)],
  ['add plain squares', project, layout.layPlain({ fabric: dark, cells: 'second' })],
  ['make the wall 2 down, 3 across', onPoint, resizeWall(2, 3)],
  ['change the rule of the corners', project, layout.changeCornerRule({ kind: 'edge', fabric: dark })],
  ['add cornerstones', bordered, edges.setCornerstones(dark)],
  ['change the sashing after column 1', bordered, edges.setGap('columnGaps', 1, 2.5)],
  ['change the corners of border 1', bordered, edges.setBorderCorners(0, { kind: 'mitred' })],
  ['piece border 1 from left-over strips', bordered, edges.pieceBorder(0, keys)],
  ['add a spacer inside border 1', bordered, edges.addSpacer(0, dark, 1, 1.25)],
  ['choose the binding', project, edges.setBinding({ fabric: dark, cutWidth: 2.25 })],
]; // biome-ignore format: a table

describe('every command on the setting', () => {
  it.each(commands)(
    '“%s” can be undone and made again, and the file it makes opens',
    (words, from, command) => {
      const before = structuredClone(from);
      const outcome = apply(from, command);
      if (!outcome.ok) throw new Error(speak(outcome.problems[0]!.message));
      const { change } = outcome;
      expect(from).toEqual(before);
      expect(outcome.project).not.toEqual(before);
      expect(speak(change.label)).toBe(words);
      expect(applyPatches(outcome.project, change.inverse as never)).toEqual(before);
      expect(applyPatches(before, change.patches as never)).toEqual(outcome.project);
      expect(readProject(writeProject(outcome.project))).toEqual({
        ok: true,
        value: outcome.project,
        pictures: new Map(),
        remarks: [],
      });
    },
  );

  it('loses no block: what has no cell any more waits on the side table', () => {
    for (const [, from, command] of commands) {
      const after = done(from, command);
      const hung = after.wall.cells.filter((cell) => cell !== null).length;
      expect(hung + sideTable(after).length).toBe(project.blocks.length);
      expect(checkReferences(after)).toEqual([]);
    }
  });
});

describe('a setting is refused with its reason', () => {
  it('on point where blocks are not square', () => {
    const hexagons = { ...project, blocks: [], wedge: { ...project.wedge, perBlock: 6 as const } };
    const bare = { ...hexagons, wall: { ...project.wall, cells: project.wall.cells.map(() => null) } };
    expect(refusal(bare, layout.setLayout('onPoint'))).toContain('only square blocks');
  });

  it('where a pinned block would lie under a plain square, or in between when the wall becomes straight', () => {
    const pinned = done(project, pinBlocks(project, [project.wall.cells[1]!.block], true));
    expect(refusal(pinned, layout.layPlain({ fabric: dark, cells: 'second' }))).toContain('plain square');
    const between = done(onPoint, {
      label: { say: 'hang one in between' },
      change: (draft) => {
        draft.wall.cells[6] = { ...draft.wall.cells[0]!, pinned: true };
        draft.wall.cells[0] = null;
      },
    });
    expect(refusal(between, layout.setLayout('straight'))).toContain('pinned or sewn in');
  });

  it('with sashing between the blocks only, on point', () => {
    expect(refusal(onPoint, changeSashing({ where: 'between' }))).toContain('round every block, or nowhere');
  });
});

describe('plain squares', () => {
  const laid = done(project, layout.layPlain({ fabric: dark, cells: 'second' }));

  it('lie in every other cell, and no block hangs there, nor comes there when more are hung or made', () => {
    expect(laid.wall.cells.map((_, at) => isPlain(at, laid))).toEqual([
      false,
      true,
      true,
      false,
      false,
      true,
    ]);
    const more = done(done(laid, resizeWall(4, 3)), addBlocks(12));
    const all = done(
      more,
      hangAll(
        more,
        sideTable(more).map((block) => block.id),
      ),
    );
    expect(all.wall.cells.map((cell, at) => (cell === null) === isPlain(at, all))).not.toContain(false);
  });

  it('give their cells back when they are taken out', () => {
    const bare = done(laid, layout.layPlain(null));
    expect(bare.wall.cells).toHaveLength(6);
    expect(bare.setting.plain).toBeNull();
  });
});

describe('corners by rule', () => {
  const ruled = done(
    done(project, resizeWall(3, 3)),
    layout.changeCornerRule({ kind: 'edge', fabric: dark }),
  );
  const none = { cornerFabric: null };

  it('take the second fabric along the edge, or in every other block, unless a block has its own', () => {
    const edge = ruled.wall.cells.map((_, at) => cornerFabricOf(ruled, none, at) === dark);
    expect(edge).toEqual([true, true, true, true, false, true, true, true, true]);
    const checks = done(ruled, layout.changeCornerRule({ kind: 'checkerboard', fabric: dark }));
    expect(checks.wall.cells.map((_, at) => cornerFabricOf(checks, none, at) === dark)).toEqual([
      false,
      true,
      false,
      true,
      false,
      true,
      false,
      true,
      false,
    ]);
    expect(cornerFabricOf(ruled, { cornerFabric: light }, 0)).toBe(light);
    expect(cornerFabricOf(ruled, none, -1)).toBe(project.setting.cornerFabric);
  });

  it('stay on a block once they are sewn on, wherever it hangs then', () => {
    const first = ruled.wall.cells[0]!.block;
    const squared = done(ruled, setBlockProgress([first], 'squared'));
    const after = done(squared, layout.changeCornerRule(null));
    expect(after.blocks.find((block) => block.id === first)!.cornerFabric).toBe(dark);
  });
});

describe('corners that are sewn on', () => {
  it('keep their fabric when the quilt’s corners change, all at once or by rule', () => {
    const first = project.wall.cells[0]!.block;
    const squared = done(project, setBlockProgress([first], 'squared'));
    for (const command of [changeCorners(dark), layout.changeCornerRule({ kind: 'edge', fabric: dark })]) {
      const after = done(squared, command);
      const block = after.blocks.find((one) => one.id === first)!;
      expect(cornerFabricOf(after, block, 0)).toBe(project.setting.cornerFabric);
      expect(cornerFabricOf(after, after.blocks[1]!, 1)).toBe(dark);
    }
  });
});

describe('fabrics of the setting', () => {
  const full = commands.reduce((now, [, , command]) => {
    const outcome = apply(now, command);
    return outcome.ok ? outcome.project : now;
  }, bordered);

  it('are all exchanged at once, and none is removed while it is used', () => {
    expect(quiltUses(full).some((one) => one.fabric === dark)).toBe(true);
    const unsewn = {
      ...full,
      stripSets: full.stripSets.map((set) => ({ ...set, progress: 'planned' as const })),
    };
    const after = done(unsewn, replaceFabric(unsewn, dark, light));
    expect(quiltUses(after).filter((one) => one.fabric === dark)).toEqual([]);
    const used = {
      ...project,
      stripSets: [],
      setting: { ...project.setting, binding: { fabric: dark, cutWidth: 2.5 } },
    };
    expect(speak(whereUsed(used, dark)!)).toContain('The binding is of');
  });
});
