// A block as few paths for the screen, against the pieces it was merged from.
import { describe, expect, it } from 'vitest';
import { grainsOf, mergedPaths, patternsFor, seamPath } from '../../src/drawing/blockPaths';
import { drawBlock } from '../../src/drawing/drawProject';
import { NO_HREFS } from '../../src/drawing/photos';
import { area } from '../../src/geometry/point';
import type { Fabric, PrintMotif } from '../../src/model/project';
import { randomProject } from './samples';

/** Outlines back from path data made of M, L and Z. */
function pathAreas(d: string): number[] {
  return d
    .split('Z')
    .filter((part) => part !== '')
    .map((part) =>
      area(
        part
          .slice(1)
          .split('L')
          .map((pair) => pair.split(',').map(Number))
          .map(([x, y]) => ({ x: x!, y: y! })),
      ),
    );
}

const sum = (values: readonly number[]) => values.reduce((all, one) => all + one, 0);

function printed(fabric: Fabric, motif: PrintMotif): Fabric {
  return {
    ...fabric,
    cloth: { kind: 'print', print: { motif, inks: ['#111111'], repeat: 1, angle: 0, seed: 1 } },
  };
}

describe('a block merged for the screen', () => {
  it('is one path for each plain cloth, with the same area of it', () => {
    const project = randomProject(21, 8);
    const pieces = drawBlock(project, project.blocks[0]!);
    const paths = mergedPaths(pieces, project.fabrics);
    const cloths = new Set(pieces.map((piece) => piece.fabric));
    expect(paths).toHaveLength(cloths.size);
    expect(new Set(paths.map((path) => path.fabric))).toEqual(cloths);
    for (const path of paths) {
      const own = pieces.filter((piece) => piece.fabric === path.fabric).map((piece) => area(piece.outline));
      expect(sum(pathAreas(path.d))).toBeCloseTo(sum(own), 4);
    }
    expect(sum(pathAreas(seamPath(pieces)))).toBeCloseTo(196, 3);
  });

  it('splits a print only by the turns that show: four for stripes, two for gingham, one for tossed figures', () => {
    const project = randomProject(21, 8);
    const one = { ...project.stripSets[0]!, strips: [{ fabric: 'a', width: 8 }] };
    const places = project.blocks[0]!.places.map((_, at) => ({
      set: one.id,
      tip: at % 2 ? ('down' as const) : ('up' as const),
    }));
    const block = { ...project.blocks[0]!, places };
    const counted = (motif: PrintMotif) => {
      const fabrics = project.fabrics.map((fabric) => (fabric.id === 'a' ? printed(fabric, motif) : fabric));
      const pieces = drawBlock({ ...project, fabrics, stripSets: [one], blocks: [block] }, block);
      const own = mergedPaths(pieces, fabrics).filter((path) => path.fabric === 'a');
      const defined = patternsFor(fabrics, grainsOf(8), NO_HREFS).map((pattern) => `url(#${pattern.id})`);
      for (const path of own) expect(defined).toContain(path.fill);
      return own.length;
    };
    expect([counted('stripe'), counted('gingham'), counted('leaves'), counted('dots')]).toEqual([4, 2, 1, 1]);
  });

  it('leaves a bare place without a fill, and an unknown fabric too', () => {
    const project = randomProject(21, 8);
    const block = { ...project.blocks[0]!, places: project.blocks[0]!.places.map(() => null) };
    const paths = mergedPaths(drawBlock({ ...project, blocks: [block] }, block), []);
    expect(paths.map((path) => [path.fabric, path.fill])).toEqual([
      [null, ''],
      ['f1', ''],
    ]);
  });
});
