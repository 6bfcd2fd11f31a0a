// Random strip sets and wedges for the laws of the geometry, and the flat strip set built without the code under test.
import fc from 'fast-check';
import type { Outline } from '../../src/geometry/point';
import type { Strip, WedgePlan } from '../../src/model/project';

export const usualWedge: WedgePlan = {
  perBlock: 8,
  cutHeight: 7.5,
  seam: 0.25,
  assemblySeam: 0.25,
  outerSeam: 0.25,
};

const width = fc.constantFrom(0.75, 1, 1.25, 1.5, 1.75, 2, 2.5, 3.0625);

/** A set high enough for its wedge, up to about 2 in more; any N the tool draws, several seams. */
export const setAndWedge: fc.Arbitrary<{ strips: Strip[]; wedge: WedgePlan }> = fc
  .record({
    perBlock: fc.constantFrom(6, 8, 10, 12) as fc.Arbitrary<WedgePlan['perBlock']>,
    cutHeight: fc.constantFrom(4, 5.5, 7.5, 8.25),
    seam: fc.constantFrom(0.1875, 0.25),
    assemblyExtra: fc.constantFrom(0, 0.03125, 0.0625),
    outerSeam: fc.constantFrom(0.25, 0.3125),
    widths: fc.array(width, { minLength: 24, maxLength: 24 }),
    fabrics: fc.array(fc.constantFrom('a', 'b', 'c', 'd', 'e'), { minLength: 24, maxLength: 24 }),
    extra: fc.constantFrom(0, 0.5, 1.5),
  })
  .map(({ perBlock, cutHeight, seam, assemblyExtra, outerSeam, widths, fabrics, extra }) => {
    const wedge: WedgePlan = { perBlock, cutHeight, seam, assemblySeam: seam + assemblyExtra, outerSeam };
    const strips: Strip[] = [];
    while (flatHeight(strips, seam) < cutHeight + extra) {
      strips.push({ fabric: fabrics[strips.length]!, width: widths[strips.length]! });
    }
    return { strips, wedge };
  });

/** Where the seams lie on the sewn set, from the raw edge of the first strip, and its two raw edges: n + 1 lines. */
export function seamLines(strips: readonly Strip[], seam: number): number[] {
  const lines = [0];
  let rawStart = 0; // where the strip's own raw edge lies on the flat set
  strips.forEach((strip, at) => {
    const rawEnd = rawStart + strip.width;
    lines.push(at === strips.length - 1 ? rawEnd : rawEnd - seam);
    rawStart = rawEnd - 2 * seam;
  });
  return lines;
}

export function flatHeight(strips: readonly Strip[], seam: number): number {
  return strips.length === 0 ? 0 : seamLines(strips, seam).at(-1)!;
}

/** The cut wedge lying on its set (y from the raw edge of the first strip), tip up: base on y = 0; down: base on y = height. */
export function wedgeOnSet(tip: 'up' | 'down', start: number, height: number, wedge: WedgePlan): Outline {
  const half = Math.PI / wedge.perBlock;
  // From first principles: finished triangle with its apex at the middle, every edge moved out by the seam.
  const apexAbove = wedge.seam / Math.sin(half); // raw apex beyond the finished apex
  const trimmed = apexAbove - wedge.seam; // the tip is cut off where the allowance of the finished point ends
  const base = 2 * (wedge.cutHeight + trimmed) * Math.tan(half);
  const tipWidth = 2 * trimmed * Math.tan(half);
  const inset = (base - tipWidth) / 2;
  const y = (fromBase: number) => (tip === 'up' ? fromBase : height - fromBase);
  return [
    { x: start, y: y(0) },
    { x: start + base, y: y(0) },
    { x: start + base - inset, y: y(wedge.cutHeight) },
    { x: start + inset, y: y(wedge.cutHeight) },
  ];
}
