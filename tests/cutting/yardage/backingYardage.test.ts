// The backing in a fabric of the quilt: reckoned with all that is cut from that fabric, on hand and in kits too.
import { describe, expect, it } from 'vitest';
import { kits } from '../../../src/cutting/kits/kits';
import { orderCsv, stripsCsv } from '../../../src/cutting/kits/kitTables';
import { pieceWords, stripsAlike } from '../../../src/cutting/yardage/lineWords';
import { totalCost, yardage } from '../../../src/cutting/yardage/yardage';
import { apply } from '../../../src/editing/apply';
import { changeBacking } from '../../../src/editing/commands/buying';
import { addColourway, wearColourway } from '../../../src/editing/commands/colourways';
import { removeFabric, replaceFabric } from '../../../src/editing/commands/fabrics';
import { fabricsInUse, inColourway } from '../../../src/model/colourway';
import { whereUsed } from '../../../src/model/fabricUseWords';
import { speak } from '../../../src/model/phrase';
import type { Fabric, Project } from '../../../src/model/project';
import { demo } from '../../demo';

/** The sashed and bordered example, nothing sewn and nothing on hand, with one fabric more that nothing uses. */
function uncut(): { project: Project; spare: Fabric; used: Fabric } {
  const project = demo('keepers-winter');
  project.stripsOnHand = [];
  project.clothOnHand = [];
  project.buying.fatQuarters = false;
  for (const set of project.stripSets) set.progress = 'planned';
  const spare: Fabric = { ...structuredClone(project.fabrics[0]!), id: 'spare', name: 'Back cloth' };
  project.fabrics.push(spare);
  return { project, spare, used: project.fabrics[1]! };
}

function lineOf(project: Project, fabric: Fabric, scope: 'whole' | 'left' = 'whole') {
  return yardage(project, scope).fabrics.find((one) => one.fabric.id === fabric.id);
}

describe('a backing of a fabric of its own', () => {
  it('takes what it takes by itself, in the line of its fabric', () => {
    const { project, spare } = uncut();
    const alone = yardage(project, 'whole').backing!;
    project.buying.backing.fabric = spare.id;
    const { backing } = yardage(project, 'whole');
    expect(backing!.apart).toBeNull();
    const line = lineOf(project, spare)!;
    expect(line.layout.length).toBeCloseTo(alone.layout.cloth, 9);
    expect(line.buy).toEqual({ kind: 'length', inches: alone.apart!.buy.inches });
    expect(line.lines.map((one) => one.step)).toEqual(['backing']);
  });

  it('comes to what the quilt takes of that fabric, straightened once', () => {
    const { project, used } = uncut();
    const before = lineOf(project, used)!.layout.length;
    const back = yardage(project, 'whole').backing!.layout.cloth;
    project.buying.backing.fabric = used.id;
    const after = lineOf(project, used)!.layout.length;
    // What lies beside the lengths may hold some pieces of the quilt, so it can be less than the sum, never more.
    expect(after).toBeLessThanOrEqual(before + back + 1e-9);
    expect(after).toBeGreaterThan(back);
  });

  it('costs what its fabric costs, once', () => {
    const { project, spare } = uncut();
    project.buying.price = 10;
    const open = totalCost(yardage(project, 'whole'))!;
    project.buying.backing.fabric = spare.id;
    expect(totalCost(yardage(project, 'whole'))).toBeCloseTo(open, 9);
    spare.price = 20;
    const alone = lineOf(project, spare)!;
    expect(totalCost(yardage(project, 'whole'))! - open).toBeCloseTo(alone.cost! / 2, 9);
  });

  it('is laid on the cloth on hand', () => {
    const { project, spare } = uncut();
    project.buying.backing.fabric = spare.id;
    const { layout } = yardage(project, 'whole').backing!;
    const [cut] = layout.cuts;
    const piece = { id: 'c', fabric: spare.id, kind: 'yardage' as const, stripLength: 44, count: 1 };
    const { straighten } = project.buying;
    project.clothOnHand = [{ ...piece, depth: cut!.along * cut!.count + straighten }];
    expect(lineOf(project, spare, 'left')).toMatchObject({
      buy: { kind: 'nothing' },
      onHand: { enough: true },
    });
    project.clothOnHand[0]!.depth = cut!.along + straighten + 1;
    const short = lineOf(project, spare, 'left')!;
    expect(short.layout.length).toBeCloseTo(cut!.along * (cut!.count - 1), 9);
    expect(short.onHand!.enough).toBe(false);
  });

  it('runs down the quilt where its print has a way up', () => {
    const { project, spare } = uncut();
    project.buying.backing.fabric = spare.id;
    spare.oneWay = true;
    expect(new Set(yardage(project, 'whole').backing!.others.map((one) => one.run))).toEqual(
      new Set(['down']),
    );
  });

  it('of wider cloth is bought by itself, from wide cloth on hand first', () => {
    const { project, used } = uncut();
    const before = lineOf(project, used)!;
    Object.assign(project.buying.backing, { fabric: used.id, width: 108 });
    const { backing } = yardage(project, 'whole');
    expect(lineOf(project, used)!.layout.length).toBe(before.layout.length);
    expect(backing!.layout.widths).toBe(1);
    expect(backing!.apart!.buy.inches).toBeGreaterThan(backing!.layout.cloth);
    const wide = { id: 'w', fabric: used.id, kind: 'yardage' as const, stripLength: 108, count: 1 };
    project.clothOnHand = [{ ...wide, depth: backing!.layout.cloth + project.buying.straighten }];
    const left = yardage(project, 'left').backing!;
    expect(left.apart).toMatchObject({ buy: { inches: 0 }, onHand: { enough: true } });
    // That piece is spent, so the strips of the quilt are not cut from it as well.
    expect(lineOf(project, used, 'left')!.layout.length).toBe(before.layout.length);
  });

  it('is told in words without a gap', () => {
    const { project, spare } = uncut();
    project.buying.backing.fabric = spare.id;
    const { lines, layout } = lineOf(project, spare)!;
    const words = [
      ...stripsAlike(layout).map((one) => one.words),
      ...lines.flatMap((line) => [
        ...line.why,
        ...line.pieces.flatMap((piece) => [piece.what, pieceWords(piece)]),
      ]),
    ].map((sentence) => speak(sentence));
    for (const one of words) expect(one).not.toMatch(/[{}]|undefined|NaN/);
    expect(words.some((one) => /^\d lengths? of \d/.test(one))).toBe(true);
    expect(words.some((one) => one.includes('strip'))).toBe(false);
  });

  it('is in the kits where that is asked, and named in their tables', () => {
    const { project, spare } = uncut();
    project.buying.backing.fabric = spare.id;
    expect(kits(project).fabrics.some((one) => one.fabric.id === spare.id)).toBe(false);
    project.buying.kits.backing = true;
    const made = kits(project);
    expect(made.backing).toBeNull();
    const own = made.fabrics.find((one) => one.fabric.id === spare.id)!;
    expect(own.withBacking).toBe(true);
    expect(own.inches).toBeCloseTo(yardage(project, 'whole').backing!.layout.cloth, 9);
    expect(orderCsv(project, made, (one) => speak(one))).toContain('"Back cloth, with the backing"');
    expect(stripsCsv(project, made, (one) => speak(one))).toContain('Lengths of the backing');
    project.buying.backing.width = 108;
    expect(orderCsv(project, kits(project), (one) => speak(one))).toContain('Backing of Back cloth');
  });

  it('goes with a colourway, and stands in its way where the fabric is removed', () => {
    const { project, spare, used } = uncut();
    const outcome = apply(project, changeBacking({ fabric: spare.id }));
    if (!outcome.ok) throw new Error('refused');
    let now = outcome.project;
    expect(fabricsInUse(now).some((one) => one.id === spare.id)).toBe(true);
    expect(speak(whereUsed(now, spare.id)!)).toBe('The backing is of Back cloth.');
    expect(apply(now, removeFabric(now, spare.id)).ok).toBe(false);
    const replaced = apply(now, replaceFabric(now, spare.id, used.id));
    expect(replaced.ok && replaced.project.buying.backing.fabric).toBe(used.id);
    const added = apply(now, addColourway('Other', [{ fabric: spare.id, by: used.id }]));
    if (!added.ok) throw new Error('refused');
    now = added.project;
    const colourway = now.colourways.at(-1);
    expect(inColourway(now, colourway!).buying.backing.fabric).toBe(used.id);
    const worn = apply(now, wearColourway(now, colourway!.id));
    expect(worn.ok && worn.project.buying.backing.fabric).toBe(used.id);
  });

  it('of a fabric that does not exist is refused at its place', () => {
    const { project } = uncut();
    const outcome = apply(project, changeBacking({ fabric: 'nowhere' }));
    expect(outcome).toMatchObject({
      ok: false,
      problems: [{ code: 'no-such-fabric', path: 'buying.backing.fabric' }],
    });
  });
});
