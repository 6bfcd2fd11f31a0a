// Wedges dealt into blocks as they come off the pile, tip up and tip down in turn. A dealt pile has clashes: finding and
// mending them is the tool's work, so nothing here tries to be clever.
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { availableWedges } from '../../src/cutting/wedges/yield';
import { setHeight } from '../../src/geometry/stripSet';
import type { Block, Place, Project, StripSet, Tip } from '../../src/model/project';

export type Shuffle = <T>(items: readonly T[]) => T[];

/** A seeded shuffle (Fisher–Yates). */
export function shuffleOf(seed: number): Shuffle {
  const random = xoroshiro128plus(seed);
  return (items) => {
    const laid = [...items];
    for (let at = laid.length - 1; at > 0; at -= 1) {
      const other = uniformInt(random, 0, at);
      [laid[at], laid[other]] = [laid[other]!, laid[at]!];
    }
    return laid;
  };
}

/**
 * Deals `count` blocks. `piles` says in which order the sets come off the table; within a pile chance rules over
 * `mixing` neighbouring blocks: 1 keeps blocks to their piles, a large number mixes the whole.
 */
export function dealBlocks(project: Project, count: number, mixing: number, shuffle: Shuffle): Block[] {
  const half = project.wedge.perBlock / 2;
  const up = mixed(pile(project, 'up'), mixing * half, shuffle);
  const down = mixed(pile(project, 'down'), mixing * half, shuffle);
  if (Math.min(up.length, down.length) < count * half) throw new Error(`dealBlocks: not enough wedges`);
  return Array.from({ length: count }, (_, index) => {
    const ups = shuffle(up.slice(index * half, (index + 1) * half));
    const downs = shuffle(down.slice(index * half, (index + 1) * half));
    return {
      id: `b${index + 1}`,
      kind: 'pieced',
      number: index + 1,
      places: ups.flatMap((place, at) => [place, downs[at]!]),
      cornerFabric: null,
      cornerShift: 0,
      progress: 'planned',
    };
  });
}

function pile(project: Project, tip: Tip): Place[] {
  return project.stripSets.flatMap((set) =>
    Array.from({ length: availableWedges(set, project.wedge)[tip] }, () => ({ set: set.id, tip })),
  );
}

function mixed<T>(items: readonly T[], within: number, shuffle: Shuffle): T[] {
  const parts: T[] = [];
  for (let at = 0; at < items.length; at += within) parts.push(...shuffle(items.slice(at, at + within)));
  return parts;
}

/** A set written by hand: fabric and cut width in sewing order. Throws when it is not as high as the wedge. */
export function handSet(project: Project, label: string, strips: readonly [string, number][]): StripSet {
  const sewn = strips.map(([fabric, width]) => ({ fabric, width }));
  if (setHeight(sewn, project.wedge.seam) < project.wedge.cutHeight)
    throw new Error(`handSet: ${label} is too short`);
  const index = label.charCodeAt(0) - 65;
  return {
    id: `s${index + 1}`,
    label,
    strips: sewn,
    length: 40,
    pressing: 'last',
    firstTip: index % 2 === 0 ? 'up' : 'down',
    progress: 'cut',
    cut: null,
    locked: false,
  };
}
