// Whole pictures with what is true of them: block shots and wall shots by their seed.
import { wedgeBands } from '../../../src/geometry/bands';
import type { Point } from '../../../src/geometry/point';
import { layOut } from '../../../src/geometry/setting';
import { orientation, turnsOf } from '../../../src/model/find';
import type { Block, Project } from '../../../src/model/project';
import type { Pixels } from '../../../src/photo/pixels/pixels';
import { randomGround } from './background';
import { type Camera, camera } from './camera';
import { blockDrawing, flatCloth, wallDrawing } from './cloth';
import { type Dice, dice as diceOf } from './dice';
import { ISSUE, photograph } from './photograph';
import { randomQuilt } from './quilts';

/** What is true of one block as photographed. */
export interface BlockTruth {
  readonly number: number;
  readonly quarters: number;
  /** Bands of each wedge from the rim in, clockwise from the top side. */
  readonly wedges: readonly (readonly { readonly fabric: string; readonly width: number }[])[];
  /** Top left, top right, bottom right, bottom left, in pixels. */
  readonly corners: readonly Point[];
}

export interface BlockShot extends BlockTruth {
  readonly seed: number;
  readonly project: Project;
  readonly pixels: Pixels;
}

export interface WallShot {
  readonly seed: number;
  readonly project: Project;
  readonly pixels: Pixels;
  readonly rows: number;
  readonly columns: number;
  /** By rows; null for an empty cell. `box` holds the corners of every cell, empty ones too. */
  readonly cells: readonly (BlockTruth | null)[];
  readonly boxes: readonly (readonly Point[])[];
}

function wedgesAsSeen(project: Project, block: Block, turn: number): BlockTruth['wedges'] {
  const { wedge } = project;
  const shift = orientation(block, turn, wedge);
  return Array.from({ length: wedge.perBlock }, (_, step) => {
    const place = block.places[(step - shift + wedge.perBlock) % wedge.perBlock]!;
    const strips = project.stripSets.find((set) => set.id === place.set)!.strips;
    return wedgeBands(strips, place.tip, wedge).map(({ fabric, outer, inner }) => ({
      fabric,
      width: outer - inner,
    }));
  });
}

type Lens = Parameters<typeof camera>[0];

/** A camera that sees all the cloth, from as near as it was meant to stand or a little further off. */
function wholeInView(
  lens: Lens,
  flat: { readonly width: number; readonly height: number },
  dice: Dice,
): Camera {
  const corners = box(-flat.width / 2, -flat.height / 2, flat.width, flat.height);
  for (let fill = lens.fill; ; fill *= 0.95) {
    const view = camera({ ...lens, fill }, dice);
    const inside = corners
      .map(view.seen)
      .every(({ x, y }) => x > 6 && y > 6 && x < lens.width - 6 && y < lens.height - 6);
    if (inside) return view;
  }
}

function box(x: number, y: number, width: number, height: number): Point[] {
  return [{ x, y }, { x: x + width, y }, { x: x + width, y: y + height }, { x, y: y + height }]; // biome-ignore format: corners
}

/** A block lying on a table. `long` is the longer side of the picture, pixels. */
export async function blockShot(seed: number, given?: number): Promise<BlockShot> {
  const dice = diceOf(seed);
  const long = given ?? Math.round(dice.between(700, 1150));
  const perBlock = dice.chance(0.8) ? 8 : dice.pick([6, 10, 12] as const);
  const project = randomQuilt(dice, 4, 3, perBlock);
  const cell = dice.below(12);
  const drawing = blockDrawing(project, cell, dice.chance(0.6));
  const flat = flatCloth(drawing, long * 0.9, dice);
  const size = Math.max(drawing.width, drawing.height);
  const short = Math.round(long * dice.pick([0.75, 0.75, 0.5625, 1]));
  const [width, height] = dice.chance(0.5) ? [long, short] : [short, long];
  const fill = dice.between(0.5, 0.86);
  const view = wholeInView(
    {
      width,
      height,
      tilt: dice.between(0, 35),
      roll: dice.chance(0.7) ? dice.between(-8, 8) : dice.between(-30, 30),
      k1: dice.between(-0.12, 0.06),
      size,
      fill,
    },
    drawing,
    dice,
  );
  const pixels = await photograph(flat, randomGround(dice, size), view, ISSUE, dice);
  const hung = project.wall.cells[cell]!;
  const block = project.blocks.find((one) => one.id === hung.block)!;
  const corners = box(-drawing.width / 2, -drawing.height / 2, drawing.width, drawing.height).map(view.seen);
  return {
    seed,
    project,
    pixels,
    number: block.number,
    quarters: (hung.turn * 4) / turnsOf(perBlock),
    wedges: wedgesAsSeen(project, block, hung.turn),
    corners,
  };
}

const once = new Map<string, Promise<BlockShot>>();

/** A block as `blockShot` has it, rendered once for all tests that look at it. */
export function blockShotOnce(seed: number, long: number): Promise<BlockShot> {
  const key = `${seed} ${long}`;
  const shot = once.get(key) ?? blockShot(seed, long);
  once.set(key, shot);
  return shot;
}

/** A wall of blocks; some have sashing, some have empty cells. */
export async function wallShot(
  seed: number,
  given?: number,
  most: readonly [number, number] = [10, 10],
): Promise<WallShot> {
  const dice = diceOf(seed);
  const long = given ?? Math.round(dice.between(1100, 1700));
  const rows = 2 + dice.below(most[0] - 1);
  const columns = 2 + dice.below(most[1] - 1);
  const made = randomQuilt(dice, rows, columns);
  const where: Project['setting']['sashing']['where'] = dice.chance(0.6)
    ? 'none'
    : dice.pick(['between', 'around'] as const);
  const sashing = {
    ...made.setting.sashing,
    where,
    width: dice.pick([1, 1.5, 2, 2.5]),
    fabric: dice.pick(made.fabrics).id,
  };
  const holes = dice.chance(0.5) ? 0 : dice.between(0, 0.25);
  const cells = made.wall.cells.map((one) => (dice.chance(holes) ? null : one));
  const project: Project = { ...made, wall: { ...made.wall, cells }, setting: { ...made.setting, sashing } };
  const drawing = wallDrawing(project);
  const size = Math.max(drawing.width, drawing.height);
  const upright = drawing.height > drawing.width;
  const short = Math.round(long * 0.75);
  const [width, height] = upright ? [short, long] : [long, short];
  const flat = flatCloth(drawing, (long * 0.95 * drawing.width) / size, dice);
  const lies = Math.min(width / drawing.width, height / drawing.height);
  const view = wholeInView(
    {
      width,
      height,
      tilt: dice.between(0, 30),
      roll: dice.between(-5, 5),
      k1: dice.between(-0.1, 0.05),
      size: Math.min(width, height) / lies,
      fill: dice.between(0.68, 0.85),
    },
    drawing,
    dice,
  );
  const pixels = await photograph(flat, randomGround(dice, size), view, ISSUE, dice);
  const layout = layOut(project);
  const boxes = layout.centres.map(({ x, y }) =>
    box(
      x - layout.block.width / 2 - drawing.width / 2,
      y - layout.block.height / 2 - drawing.height / 2,
      layout.block.width,
      layout.block.height,
    ).map(view.seen),
  );
  return {
    seed,
    project,
    pixels,
    rows,
    columns,
    boxes,
    cells: cells.map((one, index) => {
      if (!one) return null;
      const block = project.blocks.find(({ id }) => id === one.block)!;
      return {
        number: block.number,
        quarters: (one.turn * 4) / turnsOf(8),
        wedges: wedgesAsSeen(project, block, one.turn),
        corners: boxes[index]!,
      };
    }),
  };
}
