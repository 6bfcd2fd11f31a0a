// The small picture of a quilt against the exported wall, which is read back from its text.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawProject } from '../../src/drawing/drawProject';
import { drawingToSvg } from '../../src/drawing/svg';
import { thumbnailOf } from '../../src/drawing/thumbnail';
import { area } from '../../src/geometry/point';
import type { Project } from '../../src/model/project';
import { demo } from '../demo';
import { runs } from '../runs';
import { readArea, readSvg } from './readSvg';
import { randomProject } from './samples';

function areas(parts: Iterable<readonly [colour: string, area: number]>): Map<string, number> {
  const sums = new Map<string, number>();
  for (const [colour, area] of parts) sums.set(colour, (sums.get(colour) ?? 0) + area);
  return sums;
}

describe('the small picture of a quilt', () => {
  it('shows as much of every colour as the exported wall, and fills the top', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 9999 }),
        fc.constantFrom(6 as const, 8 as const, 10 as const, 12 as const),
        fc.boolean(),
        fc.boolean(),
        (seed, perBlock, emptied, bordered) => {
          const plain = randomProject(seed, perBlock, 2, 2);
          const cells = plain.wall.cells.map((cell, at) => (emptied && at === 0 ? null : cell));
          const borders = bordered ? [{ fabric: plain.fabrics[0]!.id, width: 2 }] : [];
          const project: Project = {
            ...plain,
            wall: { ...plain.wall, cells },
            setting: { ...plain.setting, borders, binding: null },
          };
          const picture = thumbnailOf(project);
          const shown = areas(
            picture.fills.flatMap(({ colour, outlines }) =>
              outlines.map((outline) => [colour, readArea(outline.map(({ x, y }) => [x, y]))] as const),
            ),
          );
          const svg = readSvg(drawingToSvg(drawProject(project)));
          const colours = new Map(project.fabrics.map(({ id, colour }) => [id, colour]));
          const saved = areas(
            svg.polygons.map(({ data, points, fill }) => [colours.get(data['data-fabric']!) ?? fill, readArea(points)] as const),
          ); // biome-ignore format: one step
          for (const [colour, area] of saved) expect(shown.get(colour), colour).toBeGreaterThan(area - 0.01);
          const whole = Array.from(shown.values()).reduce((sum, area) => sum + area, 0);
          expect(whole).toBeCloseTo(picture.width * picture.height, 1);
        },
      ),
      { numRuns: runs(20, 60) },
    );
  });
});

it('of a quilt of which nothing hangs shows its fabrics side by side, each as wide', () => {
  const project = demo('kiln-shed');
  const { fills, width, height } = thumbnailOf(project);
  const cloths = project.fabrics.filter((fabric) => !fabric.background);
  expect(new Set(fills.map((fill) => fill.colour))).toEqual(new Set(cloths.map((fabric) => fabric.colour)));
  const areas = fills.flatMap((fill) => fill.outlines.map(area));
  expect(areas).toHaveLength(cloths.length);
  for (const one of areas) expect(one).toBeCloseTo((width * height) / cloths.length, 6);
});
