// A wedge is lost: the count falls by one, and the blocks change as little as they can. No block ever uses a wedge that is
// not there.
import { describe, expect, it } from 'vitest';
import { checkWedges, wedgeLedger } from '../../../src/cutting/wedges/ledger';
import { tallestWedge } from '../../../src/cutting/wedges/tallest';
import { apply, type Command } from '../../../src/editing/apply';
import { carryStrip } from '../../../src/editing/commands/sets/carryStrip';
import { changeSet, changeWedge, layStrips } from '../../../src/editing/commands/stripSets';
import { gaining, losing } from '../../../src/editing/commands/wedgeCount';
import { createBlock, createProject, createSet } from '../../../src/model/create';
import { speak } from '../../../src/model/phrase';
import type { Place, Project } from '../../../src/model/project';

/** Two sets with rims of their own fabrics and as many wedges as given, and one whole block of set A's tip-up wedges. */
function table(spareUp: number): Project {
  const project = createProject('p1', 'Test');
  const names = ['Rust', 'Slate', 'Straw', 'Moss'];
  names.forEach((name, index) => {
    const colour = ['#8a3b2e', '#27466b', '#d9a441', '#4f6b52'][index]!;
    project.fabrics.push({ id: name, name, colour, cloth: { kind: 'plain' }, background: false });
  });
  const strips = (first: string, last: string) =>
    [first, 'f1', first, 'f1', last].map((fabric, index) => ({ fabric, width: index % 2 === 0 ? 2.5 : 1 }));
  project.stripSets.push({ ...createSet(project), strips: strips('Rust', 'Slate'), cut: { up: 4, down: 4 } });
  project.stripSets.push({
    ...createSet(project),
    strips: strips('Straw', 'Moss'),
    cut: { up: spareUp, down: 0 },
  });
  const places = Array.from(
    { length: 8 },
    (_, place): Place => ({ set: 's1', tip: place % 2 ? 'down' : 'up' }),
  );
  project.blocks.push({ ...createBlock(project), places });
  return project;
}

function lost(project: Project, set: string): Project {
  const { loss } = losing(project, set, 'up');
  const outcome = apply(project, loss!.command);
  if (!outcome.ok) throw new Error(speak(outcome.problems[0]!.message));
  return outcome.project;
}

function changedPlaces(before: Project, after: Project): number {
  return before.blocks.reduce(
    (sum, block, index) =>
      sum +
      block.places.filter((place, at) => {
        const now = after.blocks[index]!.places[at];
        return place?.set !== now?.set || place?.tip !== now?.tip;
      }).length,
    0,
  );
}

describe('losing a wedge', () => {
  it('leaves the blocks alone while the wedge is one that no block uses', () => {
    const project = table(2);
    expect(losing(project, 's2', 'up').loss!.command.moves).toEqual([]);
    const after = lost(project, 's2');
    expect(after.stripSets[1]!.cut).toEqual({ up: 1, down: 0 });
    expect(after.blocks).toEqual(project.blocks);
  });

  it('puts a left-over wedge of the same tip in exactly one place when a used one is lost', () => {
    const project = table(2);
    const after = lost(project, 's1');
    expect(changedPlaces(project, after)).toBe(1);
    expect(after.blocks[0]!.places).not.toContain(null);
    expect(wedgeLedger(after).map((row) => row.left.up)).toEqual([0, 1]);
  });

  it('leaves one place empty when nothing of that tip is left, and says so', () => {
    const project = table(0);
    const { loss } = losing(project, 's1', 'up');
    expect(loss!.words.map((words) => speak(words)).join(' ')).toContain('1 place stays empty');
    const after = lost(project, 's1');
    expect(after.blocks[0]!.places.filter((place) => place === null)).toHaveLength(1);
    expect(checkWedges(after)).toEqual([]);
  });

  it('is refused when all such wedges are sewn in, or there is none', () => {
    const project = table(0);
    const sewn = {
      ...project,
      blocks: project.blocks.map((one) => ({ ...one, progress: 'octagon' as const })),
    };
    expect(speak(losing(sewn, 's1', 'up').none!)).toBe(
      'All such wedges of set A lie in sewn blocks; there is none to lose.',
    );
    expect(speak(losing(sewn, 's2', 'up').none!)).toBe('Set B has no such wedge to lose.');
  });

  it('does not fill a place that was left empty on purpose', () => {
    const project = table(2);
    const open = project.blocks.map((block) => ({ ...block, places: block.places.with(0, null) }));
    const cut = { ...project.stripSets[0]!, cut: { up: 3, down: 4 } };
    const after = lost({ ...project, blocks: open, stripSets: [cut, project.stripSets[1]!] }, 's1');
    expect(after.blocks[0]!.places.map((place) => place?.set ?? null)).toEqual([
      null, 's1', 's2', 's1', 's1', 's1', 's1', 's1',
    ]); // biome-ignore format: a ring
  });

  it('can go on until every wedge is lost, and the blocks never use more than there are', () => {
    let project = table(3);
    for (const set of ['s1', 's2', 's1', 's1', 's2', 's1', 's2']) {
      project = lost(project, set);
      expect(checkWedges(project)).toEqual([]);
    }
    expect(wedgeLedger(project).map((row) => row.available.up)).toEqual([0, 0]);
    expect(project.blocks[0]!.places.filter((place) => place === null)).toHaveLength(4);
  });
});

describe('cutting one wedge more', () => {
  it('fills the place that stood empty for want of it, in the same change', () => {
    const project = table(0);
    const short = lost(project, 's1');
    expect(short.blocks[0]!.places).toContain(null);
    const gain = gaining(short, 's2', 'up');
    expect(gain.words.map((words) => speak(words))).toEqual(['1 place changes, in block 1.']);
    const outcome = apply(short, gain.command);
    if (!outcome.ok) throw new Error(speak(outcome.problems[0]!.message));
    expect(outcome.project.blocks[0]!.places).not.toContain(null);
    expect(speak(outcome.change.label)).toBe('count one wedge more of set B');
    expect(checkWedges(outcome.project)).toEqual([]);
  });

  it('leaves the blocks alone while others of its tip are left over, or when its tip is not the one missing', () => {
    const project = table(2);
    const open = {
      ...project,
      blocks: project.blocks.map((one) => ({ ...one, places: one.places.with(0, null) })),
    };
    expect(gaining(open, 's1', 'up').command.moves).toEqual([]);
    const none = lost(table(0), 's1');
    expect(gaining(none, 's1', 'down').command.moves).toEqual([]);
  });
});

describe('a count by hand', () => {
  /** Set A counted by hand, 4 of each tip, where 40" of it give eleven; set B as the geometry gives; no block. */
  function countedByHand(): Project {
    const project = table(0);
    const stripSets = project.stripSets.map((set, index) => ({ ...set, cut: index === 0 ? set.cut : null }));
    return { ...project, blocks: [], stripSets };
  }
  const wedges = (project: Project) => wedgeLedger(project)[0]!.available;
  const changed = (command: Command) => {
    const outcome = apply(countedByHand(), command);
    if (!outcome.ok) throw new Error(speak(outcome.problems[0]!.message));
    return outcome.project;
  };

  it('is of the set as it was: of another length or height as many as the geometry gives', () => {
    const project = countedByHand();
    const strips = project.stripSets[0]!.strips;
    // 2m wedges need m·b + p, on a set 7 1/2" high 6.547 + 3.441 = 9.99": 10" give two.
    const low = { id: 's1', strips: strips.slice(0, 2) };
    expect(wedges(changed(changeSet(project, 's1', { length: 10 })))).toEqual({ up: 1, down: 1 });
    expect(wedges(changed(layStrips(project, low.id, low.strips)))).toEqual({ up: 0, down: 0 });
    expect(wedges(changed(carryStrip(project, { kind: 'set', set: 's1', at: 0 }, { kind: 'new' })))).toEqual({
      up: 0,
      down: 0,
    });
    expect(wedges(changed(changeWedge({ cutHeight: 20 })))).toEqual({ up: 0, down: 0 });
  });

  it('stays where as many wedges fit on the set as before', () => {
    const project = countedByHand();
    const { strips } = project.stripSets[0]!;
    const kept = { up: 4, down: 4 };
    expect(wedges(changed(changeSet(project, 's1', { length: 40.125 })))).toEqual(kept);
    expect(wedges(changed(changeSet(project, 's1', { firstTip: 'down' })))).toEqual(kept);
    expect(wedges(changed(layStrips(project, 's1', strips.toReversed())))).toEqual(kept);
    expect(wedges(changed(changeWedge({ assemblySeam: 0.3 })))).toEqual(kept);
  });

  it('does not make a wedge fit on a set that is too low for it: the tallest wedge is no higher than the sets used', () => {
    const project = table(0);
    const height = wedgeLedger(project)[0]!.height;
    expect(tallestWedge(project)).toBeLessThanOrEqual(height);
    const outcome = apply(project, changeWedge({ cutHeight: height + 1 }));
    expect(outcome.ok ? [] : outcome.problems.map(({ code }) => code)).toEqual(['too-tall']);
  });
});
