// Photographed fabric in pictures: pixels at known inches, counted in a picture that another program (resvg) draws.
import { beforeAll, describe, expect, it } from 'vitest';
import { clothAngle } from '../../src/cloth/print/printTile';
import { drawProject } from '../../src/drawing/drawProject';
import { dataHrefs } from '../../src/drawing/photos';
import { patternFor } from '../../src/drawing/prints';
import { drawingToSvg } from '../../src/drawing/svg';
import type { Pictures } from '../../src/model/picture/picture';
import type { Project } from '../../src/model/project';
import { KINDS, keptPicture, photographed } from '../model/picture/images';
import { lookAtSvg } from './lookAt';
import { randomProject } from './samples';

/** A tile of four squares: red, green above blue, white; 32 pixels a side. */
const CORNERS = [[220, 40, 40], [40, 160, 60], [40, 60, 200], [250, 250, 245]] as const; // biome-ignore format: short
const cornerAt = (x: number, y: number) => CORNERS[(x >= 16 ? 1 : 0) + (y >= 16 ? 2 : 0)]!;

let pictures: Pictures;
let png: string;
beforeAll(async () => {
  pictures = new Map(
    await Promise.all(KINDS.map((kind) => keptPicture({ kind, width: 32, height: 32, at: cornerAt }))),
  );
  png = [...pictures].find(([, picture]) => picture.type === 'image/png')![0];
});

/** Which of the four squares a colour is of; −1 where it is of none. */
function squareOf(colour: readonly number[]): number {
  return CORNERS.findIndex((corner) => corner.every((part, at) => Math.abs(part - colour[at]!) < 26));
}

/** The square at a place of fabric whose tile lies from the origin, turned clockwise by `degrees`. */
function squareAt(x: number, y: number, side: number, degrees: number): { square: number; clear: boolean } {
  const angle = (degrees * Math.PI) / 180;
  const along = (x * Math.cos(angle) + y * Math.sin(angle)) / (side / 2);
  const down = (y * Math.cos(angle) - x * Math.sin(angle)) / (side / 2);
  const edge = (part: number) => Math.abs(part - Math.round(part));
  const odd = (part: number) => ((Math.floor(part) % 2) + 2) % 2;
  return { square: odd(along) + 2 * odd(down), clear: Math.min(edge(along), edge(down)) > 0.12 };
}

describe('photographed fabric', () => {
  it.each([
    ['image/png', 1, 0],
    ['image/jpeg', 1.5, 0],
    ['image/jpeg', 0.75, 0],
    ['image/png', 1.25, 30],
    ['image/png', 2, -45],
  ])('of %s lies at true scale, its tile %d inches wide and turned by %d°', (type, side, angle) => {
    const id = [...pictures].find(([, picture]) => picture.type === type)![0];
    const fabric = photographed(id, { width: side, height: side, angle });
    const pattern = patternFor(fabric, dataHrefs(pictures))!;
    const svg = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 8 8" width="8" height="8">${pattern.markup}<rect width="8" height="8" fill="url(#${pattern.id})"/></svg>`;
    const look = lookAtSvg(svg, 60);
    let seen = 0;
    for (let x = 0.11; x < 8; x += 0.23)
      for (let y = 0.07; y < 8; y += 0.19) {
        const { square, clear } = squareAt(x, y, side, angle);
        if (!clear) continue;
        seen += 1;
        expect(`${x} ${y} ${squareOf(look(x, y))}`).toBe(`${x} ${y} ${square}`);
      }
    expect(seen).toBeGreaterThan(500);
  });

  it('is its mean colour where the picture is missing', () => {
    const pattern = patternFor(photographed(png))!;
    expect(pattern.markup).not.toContain('<image');
    const svg = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 3 3" width="3" height="3">${pattern.markup}<rect width="3" height="3" fill="url(#${pattern.id})"/></svg>`;
    expect(lookAtSvg(svg, 20)(1.3, 2.1)).toEqual([0xb8, 0x7a, 0x5c]);
  });
});

/** Whether a place lies in a convex outline, away from the line of its seams. */
function wellInside(corners: readonly (readonly [number, number])[], x: number, y: number): boolean {
  const away = corners.map(([x0, y0], at) => {
    const [x1, y1] = corners[(at + 1) % corners.length]!;
    return ((x1 - x0) * (y - y0) - (y1 - y0) * (x - x0)) / Math.hypot(x1 - x0, y1 - y0);
  });
  return Math.min(...away) > 0.08 || Math.max(...away) < -0.08;
}

/** A wall all of whose fabrics are one photographed fabric. */
function photographedWall(): Project {
  const project = randomProject(4, 8, 2, 2);
  return {
    ...project,
    fabrics: project.fabrics.map(({ id, name }) => ({ ...photographed(png), id, name })),
    setting: { ...project.setting, borders: [{ fabric: 'b', width: 3 }] },
  };
}

describe('a wall of photographed fabric', () => {
  it('has its tile at the scale and with the grain of each piece, read at inches of the quilt', () => {
    const project = photographedWall();
    const drawing = drawProject(project);
    const svg = drawingToSvg(drawing, { hrefOf: dataHrefs(pictures) });
    const look = lookAtSvg(svg, 24);
    const byId = new Map(project.fabrics.map((fabric) => [fabric.id, fabric]));
    let seen = 0;
    const polygons = svg.matchAll(
      /<polygon data-fabric="(\w+)"[^>]*points="([^"]+)" fill="url\(#([^)]+)\)"/g,
    );
    for (const [, id, points, fill] of polygons) {
      const corners = points!.split(' ').map((pair) => pair.split(',').map(Number) as [number, number]);
      const middle = [0, 1].map(
        (at) => corners.reduce((sum, corner) => sum + corner[at]!, 0) / corners.length,
      );
      const turn = Number(/^print-\w+?-(-?[\d_]+)$/.exec(fill!)?.[1]?.replace('_', '.') ?? 0);
      for (const [dx, dy] of [
        [0, 0],
        [0.13, 0.09],
        [-0.11, 0.12],
      ] as const) {
        // biome-ignore format: short
        const [x, y] = [middle[0]! + dx, middle[1]! + dy];
        const { square, clear } = squareAt(x, y, 1, clothAngle(byId.get(id!)!, turn));
        if (!clear || !wellInside(corners, x, y)) continue;
        seen += 1;
        expect(squareOf(look(x, y))).toBe(square);
      }
    }
    expect(seen).toBeGreaterThan(100);
  });

  it('holds each picture once, and only what is used', () => {
    const svg = drawingToSvg(drawProject(photographedWall()), { hrefOf: dataHrefs(pictures) });
    const used = new Set([...svg.matchAll(/href="(data:[^"]+)"/g)].map(([, href]) => href));
    expect(used.size).toBe(1);
    expect(svg).not.toContain('blob:');
  });
});
