// Fabrics and strips for the tests of the cutting room: plain cloths far apart in colour unless a test wants look-alikes.
import { createProject } from '../../src/model/create';
import type { Fabric, Project, Strip, StripOnHand, StripSet } from '../../src/model/project';

const COLOURS = [
  '#8b1e3f', '#d8a15a', '#2f4858', '#86bbd8', '#f6e7cb', '#5b8e7d', '#ff6f59', '#f4d35e', '#1b1b3a', '#a7c957',
  '#b8b8d1', '#6a040f', '#00a6a6', '#7b2d8b', '#3a5a40', '#e5989b',
]; // biome-ignore format: a table

export function plainFabrics(count: number): Fabric[] {
  return Array.from({ length: count }, (_, at) => ({
    id: `f${at + 1}`,
    name: `Fabric ${at + 1}`,
    colour: COLOURS[at % COLOURS.length]!,
    cloth: { kind: 'plain' },
    background: false,
  }));
}

/** So many strips of each [width, count] from each fabric, 40 in long. */
export function stripsOf(
  fabrics: readonly Fabric[],
  each: readonly (readonly [width: number, count: number])[],
  length = 40,
): StripOnHand[] {
  return fabrics.flatMap((fabric) =>
    each.map(([width, count]) => ({
      id: `${fabric.id} ${width} ${length}`,
      fabric: fabric.id,
      width,
      length,
      count,
    })),
  );
}

export function stripSet(id: string, strips: readonly Strip[], more: Partial<StripSet> = {}): StripSet {
  return {
    id,
    label: id.toUpperCase(),
    strips: [...strips],
    length: 40,
    pressing: 'last',
    firstTip: 'up',
    progress: 'planned',
    cut: null,
    locked: false,
    ...more,
  };
}

export function projectOf(parts: Partial<Project>): Project {
  return { ...createProject('test', 'Test'), fabrics: plainFabrics(8), ...parts };
}
