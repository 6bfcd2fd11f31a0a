// The demo projects. Everything follows from the tables and seeds here: the same script always writes the same files.
import { swapsByValue } from '../../src/cloth/colourway';
import { makeSets, setMakingOf } from '../../src/cutting/sets/randomSets';
import { usualBuying } from '../../src/model/buying';
import { fabricsInUse } from '../../src/model/colourway';
import { createProject } from '../../src/model/create';
import type { Block, Cell, Colourway, Fabric, Project, StripOnHand } from '../../src/model/project';
import { ferryCloth, harbourCloth, kilnCloth, lighthouseCloth, orchardCloth } from './cloth';
import { dealBlocks, handSet, shuffleOf } from './deal';

export interface DemoFile {
  readonly file: string;
  readonly project: Project;
}

/** All demo projects, the one for the first visit first. */
export function demoProjects(): DemoFile[] {
  return [
    { file: 'harbour-reading-corner.json', project: harbourReadingCorner() },
    { file: 'plum-orchard.json', project: plumOrchard() },
    { file: 'keepers-winter.json', project: keepersWinter() },
    { file: 'river-ferry.json', project: ferryLanding() },
    { file: 'kiln-shed.json', project: kilnShed() },
  ];
}

function begun(id: string, name: string, notes: string, fabrics: Fabric[], corner: string): Project {
  const blank = createProject(id, name);
  return {
    ...blank,
    notes,
    fabrics,
    setting: {
      ...blank.setting,
      cornerFabric: corner,
      sashing: { where: 'none', width: 1.5, fabric: corner },
    },
  };
}

/** The quilt in other cloth of its own list: every fabric by one of another value, lights and darks changed over. */
function turnedOver(project: Project, name: string): Colourway[] {
  const inUse = fabricsInUse(project);
  return [{ id: 'turned', name, swaps: swapsByValue(inUse, inUse, 'turnedOver') }];
}

/** What a shop would write down: prices, and so many kits. Invented, as all of the demo. */
function priced(price: number, fatQuarterPrice: number, kits: number, extra: number): Project['buying'] {
  const usual = usualBuying();
  return {
    ...usual,
    soldBy: 'yard',
    price,
    fatQuarterPrice,
    currency: '$',
    kits: { ...usual.kits, count: kits, extra },
  };
}

/** Strips cut 1, 1½ and 2 wide in the usual proportion 1 : 2 : 2 (common practice), of every fabric but the background. */
function stripsOf(fabrics: readonly Fabric[], each: readonly [number, number, number]): StripOnHand[] {
  const cut = fabrics.filter((fabric) => !fabric.background);
  return cut.flatMap((fabric) =>
    [1, 1.5, 2].map((width, index) => ({
      id: `${fabric.id}-${width}`,
      fabric: fabric.id,
      width,
      length: 40,
      count: each[index]!,
    })),
  );
}

function hang(project: Project, rows: number, columns: number, blocks: Block[], turns: number[]): Project {
  const cells = blocks.map((block, index): Cell => {
    return { block: block.id, turn: turns[index % turns.length]!, pinned: false };
  });
  return { ...project, blocks, wall: { rows, columns, cells } };
}

/** Five sets sewn by hand, dealt from the dark piles to the light: the dark blocks hang together and rims meet themselves. */
function harbourReadingCorner(): Project {
  const notes =
    'A lap quilt for the armchair by the harbour library’s east window. Five sets are sewn and cut; the blocks are dealt as they came off the table, so the dark ones hang together and some rims meet themselves.';
  const project = begun('demo-harbour', 'Harbour library, reading corner', notes, harbourCloth, 'sailcloth');
  project.stripSets = [
    handSet(project, 'A', [['ink', 2], ['teal', 1], ['tide', 1.5], ['oar', 1], ['deep', 1.5], ['brick', 1], ['sky', 2], ['deep', 1.5]]),
    handSet(project, 'B', [['teal', 2], ['ink', 1.5], ['buoy', 1], ['deep', 2], ['fog', 1], ['oar', 1.5], ['tide', 2]]),
    handSet(project, 'C', [['brick', 1.5], ['rope', 1.5], ['tide', 2], ['lamp', 1], ['coral', 1.5], ['teal', 1.5], ['gull', 1], ['ink', 1.5]]),
    handSet(project, 'D', [['sky', 2], ['page', 1], ['buoy', 1.5], ['fog', 2], ['brass', 1], ['gull', 1.5], ['brick', 2]]),
    handSet(project, 'E', [['lamp', 1.5], ['sky', 1.5], ['coral', 1], ['gull', 2], ['rope', 1.5], ['page', 1], ['brass', 1.5], ['buoy', 1.5]]),
  ]; // biome-ignore format: a set a line
  project.stripsOnHand = stripsSewn(project);
  project.setting = { ...project.setting, binding: { fabric: 'oar', cutWidth: 2.5 } };
  project.buying = priced(12.5, 3.75, 12, 9);
  project.colourways = turnedOver(project, 'Harbour library, lights and darks turned over');
  const shuffle = shuffleOf(1285);
  const blocks = dealBlocks(project, 6, 3, shuffle);
  return hang(project, 3, 2, blocks, shuffle([0, 1, 2, 3, 0, 1]));
}

/** What the sets were sewn from, and a few left over. */
function stripsSewn(project: Project): StripOnHand[] {
  const rows = new Map<string, StripOnHand>();
  for (const strip of project.stripSets.flatMap((set) => set.strips)) {
    const id = `${strip.fabric}-${strip.width}`;
    const row = rows.get(id);
    rows.set(id, { id, ...strip, length: 40, count: (row?.count ?? 1) + 1 });
  }
  return [...rows.values()];
}

/** Eighty blocks from random sets, mixed over the whole table. */
function plumOrchard(): Project {
  const notes =
    'A bed quilt of eighty blocks for the farmhouse at the plum orchard: bark and damson in the middle of winter, blossom in April, jam in September.';
  const project = begun('demo-orchard', 'The plum orchard, eighty blocks', notes, orchardCloth, 'frost');
  project.stripsOnHand = stripsOf(orchardCloth, [6, 12, 12]);
  project.preferences = { ...project.preferences, seed: 8 };
  const made = makeSets(setMakingOf(project, { blocks: 80 }, 8));
  project.stripSets = made.sets;
  const blocks = dealBlocks(project, 80, 80, shuffleOf(80));
  return hang(project, 10, 8, blocks, [0, 2, 1, 3, 0, 1, 2]);
}

/** Twelve blocks in sashing all round and two borders, half of them sewn. */
function keepersWinter(): Project {
  const notes =
    'The keeper’s winter quilt: twelve blocks, each in a frame of night sky, then a line of oilskin yellow and a wide border of jersey blue. The first six blocks are sewn.';
  const project = begun('demo-keeper', 'A lighthouse keeper’s winter', notes, lighthouseCloth, 'snow');
  project.stripsOnHand = stripsOf(lighthouseCloth, [2, 3, 3]);
  project.preferences = { ...project.preferences, seed: 12 };
  const made = makeSets(setMakingOf(project, { blocks: 12 }, 12));
  project.stripSets = made.sets.map((set) => ({ ...set, progress: 'cut' as const }));
  project.setting = {
    ...project.setting,
    sashing: { where: 'around', width: 1.5, fabric: 'night' },
    borders: [
      { fabric: 'oilskin', width: 0.75 },
      { fabric: 'knit', width: 4 },
    ],
    binding: { fabric: 'night', cutWidth: 2.5 },
  };
  project.buying = priced(13, 4, 8, 12);
  project.colourways = turnedOver(project, 'The keeper’s summer');
  // The sashing’s cloth is there; of the border’s there is too little, which the cutting list says.
  project.clothOnHand = [
    { id: 'night-bolt', fabric: 'night', kind: 'yardage', stripLength: 40, depth: 90, count: 1 },
    { id: 'jersey-rest', fabric: 'knit', kind: 'yardage', stripLength: 40, depth: 27, count: 1 },
  ];
  const blocks = dealBlocks(project, 12, 12, shuffleOf(12)).map((block, index): Block => {
    return { ...block, progress: index < 4 ? 'squared' : index < 6 ? 'octagon' : 'planned' };
  });
  return hang(project, 4, 3, blocks, [0, 1, 2, 0, 3, 1, 0]);
}

/** Eight blocks on point with setting triangles, a mitred border and a binding; all wedges cut, nothing joined. */
function ferryLanding(): Project {
  const notes =
    'A throw for the bench at the ferry landing: eight blocks on point in the colours of the river, with a mitred border. The wedges are cut; the blocks are to be sewn.';
  const project = begun('demo-ferry', 'The ferry landing, on point', notes, ferryCloth, 'mist');
  project.stripsOnHand = stripsOf(ferryCloth, [2, 3, 3]);
  project.preferences = { ...project.preferences, seed: 5 };
  const made = makeSets(setMakingOf(project, { blocks: 8 }, 5));
  project.stripSets = made.sets.map((set) => ({ ...set, progress: 'cut' as const }));
  project.setting = {
    ...project.setting,
    layout: { kind: 'onPoint', sides: 'kingfisher', corners: 'kingfisher' },
    borders: [{ fabric: 'tar', width: 3, corners: { kind: 'mitred' } }],
    binding: { fabric: 'hull', cutWidth: 2.5 },
  };
  project.buying = priced(12, 3.5, 10, 8);
  project.colourways = turnedOver(project, 'The ferry landing at night');
  const blocks = dealBlocks(project, 8, 8, shuffleOf(8));
  return hang(project, 3, 2, blocks, [0, 1, 2, 0, 3, 1]);
}

/** Cloth and strips on hand, nothing sewn. */
function kilnShed(): Project {
  const notes =
    'Fourteen fabrics and a basket of strips for the potter’s new kiln shed. Nothing is sewn yet: begin with the strip sets.';
  const project = begun('demo-kiln', 'The kiln shed, strips on hand', notes, kilnCloth, 'slip');
  project.stripsOnHand = stripsOf(kilnCloth, [1, 2, 2]);
  return project;
}
