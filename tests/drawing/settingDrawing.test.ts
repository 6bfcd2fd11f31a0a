// Settings in the exported file, read back from its coordinates: every piece of an on-point top with its blocks adds up to the
// top, the binding lies outside it, and blocks carry their tilt.
import { describe, expect, it } from 'vitest';
import { drawProject } from '../../src/drawing/drawProject';
import { drawingToSvg } from '../../src/drawing/svg';
import type { Project, Setting } from '../../src/model/project';
import { readArea, readSvg } from './readSvg';
import { randomProject } from './samples';

/** A random project whose blocks hang in 2 rows of 2 and one in between. */
function onPoint(seed: number, more: Partial<Setting> = {}): Project {
  const five = randomProject(seed, 8, 1, 5);
  return {
    ...five,
    setting: { ...five.setting, layout: { kind: 'onPoint', sides: 'a', corners: 'b' }, ...more },
    wall: { rows: 2, columns: 2, cells: five.wall.cells },
  };
}

describe('an on-point top in the exported file', () => {
  it.each([1, 2, 3])('adds up to the whole top, blocks, triangles, sashing and borders (seed %i)', (seed) => {
    const sashing = { where: 'around', width: 1, fabric: 'c', cornerstones: 'd' } as const;
    const drawing = drawProject(
      onPoint(seed, {
        sashing,
        borders: [{ fabric: 'e', width: 2, corners: { kind: 'mitred' } }],
      }),
    );
    const { polygons, viewBox } = readSvg(drawingToSvg(drawing));
    expect(viewBox[2]).toBeCloseTo(drawing.width, 5);
    expect(viewBox[3]).toBeCloseTo(drawing.height, 5);
    const sum = polygons.reduce((all, polygon) => all + readArea(polygon.points), 0);
    expect(sum).toBeCloseTo(drawing.width * drawing.height, 2);
    const xs = polygons.flatMap((polygon) => polygon.points.map(([x]) => x));
    expect(Math.min(...xs)).toBeCloseTo(0, 5);
    expect(Math.max(...xs)).toBeCloseTo(drawing.width, 5);
    expect(new Set(polygons.flatMap((polygon) => polygon.data['data-part'] ?? []))).toEqual(
      new Set(['corner', 'sashing', 'cornerstone', 'side', 'setting-corner', 'border']),
    );
  });

  it('hangs its blocks turned by 45°: the point of a block is as far from its middle as its diagonal says', () => {
    const drawing = drawProject(onPoint(4));
    const text = drawingToSvg(drawing);
    expect(text.match(/data-tilt="45"/g)).toHaveLength(5);
    const [hung] = drawing.blocks;
    const points = readSvg(text)
      .polygons.filter((polygon) => polygon.data['data-block'] === String(hung!.number))
      .flatMap((polygon) => polygon.points);
    const reach = Math.max(...points.map(([x]) => x)) - hung!.centre.x;
    expect(reach).toBeCloseTo((drawing.block.width * Math.SQRT2) / 2, 5);
  });
});

describe('the binding', () => {
  it('is drawn as an edge as wide as the outer seam, outside the finished top, and leaves the top as it is', () => {
    const bare = onPoint(5);
    const bound: Project = { ...bare, setting: { ...bare.setting, binding: { fabric: 'e', cutWidth: 2.5 } } };
    const drawing = drawProject(bound);
    expect([drawing.width, drawing.height]).toEqual([drawProject(bare).width, drawProject(bare).height]);
    const { polygons, viewBox, width } = readSvg(drawingToSvg(drawing));
    expect(viewBox.slice(0, 2)).toEqual([-0.25, -0.25]);
    expect(Number.parseFloat(width)).toBeCloseTo(drawing.width + 0.5, 5);
    const edge = polygons.filter((polygon) => polygon.data['data-part'] === 'binding');
    const sum = edge.reduce((all, polygon) => all + readArea(polygon.points), 0);
    expect(sum).toBeCloseTo(
      (drawing.width + 0.5) * (drawing.height + 0.5) - drawing.width * drawing.height,
      3,
    );
  });
});

describe('plain squares', () => {
  it('are cloth, not empty cells', () => {
    const four = randomProject(6, 8, 1, 4);
    const project: Project = {
      ...four,
      setting: { ...four.setting, plain: { fabric: 'a', cells: 'second' } },
      wall: { rows: 2, columns: 2, cells: [four.wall.cells[0]!, null, null, null] },
    };
    const drawing = drawProject(project);
    expect(drawing.emptyCells.map((one) => one.cell)).toEqual([3]);
    expect(drawing.setting.filter((piece) => piece.part === 'plain')).toHaveLength(2);
  });
});
