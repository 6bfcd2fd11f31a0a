// Random scrappy tops for tests and benchmarks: seeded fabrics over the whole range of value and hue, strip sets by the rules
// of thumb, blocks with tip up and tip down in turn and no fabric meeting itself on a rim where that can be had.
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { formatHex } from '../../src/colour/parse';
import { encodedOf, linearOfOklab } from '../../src/colour/spaces';
import { createProject } from '../../src/model/create';
import type { Block, Fabric, Place, Project, StripSet } from '../../src/model/project';

export interface TopPlan {
  readonly rows: number;
  readonly columns: number;
  readonly seed: number;
  readonly fabrics?: number;
  readonly perBlock?: 6 | 8 | 10 | 12;
  readonly sets?: number;
}

/** Whole numbers from 0 below `below`, and numbers from 0 to 1, from one seed. */
export function dice(seed: number) {
  const generator = xoroshiro128plus(seed);
  return {
    below: (below: number) => uniformInt(generator, 0, below - 1),
    part: () => uniformFloat64(generator),
  };
}

type Dice = ReturnType<typeof dice>;

/** A random scrappy top that a maker would accept: nothing is arranged, nothing is spoilt. */
export function scrappyTop(plan: TopPlan): Project {
  const random = dice(plan.seed);
  const perBlock = plan.perBlock ?? 8;
  const count = plan.rows * plan.columns;
  const base = createProject(`top-${plan.seed}`, 'Scrappy top');
  const fabrics = [...base.fabrics, ...scraps(plan.fabrics ?? 24, random)];
  const sets = Array.from({ length: plan.sets ?? Math.max(4, Math.ceil((count * 5) / 6)) }, (_, at) =>
    stripSet(at, fabrics, random),
  );
  const blocks = Array.from({ length: count }, (_, at) => block(at, perBlock, sets, random));
  return {
    ...base,
    fabrics,
    stripSets: sets,
    wedge: { ...base.wedge, perBlock },
    blocks,
    wall: {
      rows: plan.rows,
      columns: plan.columns,
      cells: blocks.map((one) => ({
        block: one.id,
        turn: random.below(perBlock % 4 === 0 ? 4 : 2),
        pinned: false,
      })),
    },
  };
}

function scraps(count: number, random: Dice): Fabric[] {
  return Array.from({ length: count }, (_, at) => {
    const hue = 2 * Math.PI * random.part();
    const chroma = 0.02 + 0.12 * random.part();
    const light = 0.3 + 0.6 * random.part();
    const linear = linearOfOklab([light, chroma * Math.cos(hue), chroma * Math.sin(hue)]);
    const clipped = encodedOf(linear).map((channel) => Math.min(1, Math.max(0, channel)));
    return {
      id: `c${at}`,
      name: `scrap ${at}`,
      colour: formatHex([clipped[0]!, clipped[1]!, clipped[2]!]),
      cloth: { kind: 'plain' },
      background: false,
    };
  });
}

function stripSet(at: number, fabrics: readonly Fabric[], random: Dice): StripSet {
  const strips: StripSet['strips'] = [];
  let height = 0;
  let last = 0;
  while (height < 7.6) {
    let pick = 1 + random.below(fabrics.length - 1);
    while (pick === last) pick = 1 + random.below(fabrics.length - 1);
    last = pick;
    const width = [1.5, 2, 1, 2, 1.5][strips.length === 0 ? random.below(2) : random.below(5)]!;
    strips.push({ fabric: fabrics[pick]!.id, width });
    height += width - (strips.length > 1 ? 0.5 : 0);
  }
  return {
    id: `s${at}`,
    label: `S${at}`,
    strips,
    length: 4000,
    pressing: 'last',
    firstTip: 'up',
    progress: 'planned',
    cut: null,
    locked: false,
  };
}

function block(at: number, perBlock: number, sets: readonly StripSet[], random: Dice): Block {
  const rim = (place: Place) => {
    const { strips } = sets.find((set) => set.id === place.set)!;
    return (place.tip === 'up' ? strips[0] : strips.at(-1))!.fabric;
  };
  const places: Place[] = [];
  for (let place = 0; place < perBlock; place++) {
    const tip = place % 2 === 0 ? 'up' : 'down';
    let wedge: Place = { set: sets[random.below(sets.length)]!.id, tip };
    const clash = () =>
      (place > 0 && rim(wedge) === rim(places[place - 1]!)) ||
      (place === perBlock - 1 && rim(wedge) === rim(places[0]!));
    for (let tries = 0; tries < 40 && clash(); tries++)
      wedge = { set: sets[random.below(sets.length)]!.id, tip };
    places.push(wedge);
  }
  return {
    id: `b${at}`,
    kind: 'pieced',
    number: at + 1,
    places,
    cornerFabric: null,
    cornerShift: 0,
    progress: 'planned',
  };
}

const NIGHT = ['#1b2330', '#2a2020', '#20301f', '#2b1f33', '#102a2e'] as const;

/** The same top with every second wedge of the blocks in these cells cut from sets of night colours. */
export function withDarkBlocks(project: Project, cells: readonly number[]): Project {
  const night = project.fabrics.slice(1).map(
    (fabric, at): Fabric => ({
      ...fabric,
      id: `night-${fabric.id}`,
      name: `night ${at}`,
      colour: NIGHT[at % NIGHT.length]!,
    }),
  );
  const sets = project.stripSets.map((set) => ({
    ...set,
    id: `night-${set.id}`,
    label: `N${set.label.slice(1)}`,
    strips: set.strips.map((strip) => ({ ...strip, fabric: `night-${strip.fabric}` })),
  }));
  const dark = new Set(cells.map((cell) => project.wall.cells[cell]!.block));
  return {
    ...project,
    fabrics: [...project.fabrics, ...night],
    stripSets: [...project.stripSets, ...sets],
    blocks: project.blocks.map((one) => ({
      ...one,
      places: one.places.map((place, at) =>
        place && at % 2 === 0 && dark.has(one.id) ? { ...place, set: `night-${place.set}` } : place,
      ),
    })),
  };
}
