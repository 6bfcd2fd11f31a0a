// Draws a project. The pieces of a block are cached as long as the block, its strip sets and the wedge are the same objects, so
// that after a change to one of 400 blocks only that block is drawn anew.
import { writtenOut } from '../geometry/asPieced';
import { wedgeBands } from '../geometry/bands';
import { bandOutline, cornerOutlines } from '../geometry/block';
import { boxOutline, type Outline, placed } from '../geometry/point';
import { layOut } from '../geometry/setting';
import { apothem, finishedBlock } from '../geometry/wedge';
import { cellIndexOf, turnsOf } from '../model/find';
import type { PictureId } from '../model/picture/picture';
import type { Block, Cell, FabricId, Project, StripSet, StripSetId, WedgePlan } from '../model/project';
import { cornerFabricOf, isPlain } from '../model/wallCells';
import { bindingEdge } from './bindingEdge';
import type { Drawing, HungBlock, Piece } from './drawing';

/** Draws the whole top, without blocks on the side table. Empty cells are boxes without pieces. */
export function drawProject(project: Project): Drawing {
  const layout = layOut(project);
  const sets = setsOf(project);
  const blocks = new Map(project.blocks.map((block) => [block.id, block]));
  const quartersPerTurn = 4 / turnsOf(project.wedge.perBlock);
  const { width, height } = layout.block;
  const hung: HungBlock[] = [];
  const emptyCells: Drawing['emptyCells'][number][] = [];
  project.wall.cells.forEach((cell, index) => {
    const centre = layout.centres[index]!;
    const block = cell && blocks.get(cell.block);
    if (!cell || !block) {
      if (isPlain(index, project)) return;
      const box = { x: centre.x - width / 2, y: centre.y - height / 2, width, height };
      emptyCells.push({ cell: index, box });
      return;
    }
    const pieces = blockPieces(block, sets, project.wedge, cornerFabricOf(project, block, index));
    hung.push(
      keptHung(cell, {
        block: block.id,
        number: block.number,
        cell: index,
        centre,
        quarters: cell.turn * quartersPerTurn,
        tilt: layout.tilt,
        pinned: cell.pinned,
        pieces,
      }),
    );
  });
  return {
    width: layout.width,
    height: layout.height,
    fabrics: project.fabrics,
    tilt: layout.tilt,
    block: layout.block,
    blocks: hung,
    emptyCells,
    setting: layout.pieces.map(({ part, fabric, outline, grain }): Piece => {
      return { part, fabric, outline, place: null, band: null, grain };
    }),
    ...bindingEdge(project, layout),
  };
}

/** The pieces of one block, from its own middle, before it is turned: for cards and the side table. */
export function drawBlock(project: Project, block: Block): readonly Piece[] {
  // To find the cell is slow, and without a rule the cell does not matter.
  const cell = project.setting.cornerRule ? cellIndexOf(project, block.id) : -1;
  const corner = cornerFabricOf(project, block, cell);
  return blockPieces(block, setsOf(project), project.wedge, corner);
}

/** The outline of a piece of a hanging block, in quilt inches. */
export function absoluteOutline(hung: HungBlock, piece: Piece): Outline {
  return placed(piece.outline, hung.quarters, hung.centre, hung.tilt);
}

/** The direction of the strip of a piece of a hanging block: degrees clockwise from the right, 0 to under 360. */
export function absoluteGrain(hung: HungBlock, piece: Piece): number {
  return (piece.grain + hung.quarters * 90 + hung.tilt) % 360;
}

type SetLookup = ReadonlyMap<StripSetId, StripSet>;

const lookups = new WeakMap<readonly StripSet[], SetLookup>();

function setsOf(project: Project): SetLookup {
  let lookup = lookups.get(project.stripSets);
  if (!lookup) {
    lookup = new Map(project.stripSets.map((set) => [set.id, set]));
    lookups.set(project.stripSets, lookup);
  }
  return lookup;
}

interface KeptPieces {
  readonly wedge: WedgePlan;
  readonly corner: FabricId;
  readonly sets: readonly (StripSet | undefined)[];
  readonly pieces: readonly Piece[];
}

const keptPieces = new WeakMap<Block, KeptPieces>();

function blockPieces(given: Block, lookup: SetLookup, wedge: WedgePlan, corner: FabricId): readonly Piece[] {
  const { block, sets: shown } = writtenOut(given, wedge);
  const setOf = (id: StripSetId) => lookup.get(id) ?? shown.find((set) => set.id === id);
  const sets = block.places.map((place) => (place ? setOf(place.set) : undefined));
  const kept = keptPieces.get(block);
  const same =
    kept?.wedge === wedge && kept.corner === corner && kept.sets.every((set, place) => set === sets[place]);
  if (same) return kept.pieces;
  const pieces = [
    ...block.places.flatMap((_, place) => placePieces(block, place, sets[place], wedge)),
    ...cornerOutlines(wedge).map((outline): Piece => {
      return { part: 'corner', fabric: corner, outline, place: null, band: null, grain: 0 };
    }),
    ...(given.kind === 'pictured' ? [picturePiece(given.picture, wedge)] : []),
  ];
  keptPieces.set(block, { wedge, corner, sets, pieces });
  return pieces;
}

/** The picture over a block: it fills the block's box, corners and all. */
function picturePiece(picture: PictureId, wedge: WedgePlan): Piece {
  const { width, height } = finishedBlock(wedge);
  const outline = boxOutline({ x: -width / 2, y: -height / 2, width, height });
  return { part: 'picture', fabric: null, outline, place: null, band: null, grain: 0, picture };
}

/** The pieces of one place: its bands, and a bare piece for a place without a wedge or for the middle of a set that is too low. */
function placePieces(block: Block, at: number, set: StripSet | undefined, wedge: WedgePlan): Piece[] {
  const { perBlock } = wedge;
  const toward = at + block.cornerShift;
  const wedgeHere = block.places[at];
  const bands = set && wedgeHere ? wedgeBands(set.strips, wedgeHere.tip, wedge) : [];
  const turned = wedgeHere?.tip === 'down' ? 180 : 0;
  const grain = ((toward * 360) / perBlock + turned) % 360;
  const pieces = bands.map((band, index): Piece => {
    const outline = bandOutline(toward, band.outer, band.inner, perBlock);
    return { part: 'band', fabric: band.fabric, outline, place: at + 1, band: index + 1, grain };
  });
  const reached = bands.length > 0 ? bands[bands.length - 1]!.inner : apothem(wedge);
  if (reached > 1e-9) {
    const outline = bandOutline(toward, reached, 0, perBlock);
    pieces.push({ part: 'bare', fabric: null, outline, place: at + 1, band: null, grain: 0 });
  }
  return pieces;
}

const keptBlocks = new WeakMap<Cell, HungBlock>();

/** The cached block of this cell if nothing about it has changed, so that the screen need not draw it again. */
function keptHung(cell: Cell, fresh: HungBlock): HungBlock {
  const kept = keptBlocks.get(cell);
  const same =
    kept?.pieces === fresh.pieces &&
    kept.cell === fresh.cell &&
    kept.number === fresh.number &&
    kept.quarters === fresh.quarters &&
    kept.tilt === fresh.tilt &&
    kept.centre.x === fresh.centre.x &&
    kept.centre.y === fresh.centre.y;
  if (same) return kept;
  keptBlocks.set(cell, fresh);
  return fresh;
}
