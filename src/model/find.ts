// Looking things up in a project by id, and the few facts that follow from N alone.
import type {
  Block,
  BlockId,
  Cell,
  Fabric,
  FabricId,
  Project,
  StripSet,
  StripSetId,
  WedgePlan,
} from './project';

/** Turns that leave a block of N wedges on its place: 4 quarter turns where N is divisible by 4, else 2 half turns. */
export function turnsOf(perBlock: number): 2 | 4 {
  return perBlock % 4 === 0 ? 4 : 2;
}

/** Wedge steps in one turn of the block on the wall: N/4 or N/2. Also the number of possible corner shifts. */
export function stepsPerTurn(perBlock: number): number {
  return perBlock / turnsOf(perBlock);
}

/** Wedge steps that place 1 stands clockwise of the top, on the wall: corner shift and turn together, 0 to N − 1. */
export function orientation(block: Pick<Block, 'cornerShift'>, turn: number, wedge: WedgePlan): number {
  return (block.cornerShift + turn * stepsPerTurn(wedge.perBlock)) % wedge.perBlock;
}

export function findFabric(project: Project, fabric: FabricId): Fabric | undefined {
  return project.fabrics.find((one) => one.id === fabric);
}

export function findSet(project: Project, set: StripSetId): StripSet | undefined {
  return project.stripSets.find((one) => one.id === set);
}

export function findBlock(project: Project, block: BlockId): Block | undefined {
  return project.blocks.find((one) => one.id === block);
}

/** Where a block hangs: its cell's index in wall.cells, or −1 when it waits on the side table. */
export function cellIndexOf(project: Project, block: BlockId): number {
  return project.wall.cells.findIndex((cell) => cell?.block === block);
}

/** The block's cell, or undefined when it waits on the side table. */
export function cellOf(project: Project, block: BlockId): Cell | undefined {
  return project.wall.cells.find((cell) => cell?.block === block) ?? undefined;
}

/** Blocks that hold a wedge of a set, in document order. */
export function blocksWith(project: Project, set: StripSetId): BlockId[] {
  return project.blocks
    .filter((block) => block.places.some((place) => place?.set === set))
    .map((block) => block.id);
}

/** Blocks in no cell of the wall, in document order. */
export function sideTable(project: Project): Block[] {
  const hung = new Set(project.wall.cells.map((cell) => cell?.block));
  return project.blocks.filter((block) => !hung.has(block.id));
}

/** The first unused id of the form prefix + number. */
export function freshId(prefix: string, taken: Iterable<{ readonly id: string }>): string {
  const used = new Set(Array.from(taken, (one) => one.id));
  let next = used.size + 1;
  while (used.has(`${prefix}${next}`)) next += 1;
  return `${prefix}${next}`;
}

/** The letter of the n-th strip set, from 0: A … Z, AA, AB … */
export function setLetter(index: number): string {
  const rest = Math.floor(index / 26);
  return (rest > 0 ? setLetter(rest - 1) : '') + String.fromCharCode(65 + (index % 26));
}

/** The first set letter no set of the project goes by. */
export function freshLetter(project: Project): string {
  const used = new Set(project.stripSets.map((set) => set.label));
  let index = 0;
  while (used.has(setLetter(index))) index += 1;
  return setLetter(index);
}

/** The smallest block number that is free. */
export function freshNumber(project: Project): number {
  const used = new Set(project.blocks.map((block) => block.number));
  let number = 1;
  while (used.has(number)) number += 1;
  return number;
}

/** Whether any block that hangs has a wedge: others weigh nothing in the balance. */
export function hasWedges({ blocks, wall }: Project): boolean {
  const hung = new Set(wall.cells.map((cell) => cell?.block));
  return blocks.some((block) => hung.has(block.id) && block.places.some((place) => place !== null));
}
