// From blocks to a top: its size as the setting lays it out, and cloth for the setting as the yardage reckons it.
import { describe, expect, it } from 'vitest';
import { blocksOn } from '../../../src/cutting/top/sizeOffers';
import { settingCloth, topFit, topSize } from '../../../src/cutting/top/topSize';
import { yardage } from '../../../src/cutting/yardage/yardage';
import { speak } from '../../../src/model/phrase';
import type { ClothOnHand, Project } from '../../../src/model/project';
import { plainFabrics, projectOf } from '../fabrics';

const base = projectOf({ fabrics: plainFabrics(3) });
const quilt: Project = {
  ...base,
  wall: { rows: 3, columns: 2, cells: Array.from({ length: 6 }, () => null) },
  setting: {
    ...base.setting,
    cornerFabric: 'f1',
    sashing: { where: 'around', width: 1.5, fabric: 'f1' },
    binding: { fabric: 'f2', cutWidth: 2.5 },
  },
};
const cloth = (depth: number, fabric = 'f1'): ClothOnHand => ({
  id: `c ${fabric}`, fabric, kind: 'yardage', stripLength: 40, depth, count: 1,
}); // biome-ignore format: a fixture

describe('the top that so many blocks make', () => {
  it('of six is 3 rows of 2, 32 1/2 × 48 with 1 1/2 sashing around blocks of 14 (trade notes 5)', () => {
    expect(topSize(quilt, 6)).toMatchObject({ rows: 3, columns: 2, blocks: 6, width: 32.5, height: 48 });
  });

  it('is never more blocks than asked, nor much longer than wide while few are left over', () => {
    for (let blocks = 1; blocks <= 120; blocks += 1) {
      const top = topSize(quilt, blocks)!;
      expect(top.blocks).toBe(blocksOn(quilt, top.rows, top.columns));
      expect(top.blocks).toBeLessThanOrEqual(blocks);
      if (blocks > 3) expect(top.rows / top.columns).toBeLessThanOrEqual(2);
      expect(top.blocks / blocks).toBeGreaterThan(0.6);
    }
    expect(topSize(quilt, 10)).toMatchObject({ rows: 3, columns: 3 });
    expect(topSize(quilt, 12)).toMatchObject({ rows: 4, columns: 3 });
    expect(topSize(quilt, 0)).toBeNull();
  });

  it('lies where the wall lies', () => {
    const lying = { ...quilt, wall: { ...quilt.wall, rows: 2, columns: 3 } };
    expect(topSize(lying, 12)).toMatchObject({ rows: 3, columns: 4 });
  });
});

describe('the cloth of the setting', () => {
  it('is what the yardage of the hung quilt reckons', () => {
    const { id } = { id: 'b1' };
    const block = { id, kind: 'pieced', number: 1, places: Array.from({ length: 8 }, () => null), cornerFabric: null, cornerShift: 0, progress: 'planned' } as const; // biome-ignore format: a fixture
    const hung: Project = {
      ...quilt,
      blocks: [{ ...block, places: [...block.places] }],
      wall: {
        ...quilt.wall,
        cells: Array.from({ length: 6 }, () => ({ block: id, turn: 0, pinned: false })),
      },
      buying: { ...quilt.buying, fatQuarters: false },
    };
    const listed = yardage(hung, 'whole').fabrics.map(({ fabric, buy }) => [
      fabric.id,
      buy.kind === 'length' ? buy.inches : 0,
    ]);
    expect(
      settingCloth(quilt, { rows: 3, columns: 2 }, []).map((row) => [row.fabric.id, row.needed]),
    ).toEqual(listed);
  });

  it('that is on hand is laid out on it: enough, too little, or none', () => {
    const of = (stock: ClothOnHand[]) => settingCloth(quilt, { rows: 3, columns: 2 }, stock);
    const [background, binding] = of([]);
    expect(speak(background!.words)).toMatch(/^Fabric 1, .* yd for corners and sashing: none is on hand\.$/);
    expect(background!.short).toBe(background!.needed);
    expect(speak(binding!.words)).toMatch(/^Fabric 2, .* yd for binding: none is on hand\.$/);
    const [enough] = of([cloth(background!.needed)]);
    expect(enough).toMatchObject({ short: 0, onHand: true });
    const [less] = of([cloth(background!.needed / 2)]);
    expect(less!.short).toBeGreaterThan(0);
    expect(less!.short).toBeLessThan(background!.needed);
    expect(speak(less!.words)).toMatch(/more to buy\.$/);
  });

  it('limits the top where there is too little of it, to the largest one it is enough for', () => {
    const whole = settingCloth(quilt, { rows: 4, columns: 3 }, [])[0]!.needed;
    const fit = topFit(quilt, 12, [cloth(whole * 0.6)])!;
    expect(fit.size).toMatchObject({ rows: 4, columns: 3 });
    expect(fit.limit?.fabric.id).toBe('f1');
    const top = fit.limit!.size!;
    expect(top.blocks).toBeLessThan(12);
    expect(settingCloth(quilt, top, [cloth(whole * 0.6)])[0]!.short).toBe(0);
    expect(speak(fit.words.at(-1)!)).toContain('So Fabric 1 is the limit');
    // Nothing written down of it is something to buy, not a limit.
    expect(topFit(quilt, 12, [])!.limit).toBeNull();
    expect(topFit(quilt, 12, [cloth(3)])!.limit).toMatchObject({ size: null });
    expect(topFit(quilt, 0, [])).toBeNull();
  });
});
