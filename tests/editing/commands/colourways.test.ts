import { applyPatches } from 'immer';
import { describe, expect, it } from 'vitest';
import { turnedColourway } from '../../../src/cloth/colourway';
import { yardage } from '../../../src/cutting/yardage/yardage';
import { apply } from '../../../src/editing/apply';
import {
  addColourway,
  changeSwaps,
  listClothOf,
  removeColourway,
  renameColourway,
  wearColourway,
} from '../../../src/editing/commands/colourways';
import { addFabric, removeFabric } from '../../../src/editing/commands/fabrics';
import { openProject } from '../../../src/editing/openProject';
import { checkReferences } from '../../../src/model/check';
import { everyCloth, fabricsInUse, inColourway } from '../../../src/model/colourway';
import { speak } from '../../../src/model/phrase';
import type { Project } from '../../../src/model/project';
import { writeProject } from '../../../src/model/reading/read';
import { demo, unsewn } from '../../demo';
import { done } from '../outcomes';

function planned(): Project {
  return { ...unsewn(demo('keepers-winter')), colourways: [] };
}

const project = planned();
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

  it('can be renamed, changed, taken out, and made the quilt on the wall', () => {
    let now = done(project, addColourway('One', []));
    const id = now.colourways[0]!.id;
    now = done(now, renameColourway(id, 'Two'));
    now = done(now, changeSwaps(now, id, [{ fabric: first.id, by: second.id }]));
    expect(now.colourways[0]).toEqual({ id, name: 'Two', swaps: [{ fabric: first.id, by: second.id }] });
    const worn = done(now, wearColourway(now, id));
    expect(worn.fabrics).toEqual(project.fabrics);
    expect(worn.stripSets.flatMap((set) => set.strips).some((strip) => strip.fabric === first.id)).toBe(
      false,
    );
    expect(
      done(now, changeSwaps(now, id, [{ fabric: first.id, by: first.id }])).colourways[0]!.swaps,
    ).toEqual([]);
    expect(done(now, removeColourway(now, id)).colourways).toEqual([]);
  });

  it('is not put on a quilt that is sewn', () => {
    const made = done(project, addColourway('Late', [{ fabric: first.id, by: second.id }]));
    const stripSets = made.stripSets.map((set) => ({ ...set, progress: 'sewn' as const }));
    const outcome = apply({ ...made, stripSets }, wearColourway(made, made.colourways[0]!.id));
    expect(outcome.ok ? '' : speak(outcome.problems[0]!.message)).toContain('is sewn. Duplicate the quilt');
  });

  it('forgets a fabric that is removed', () => {
    const spare = { ...first, id: 'spare' };
    let now: Project = { ...project, fabrics: [...project.fabrics, spare] };
    now = done(now, addColourway('Other', [{ fabric: first.id, by: spare.id }]));
    expect(done(now, removeFabric(now, spare.id)).colourways[0]!.swaps).toEqual([]);
  });

  it('beyond sixty is refused, so that the quilt can still be opened again', () => {
    const colourways = Array.from({ length: 60 }, (_, index) => ({
      id: `c${index}`,
      name: 'One',
      swaps: [],
    }));
    const outcome = apply({ ...project, colourways }, addColourway('More', []));
    expect(outcome.ok ? '' : outcome.problems[0]!.code).toBe('too-many-colourways');
  });
});

describe('the made-up cloth of a colourway', () => {
  const turned = (from: Project, name: string): Project => {
    const { swaps, cloth } = turnedColourway(from, name, 150, 'kept');
    return done(from, addColourway(name, swaps, cloth));
  };
  const made = turned(project, 'Warm');
  const { id, cloth = [] } = made.colourways[0]!;

  it('stays with the colourway: the quilt lists the fabrics it had', () => {
    expect(made.fabrics).toEqual(project.fabrics);
    expect(cloth).toHaveLength(used.filter((fabric) => !fabric.background).length);
  });

  it('is among the fabrics of the quilt in it, which is sound by itself', () => {
    const worn = inColourway(made, made.colourways[0]!);
    expect(worn.fabrics).toEqual([...project.fabrics, ...cloth]);
    expect(checkReferences(worn)).toEqual([]);
    const listed = yardage(worn, 'whole').fabrics.map((one) => one.fabric);
    expect(listed.some((fabric) => cloth.includes(fabric))).toBe(true);
  });

  it('is written and read again with the project', () => {
    const read = openProject(writeProject(made));
    expect(read.ok && read.value).toEqual(made);
  });

  it('comes with the quilt made in it, once, and undo takes it out again', () => {
    const outcome = apply(made, wearColourway(made, id));
    if (!outcome.ok) throw new Error('refused');
    const { project: worn, change } = outcome;
    expect(worn.fabrics).toEqual([...project.fabrics, ...cloth]);
    expect(worn.colourways[0]).not.toHaveProperty('cloth');
    expect(fabricsInUse(worn).filter((fabric) => !fabric.background)).toEqual(cloth);
    expect(applyPatches(worn, [...change.inverse])).toEqual(made);
  });

  it('that stands for nothing any more stays behind, to be chosen again', () => {
    const [swap] = made.colourways[0]!.swaps;
    let now = done(made, changeSwaps(made, id, [{ fabric: swap!.fabric, by: swap!.fabric }]));
    now = done(now, wearColourway(now, id));
    expect(now.colourways[0]!.cloth?.map((fabric) => fabric.id)).toEqual([swap!.by]);
    expect(now.fabrics.some((fabric) => fabric.id === swap!.by)).toBe(false);
  });

  it('joins the fabrics when that is wanted, and goes when the colourway is removed', () => {
    const listed = done(made, listClothOf(made, id));
    expect(listed.fabrics).toEqual([...project.fabrics, ...cloth]);
    expect(listed.colourways[0]!.swaps).toEqual(made.colourways[0]!.swaps);
    expect(everyCloth(done(made, removeColourway(made, id)))).toEqual(project.fabrics);
  });

  it('shares its ids with nothing, a second colourway and later fabrics among it', () => {
    let now = turned(made, 'Cold');
    const { id: _, ...plain } = first;
    now = done(now, addFabric(plain));
    const ids = everyCloth(now).map((fabric) => fabric.id);
    expect(new Set(ids).size).toBe(ids.length);
    const colourways = [{ ...made.colourways[0]!, cloth: [{ ...cloth[0]!, id: first.id }, ...cloth] }];
    expect(checkReferences({ ...made, colourways })).toEqual([
      expect.objectContaining({ code: 'double', path: 'colourways[0].cloth[0].id' }),
    ]);
  });

  it('of another colourway stands for nothing in this one', () => {
    const two = turned(made, 'Cold');
    const [warm, cold] = two.colourways;
    const outcome = apply(two, changeSwaps(two, warm!.id, [{ fabric: first.id, by: cold!.cloth![0]!.id }]));
    expect(outcome.ok ? '' : outcome.problems[0]!.path).toMatch(/^colourways\[0\]\.swaps\[\d+\]\.by$/);
  });

  it('is refused where the list of fabrics would grow past what a project holds', () => {
    const many = Array.from({ length: 390 }, (_, index) => ({ ...first, id: `many${index}` }));
    const full = { ...made, fabrics: [...made.fabrics, ...many] };
    const outcome = apply(full, wearColourway(full, id));
    expect(outcome.ok ? '' : outcome.problems[0]!.code).toBe('too-many-fabrics');
  });
});
