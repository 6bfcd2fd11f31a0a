import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { value } from '../../src/colour/spaces';
import { openProject } from '../../src/cutting/openProject';
import { apply, type Command } from '../../src/editing/apply';
import {
  addColourway,
  addTurnedColourway,
  changeSwap,
  removeColourway,
  renameColourway,
  wearColourway,
} from '../../src/editing/colourways';
import { removeFabric } from '../../src/editing/fabrics';
import { fabricsInUse, inColourway } from '../../src/model/colourway';
import { speak } from '../../src/model/phrase';
import type { Project } from '../../src/model/project';

function demo(): Project {
  const text = readFileSync(new URL('../../demo-data/keepers-winter.json', import.meta.url), 'utf8');
  const opened = openProject(text);
  if (!opened.ok) throw new Error('the demo does not open');
  const stripSets = opened.value.stripSets.map((set) => ({ ...set, progress: 'planned' as const }));
  return { ...opened.value, stripSets, colourways: [] };
}

function done(from: Project, command: Command): Project {
  const outcome = apply(from, command);
  if (!outcome.ok) throw new Error(speak(outcome.problems[0]!.message));
  return outcome.project;
}

const project = demo();
const used = fabricsInUse(project);
const [first, second] = [used[1]!, used[2]!];

describe('a colourway', () => {
  it('shows the same quilt in other cloth and changes nothing of the quilt on the wall', () => {
    const swaps = [
      { fabric: first.id, by: second.id },
      { fabric: second.id, by: first.id },
    ];
    const made = done(project, addColourway('Changed over', swaps));
    const seen = inColourway(made, made.colourways[0]!);
    expect(made.stripSets).toEqual(project.stripSets);
    expect(seen.wall).toEqual(project.wall);
    const count = (one: Project, fabric: string) =>
      one.stripSets.flatMap((set) => set.strips).filter((strip) => strip.fabric === fabric).length;
    expect(count(seen, first.id)).toBe(count(project, second.id));
    expect(count(seen, second.id)).toBe(count(project, first.id));
    expect(inColourway({ ...seen, name: made.name }, { ...made.colourways[0]!, name: made.name })).toEqual(
      made,
    );
  });

  it('in turned hues adds made-up cloth as light or dark as the old, and none for the background', () => {
    const made = done(project, addTurnedColourway('Warm', used, 150));
    const { swaps } = made.colourways[0]!;
    expect(swaps).toHaveLength(used.filter((fabric) => !fabric.background).length);
    for (const { fabric, by } of swaps) {
      const before = made.fabrics.find((one) => one.id === fabric)!;
      const after = made.fabrics.find((one) => one.id === by)!;
      expect(Math.abs(value(after.colour) - value(before.colour))).toBeLessThan(9);
    }
  });

  it('can be renamed, changed, taken out, and made the quilt on the wall', () => {
    let now = done(project, addColourway('One', []));
    const id = now.colourways[0]!.id;
    now = done(now, renameColourway(id, 'Two'));
    now = done(now, changeSwap(now, id, first.id, second.id));
    expect(now.colourways[0]).toEqual({ id, name: 'Two', swaps: [{ fabric: first.id, by: second.id }] });
    const worn = done(now, wearColourway(now, id));
    expect(worn.stripSets.flatMap((set) => set.strips).some((strip) => strip.fabric === first.id)).toBe(
      false,
    );
    expect(done(now, removeColourway(now, id)).colourways).toEqual([]);
  });

  it('is not put on a quilt that is sewn', () => {
    const made = done(project, addColourway('Late', [{ fabric: first.id, by: second.id }]));
    const stripSets = made.stripSets.map((set) => ({ ...set, progress: 'sewn' as const }));
    const outcome = apply({ ...made, stripSets }, wearColourway(made, made.colourways[0]!.id));
    expect(outcome.ok ? '' : speak(outcome.problems[0]!.message)).toContain('is sewn. Copy the quilt');
  });

  it('forgets a fabric that is removed', () => {
    let now = done(project, addTurnedColourway('Warm', used, 150));
    const { by } = now.colourways[0]!.swaps[0]!;
    now = done(now, removeFabric(now, by));
    expect(now.colourways[0]!.swaps.some((swap) => swap.by === by)).toBe(false);
  });
});
