// Blocks against published tables of regular polygons. Sources:
// [W] E. W. Weisstein, CRC Concise Encyclopedia of Mathematics, "Octagon", eqs 1–3: r = s(1+√2)/2, R = s√(4+2√2)/2, A = 2(1+√2)s².
// [H] R. G. Hatfield, The American House Carpenter, section 436, eqs 140–142: the same in words (public domain).
// [C] coefficients printed in a general reference article: A = 4.828427125 a² = 2.828427 R² = 3.3137085 r², span 2.414 a.
// [Q] two shop examples: across flats 2.250 → side 0.93198; across flats 2.0 → side 0.828427.
// [M] machinist's handbook table of plane figures, from memory: A = 4.828 s², R = 1.307 s, r = 1.207 s; in a 12 in circle s = 4.590.
// Hexagon and dodecagon: closed forms of plane geometry (A = 2√3 r², side 2r/√3; A = 12(2−√3) r², side 2(2−√3) r);
// decagon: tan 18° = √(1 − 2/√5).
import { describe, expect, it } from 'vitest';
import { cornerLeg, cornerOutlines } from '../../src/geometry/block';
import { area } from '../../src/geometry/point';
import { apothem, finishedBlock, rimLength } from '../../src/geometry/wedge';
import type { WedgePlan } from '../../src/model/project';
import { blockOutline } from './blockOutline';
import { usualWedge } from './strips';

/** A plan whose finished block has this many wedges and this many inches across flats. */
function planAcross(flats: number, perBlock: WedgePlan['perBlock'] = 8): WedgePlan {
  const rough: WedgePlan = { ...usualWedge, perBlock, cutHeight: 10 };
  const plan = { ...rough, cutHeight: 10 + flats / 2 - apothem(rough) };
  expect(finishedBlock(plan).height).toBeCloseTo(flats, 12);
  return plan;
}

const acrossCorners = (wedge: WedgePlan) => {
  const points = blockOutline(wedge);
  const opposite = points[wedge.perBlock / 2]!;
  return Math.hypot(points[0]!.x - opposite.x, points[0]!.y - opposite.y);
};

describe('the octagon block agrees with published octagons', () => {
  // across flats, side, across corners, area, corner leg: from the coefficients 0.414214, 1.082392, 0.828427, 0.292893 of [W].
  const table = [
    [2.25, 0.9319805153394638, 2.4353824506578863, 4.1939123190275875, 0.659009742330268],
    [6, 2.4852813742385704, 6.494353201754364, 29.82337649086284, 1.7573593128807148],
    [8, 3.3137084989847603, 8.659137602339152, 53.019335983756164, 2.3431457505076194],
    [10, 4.14213562373095, 10.82392200292394, 82.842712474619, 2.9289321881345245],
    [12, 4.970562748477141, 12.988706403508727, 119.29350596345137, 3.5147186257614296],
    [15, 6.213203435596426, 16.23588300438591, 186.39610306789277, 4.393398282201787],
    [16, 6.6274169979695206, 17.318275204678304, 212.07734393502466, 4.686291501015239],
  ] as const; // biome-ignore format: a table

  it.each(table)('%d in across flats', (flats, side, corners, wholeArea, leg) => {
    const wedge = planAcross(flats);
    expect(Math.abs(rimLength(wedge) - side)).toBeLessThan(1e-9);
    expect(Math.abs(acrossCorners(wedge) - corners)).toBeLessThan(1e-9);
    expect(Math.abs(area(blockOutline(wedge)) - wholeArea)).toBeLessThan(1e-9);
    expect(Math.abs(cornerLeg(wedge) - leg)).toBeLessThan(1e-9);
  });

  it('obeys the formulas of [W] and [H] between side, radii and area', () => {
    const wedge = planAcross(14);
    const side = rimLength(wedge);
    expect(Math.abs(7 - (side * (1 + Math.SQRT2)) / 2)).toBeLessThan(1e-9);
    expect(Math.abs(acrossCorners(wedge) / 2 - (side * Math.sqrt(4 + 2 * Math.SQRT2)) / 2)).toBeLessThan(
      1e-9,
    );
    expect(Math.abs(area(blockOutline(wedge)) - 2 * (1 + Math.SQRT2) * side ** 2)).toBeLessThan(1e-9);
  });

  it('agrees with the printed coefficients of [C] and the shop examples of [Q] in the digits they print', () => {
    const wedge = planAcross(2);
    const whole = area(blockOutline(wedge));
    expect(whole / rimLength(wedge) ** 2).toBeCloseTo(4.828427125, 8);
    expect(whole / (acrossCorners(wedge) / 2) ** 2).toBeCloseTo(2.828427, 6);
    expect(whole).toBeCloseTo(3.3137085, 7);
    expect(2 / rimLength(wedge)).toBeCloseTo(2.414, 3);
    expect(rimLength(wedge)).toBeCloseTo(0.828427, 6);
    expect(rimLength(planAcross(2.25))).toBeCloseTo(0.93198, 5);
  });

  it('agrees with the handbook row from memory [M]', () => {
    const wedge = planAcross(10);
    const side = rimLength(wedge);
    expect(acrossCorners(wedge) / 2 / side).toBeCloseTo(1.307, 3);
    expect(5 / side).toBeCloseTo(1.207, 3);
    const inTwelveCircle = planAcross(12 * Math.cos(Math.PI / 8));
    expect(rimLength(inTwelveCircle)).toBeCloseTo(4.59, 2);
  });
});

describe('blocks of other wedge counts agree with the closed forms', () => {
  it.each([
    [6, 2 * Math.sqrt(3), 2 / Math.sqrt(3)],
    [10, 10 * Math.sqrt(1 - 2 / Math.sqrt(5)), 2 * Math.sqrt(1 - 2 / Math.sqrt(5))],
    [12, 12 * (2 - Math.sqrt(3)), 2 * (2 - Math.sqrt(3))],
  ] as const)('%d wedges', (perBlock, areaOfUnit, sideOfUnit) => {
    const wedge = planAcross(14, perBlock);
    expect(Math.abs(area(blockOutline(wedge)) - areaOfUnit * 49)).toBeLessThan(1e-9);
    expect(Math.abs(rimLength(wedge) - sideOfUnit * 7)).toBeLessThan(1e-9);
  });

  it('a hexagon block is twice its side across corners and stands in a rectangle; 8 and 12 stand in a square', () => {
    const six = planAcross(14, 6);
    expect(Math.abs(finishedBlock(six).width - 2 * rimLength(six))).toBeLessThan(1e-9);
    expect(finishedBlock(planAcross(14, 8)).width).toBe(finishedBlock(planAcross(14, 8)).height);
    expect(finishedBlock(planAcross(14, 12)).width).toBe(finishedBlock(planAcross(14, 12)).height);
    // Decagon: across corners / across flats = 1 / cos 18° = 4 / √(10 + 2√5).
    expect(finishedBlock(planAcross(14, 10)).width / 14).toBeCloseTo(
      4 / Math.sqrt(10 + 2 * Math.sqrt(5)),
      12,
    );
  });

  it('the corner pieces of the octagon are right triangles with two equal legs', () => {
    const wedge = planAcross(14);
    for (const corner of cornerOutlines(wedge)) {
      expect(corner).toHaveLength(3);
      expect(Math.abs(area(corner) - cornerLeg(wedge) ** 2 / 2)).toBeLessThan(1e-9);
    }
  });
});
