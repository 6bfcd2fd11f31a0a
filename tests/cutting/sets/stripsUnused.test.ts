// Strips on hand against strips sewn, and the strip that mends a set too short.
import { describe, expect, it } from 'vitest';
import { mendHeight } from '../../../src/cutting/sets/mendHeight';
import { stripsLeftBeside, stripsUnused } from '../../../src/cutting/sets/stripsUnused';
import { setHeight } from '../../../src/geometry/stripSet';
import { speak } from '../../../src/model/phrase';
import type { Strip } from '../../../src/model/project';
import { usualWedge } from '../../geometry/strips';
import { projectOf, stripSet } from '../fabrics';

const strips = (...list: [fabric: string, width: number][]): Strip[] =>
  list.map(([fabric, width]) => ({ fabric, width }));

describe('strips unused', () => {
  const project = projectOf({
    stripsOnHand: [
      { id: 'a', fabric: 'f2', width: 1.5, length: 40, count: 2 },
      { id: 'b', fabric: 'f1', width: 2, length: 40, count: 1 },
      { id: 'c', fabric: 'f2', width: 1.5, length: 21, count: 1 },
    ],
    stripSets: [
      stripSet('s1', strips(['f1', 2], ['f2', 1.5], ['f1', 2])),
      stripSet('s2', strips(['f3', 1]), { length: 20 }),
    ],
  });

  it('are what is on hand less what is sewn, and below nothing where more is sewn than was listed', () => {
    expect(stripsUnused(project)).toEqual([
      { fabric: 'f1', width: 2, onHand: 1, used: 2, left: -1 },
      { fabric: 'f2', width: 1.5, onHand: 3, used: 1, left: 2 },
      { fabric: 'f3', width: 1, onHand: 0, used: 1, left: -1 },
    ]);
  });

  it('take the shortest strip that is long enough for the set', () => {
    const short = stripSet('s3', strips(['f2', 1.5]), { length: 20 });
    expect(stripsLeftBeside(project.stripsOnHand, [short]).map((row) => [row.id, row.count])).toEqual([
      ['a', 2],
      ['b', 1],
    ]);
    const long = stripSet('s3', strips(['f2', 1.5]), { length: 40 });
    expect(stripsLeftBeside(project.stripsOnHand, [long]).map((row) => [row.id, row.count])).toEqual([
      ['c', 1],
      ['a', 1],
      ['b', 1],
    ]);
  });
});

describe('a set that is too short', () => {
  const short = stripSet('s1', strips(['f1', 2], ['f2', 1.5], ['f3', 2], ['f1', 2]), { label: 'B' }); // 6 in high

  it('is mended by one strip wide enough: what is missing and two seam allowances, up to the next quarter', () => {
    const mend = mendHeight(short, usualWedge, [])!;
    expect(setHeight(short.strips, 0.25)).toBe(6);
    expect(mend.short).toBe(1.5);
    expect(mend.leastWidth).toBe(2);
    expect(mend.add).toEqual([]);
    expect(speak(mend.words)).toBe(
      'Set B is 1 1/2" short. A strip cut 2" wide or wider mends it; there is none on hand.',
    );
  });

  it('takes the narrowest single strip that will do from what is on hand, of another fabric, inside the set', () => {
    const onHand = [
      { id: 'a', fabric: 'f4', width: 1.5, length: 40, count: 9 },
      { id: 'b', fabric: 'f4', width: 2.5, length: 40, count: 1 },
      { id: 'c', fabric: 'f5', width: 2, length: 40, count: 1 },
      { id: 'd', fabric: 'f6', width: 2, length: 20, count: 1 },
    ];
    const mend = mendHeight(short, usualWedge, onHand)!;
    expect(mend.add).toEqual([{ strip: { fabric: 'f5', width: 2 }, at: 2 }]);
    expect(speak(mend.words)).toBe('Set B is 1 1/2" short. Add the strip cut 2" wide that is on hand.');
  });

  it('takes two strips where no single one reaches, and the mended set is high enough', () => {
    const onHand = [{ id: 'a', fabric: 'f2', width: 1.25, length: 40, count: 3 }];
    const mend = mendHeight(short, usualWedge, onHand)!;
    const grown = [...short.strips];
    for (const { strip, at } of mend.add) grown.splice(at, 0, strip);
    expect(mend.add).toHaveLength(2);
    expect(setHeight(grown, 0.25)).toBe(7.5);
    grown.slice(1).forEach((strip, at) => {
      expect(strip.fabric).not.toBe(grown[at]!.fabric);
    });
    expect(speak(mend.words)).toContain('Add 2 strips that are on hand, cut 1 1/4" and 1 1/4" wide.');
  });

  it('has nothing to mend when it is as high as the wedge', () => {
    expect(mendHeight(stripSet('s1', strips(['f1', 7.5])), usualWedge, [])).toBeNull();
  });

  it('without strips needs one as wide as the wedge is high, without seams', () => {
    expect(mendHeight(stripSet('s1', []), usualWedge, [])!.leastWidth).toBe(7.5);
  });
});
