// Splitting strips lengthwise, marking how far sets are, and counting wedges on the cutting table.
import { describe, expect, it } from 'vitest';
import { apply, type Command } from '../../../src/editing/apply';
import { markSets } from '../../../src/editing/commands/setProgress';
import { splitStrips, writeDownStrips } from '../../../src/editing/commands/stripsOnHand';
import { countWedge } from '../../../src/editing/commands/wedgeCount';
import { createBlock, createProject, createSet } from '../../../src/model/create';
import { speak } from '../../../src/model/phrase';
import type { Place, Project } from '../../../src/model/project';

const STRIPS = [2, 1, 1.5, 1, 1.5, 1, 2, 1.5];

/** A project with a set A that is 8 high (six wedges up, five down on 40 inches), and ten precut strips. */
function table(places: readonly (Place | null)[] = []): Project {
  const project = createProject('p1', 'Test');
  const strips = STRIPS.map((width) => ({ fabric: 'f1', width }));
  project.stripSets.push({ ...createSet(project), strips });
  project.stripsOnHand.push({ id: 'h1', fabric: 'f1', width: 2.5, length: 42, count: 10 });
  const block = createBlock(project);
  project.blocks.push({ ...block, places: block.places.map((_, place) => places[place] ?? null) });
  return project;
}

function done(project: Project, command: Command): Project {
  const outcome = apply(project, command);
  if (!outcome.ok) throw new Error(speak(outcome.problems[0]!.message));
  return outcome.project;
}

function refusal(project: Project, command: Command): string {
  const outcome = apply(project, command);
  return outcome.ok ? '' : speak(outcome.problems[0]!.message);
}

describe('splitting strips lengthwise', () => {
  it('turns six precut 2 1/2 strips into six of 1 1/2 and six of 1, as is usual', () => {
    const project = table();
    const split = done(project, splitStrips(project, 'h1', 6, 1.5));
    expect(split.stripsOnHand.map(({ width, count, length }) => [width, count, length])).toEqual([
      [2.5, 4, 42],
      [1.5, 6, 42],
      [1, 6, 42],
    ]);
  });

  it('leaves no empty row behind and counts halves of one width together', () => {
    const project = table();
    const split = done(project, splitStrips(project, 'h1', 10, 1.25));
    expect(split.stripsOnHand.map(({ width, count }) => [width, count])).toEqual([[1.25, 20]]);
  });

  it('keeps the cloth: no width is gained or lost', () => {
    const project = table();
    const split = done(project, splitStrips(project, 'h1', 7, 1.5));
    const cloth = (one: Project) => one.stripsOnHand.reduce((sum, row) => sum + row.width * row.count, 0);
    expect(cloth(split)).toBe(cloth(project));
  });

  it('refuses more strips than there are, and a part that would vanish in its seams', () => {
    const project = table();
    expect(refusal(project, splitStrips(project, 'h1', 11, 1.5))).toBe('There are only 10 of these strips.');
    expect(refusal(project, splitStrips(project, 'h1', 2, 2))).toBe(
      'Split like that, one of the two would be 1/2" wide and vanish in its two seams.',
    );
  });
});

describe('writing down a planned lot of strips', () => {
  it('counts equal strips together with those already there', () => {
    const project = table();
    const rows = [
      { fabric: 'f1', width: 2.5, length: 42, count: 3 },
      { fabric: 'f1', width: 1, length: 40, count: 5 },
    ];
    const written = done(project, writeDownStrips(rows));
    expect(written.stripsOnHand.map(({ width, length, count }) => [width, length, count])).toEqual([
      [2.5, 42, 13],
      [1, 40, 5],
    ]);
  });
});

describe('how far strip sets are', () => {
  it('marks many at once', () => {
    const project = table();
    const two = {
      ...project,
      stripSets: [...project.stripSets, { ...project.stripSets[0]!, id: 's9', label: 'B' }],
    };
    const marked = done(two, markSets(['s1', 's9'], 'cut'));
    expect(marked.stripSets.map((set) => set.progress)).toEqual(['cut', 'cut']);
  });

  it('does not let an empty set be sewn or a short one be cut', () => {
    const project = table();
    const bare = { ...project, stripSets: [{ ...project.stripSets[0]!, strips: [] }] };
    expect(refusal(bare, markSets(['s1'], 'sewn'))).toBe('Set A has no strips yet.');
    const short = {
      ...project,
      stripSets: [{ ...project.stripSets[0]!, strips: project.stripSets[0]!.strips.slice(1) }],
    };
    expect(refusal(short, markSets(['s1'], 'cut'))).toBe('Set A is 1" short; no wedge can be cut from it.');
    expect(done(short, markSets(['s1'], 'sewn')).stripSets[0]!.progress).toBe('sewn');
  });

  it('keeps a set cut while a sewn block holds its wedges', () => {
    const up: Place = { set: 's1', tip: 'up' };
    const down: Place = { set: 's1', tip: 'down' };
    const project = table([up, down, up, down, up, down, up, down]);
    const cut = done(project, markSets(['s1'], 'cut'));
    const sewn = { ...cut, blocks: cut.blocks.map((block) => ({ ...block, progress: 'octagon' as const })) };
    expect(refusal(sewn, markSets(['s1'], 'planned'))).toBe(
      'Block 1 is sewn with wedges of set A, so the set is cut.',
    );
  });
});

describe('counting wedges', () => {
  it('writes down what differs from the geometry, and nothing once it agrees again', () => {
    const project = table();
    const fewer = done(project, countWedge(project, 's1', 'up', -1));
    expect(fewer.stripSets[0]!.cut).toEqual({ up: 5, down: 5 });
    const again = done(fewer, countWedge(fewer, 's1', 'up', 1));
    expect(again.stripSets[0]!.cut).toBeNull();
  });

  it('refuses to take away a wedge that a block uses, or one that is not there', () => {
    const up: Place = { set: 's1', tip: 'up' };
    const project = table([up, null, up, null, up, null, up]);
    const two = done(done(project, countWedge(project, 's1', 'up', -1)), countWedge(project, 's1', 'up', -1));
    expect(two.stripSets[0]!.cut).toEqual({ up: 4, down: 5 });
    expect(refusal(two, countWedge(two, 's1', 'up', -1))).toBe(
      'Set A gives 3 wedges tip up, but the blocks use 4.',
    );
    let none = project;
    for (let lost = 0; lost < 5; lost += 1) none = done(none, countWedge(none, 's1', 'down', -1));
    expect(refusal(none, countWedge(none, 's1', 'down', -1))).toBe('Set A has no such wedge left.');
  });
});
