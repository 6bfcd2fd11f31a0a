// Looks up parts of a project by id, and gives the few facts that follow from N, the number of wedges to the block.
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

/** How many turns a block of N wedges has on the wall: 4 quarter turns where N is divisible by 4, else 2 half turns. */
export function turnsOf(perBlock: number): 2 | 4 {
  return perBlock % 4 === 0 ? 4 : 2;
}

/** Wedge steps in one turn of the block on the wall: N/4 or N/2. Also the number of possible corner shifts. */
export function stepsPerTurn(perBlock: number): number {
  return perBlock / turnsOf(perBlock);
}

/** How many wedge steps clockwise of the top place 1 lies on the wall: corner shift and turn together, 0 to N − 1. */
export function orientation(block: Pick<Block, 'cornerShift'>, turn: number, wedge: WedgePlan): number {
  return (block.cornerShift + turn * stepsPerTurn(wedge.perBlock)) % wedge.perBlock;
}

/** The fabric with this id, or undefined. */
export function findFabric(project: Project, fabric: FabricId): Fabric | undefined {
  return project.fabrics.find((one) => one.id === fabric);
}

/** The strip set with this id, or undefined. */
export function findSet(project: Project, set: StripSetId): StripSet | undefined {
  return project.stripSets.find((one) => one.id === set);
}

/** The block with this id, or undefined. */
export function findBlock(project: Project, block: BlockId): Block | undefined {
  return project.blocks.find((one) => one.id === block);
}

/** The index in wall.cells of the cell a block hangs in; −1 when the block is on the side table. */
export function cellIndexOf(project: Project, block: BlockId): number {
  return project.wall.cells.findIndex((cell) => cell?.block === block);
}

/** The block's cell; undefined when the block is on the side table. */
export function cellOf(project: Project, block: BlockId): Cell | undefined {
  return project.wall.cells.find((cell) => cell?.block === block) ?? undefined;
}

/** Ids of the blocks that contain a wedge of a set, in document order. */
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

/** The first letter that no set of the project has. */
export function freshLetter(project: Project): string {
  const used = new Set(project.stripSets.map((set) => set.label));
  let index = 0;
  while (used.has(setLetter(index))) index += 1;
  return setLetter(index);
}

/** The lowest block number that is free. */
export function freshNumber(project: Project): number {
  const used = new Set(project.blocks.map((block) => block.number));
  let number = 1;
  while (used.has(number)) number += 1;
  return number;
}

/** Whether any block on the wall has a wedge that is known; without one there is no balance to compute. */
export function hasWedges({ blocks, wall }: Project): boolean {
  const hung = new Set(wall.cells.map((cell) => cell?.block));
  return blocks.some((block) => hung.has(block.id) && rimsKnown(block) > 0);
}

/** In how many places of a block the fabric on the rim is known: those with a wedge, or those that its picture shows. */
export function rimsKnown(block: Block): number {
  if (block.kind === 'pieced') return block.places.filter((place) => place !== null).length;
  return block.wedges.filter(({ bands: [rim] }) => rim && rim.fabric !== null).length;
}

/** Whether a quilt holds nothing yet: no fabric but background, nothing on hand, no set and no block. */
export function holdsNothing(project: Project): boolean {
  const { fabrics, stripsOnHand, clothOnHand, stripSets, blocks } = project;
  const rows = [stripsOnHand, clothOnHand, stripSets, blocks];
  return fabrics.every((fabric) => fabric.background) && rows.every((list) => list.length === 0);
}
