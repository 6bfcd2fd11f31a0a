// A new border is told apart from what it lies against: measured in the exported picture, on random tops in random settings.
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { likeness } from '../../src/cloth/likeness';
import { printMix } from '../../src/cloth/print/printMix';
import { drawProject } from '../../src/drawing/drawProject';
import { drawingToSvg } from '../../src/drawing/svg';
import { apply } from '../../src/editing/apply';
import { addBorder } from '../../src/editing/commands/setting';
import { createProject } from '../../src/model/create';
import type { Project, Setting } from '../../src/model/project';
import { cellCount, isPlain } from '../../src/model/wallCells';
import { type FilePiece, piecesOfSvg, sharedLength } from '../balance/clashes/measuredContacts';
import { scrappyTop } from '../balance/tops';
import { runs } from '../runs';

/** The fabrics that touch the outermost border, read from the picture: pieces of the setting and corners, and wedges. */
function touched(project: Project): { setting: Set<string>; rims: Set<string> } {
  const pieces = piecesOfSvg(drawingToSvg(drawProject(project)));
  const spread = (at: 0 | 1) => {
    const all = pieces.flatMap((piece) => piece.points.map((point) => point[at]));
    return [Math.min(...all), Math.max(...all)] as const;
  };
  const edges = [spread(0), spread(1)] as const;
  const atEdge = (piece: FilePiece) =>
    piece.points.some((point) =>
      edges.some((edge, at) => edge.some((end) => Math.abs(point[at]! - end) < 2e-3)),
    );
  const border = pieces.filter((piece) => piece.part === 'border' && atEdge(piece));
  const others = pieces.filter((piece) => !border.includes(piece));
  const found = { setting: new Set<string>(), rims: new Set<string>() };
  for (const other of others) {
    if (border.every((one) => sharedLength(one, other) === 0)) continue;
    (other.place === null ? found.setting : found.rims).add(other.fabric);
  }
  return found;
}

const fabricOf = fc.integer({ min: 0, max: 5 }).map((at) => `c${at}`);
const settings = fc.record({
  layout: fc.oneof(
    fc.constant({ kind: 'straight' as const }),
    fc.record({ kind: fc.constant('onPoint' as const), sides: fabricOf, corners: fabricOf }),
  ),
  plain: fc.option(fc.record({ fabric: fabricOf, cells: fc.constantFrom('first' as const, 'second' as const) })),
  cornerFabric: fabricOf,
  cornerRule: fc.option(fc.record({ kind: fc.constantFrom('edge' as const, 'checkerboard' as const), fabric: fabricOf })),
  sashing: fc.record({ where: fc.constantFrom('none' as const, 'between' as const, 'around' as const), width: fc.constant(1.5), fabric: fabricOf }),
  cornerstones: fc.option(fabricOf),
  border: fc.option(fc.record({ fabric: fabricOf, width: fc.constant(2), stones: fc.option(fabricOf) })),
}); // biome-ignore format: a table
const tops = fc
  .tuple(fc.integer({ min: 1, max: 3 }), fc.integer({ min: 1, max: 3 }), fc.nat(9999), settings, fc.constantFrom(8, 12), fc.constantFrom(0, 10, 20))
  .map(([rows, columns, seed, { cornerstones, border, ...rest }, perBlock, lookalikes]): Project => {
    const onPoint = rest.layout.kind === 'onPoint';
    const where = onPoint && rest.sashing.where === 'between' ? 'around' : rest.sashing.where;
    const setting: Setting = {
      ...rest,
      sashing: { ...rest.sashing, where, ...(cornerstones ? { cornerstones } : {}) },
      borders: border
        ? [{ fabric: border.fabric, width: border.width, ...(border.stones ? { corners: { kind: 'cornerstones' as const, fabric: border.stones } } : {}) }]
        : [],
      binding: null,
    };
    const count = cellCount(rows, columns, setting.layout);
    const top = scrappyTop({ rows: 1, columns: count, seed, fabrics: 12, perBlock: perBlock as 8 | 12 });
    const whole = { ...top, setting, preferences: { ...top.preferences, lookalikes }, wall: { rows, columns, cells: top.wall.cells } };
    return { ...whole, wall: { ...whole.wall, cells: whole.wall.cells.map((cell, at) => (isPlain(at, whole) ? null : cell)) } };
  }); // biome-ignore format: short

describe('the fabric of a new border', () => {
  it('is unlike all it touches where the list has such a fabric, and never one it touches where there is another', () => {
    let choices = 0;
    fc.assert(
      fc.property(tops, (project) => {
        const outcome = apply(project, addBorder({ width: 3 }));
        if (!outcome.ok) throw new Error(outcome.problems[0]!.message.say);
        const chosen = outcome.project.setting.borders.at(-1)!.fabric;
        const { setting, rims } = touched(outcome.project);
        const alike = (one: string, other: string) => {
          const mix = (id: string) => printMix(project.fabrics.find((fabric) => fabric.id === id)!);
          return one === other || likeness(mix(one), mix(other), project.preferences.lookalikes) > 0;
        };
        const clear = (fabric: string, of: Iterable<string>) =>
          [...of].every((other) => !alike(fabric, other));
        const ids = project.fabrics.map((fabric) => fabric.id);
        if (ids.some((id) => clear(id, [...setting, ...rims]))) {
          choices += 1;
          expect(clear(chosen, [...setting, ...rims])).toBe(true);
        } else if (ids.some((id) => clear(id, setting))) expect(clear(chosen, setting)).toBe(true);
        if (ids.some((id) => !setting.has(id))) expect(setting.has(chosen)).toBe(false);
      }),
      { numRuns: runs(30, 150) },
    );
    expect(choices).toBeGreaterThan(runs(10, 40));
  });
});

test('a first border of a new quilt with no other fabric is of the one there is', () => {
  const outcome = apply(createProject('p', 'New'), addBorder({ width: 2 }));
  expect(outcome.ok && outcome.project.setting.borders[0]!.fabric).toBe('f1');
});
