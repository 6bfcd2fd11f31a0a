// What read.json says of one picture: a fabric, a block or a wall.
import type { Point } from '../geometry/point';
import { phrase, speak } from '../model/phrase';
import type { Project } from '../model/project';
import { failed, ok, type Result } from '../model/result';
import type { InParts } from '../model/work/parts';
import { findCorners } from '../photo/block/corners';
import { readBlock } from '../photo/block/readBlock';
import { type Knowledge, type ReadBand, type ReadBlock, SURE } from '../photo/block/readLook';
import { shapeOf } from '../photo/block/shape';
import { readFabric } from '../photo/fabric/readFabric';
import { castOf, DAYLIGHT, lightOf, WHITE_PAPER } from '../photo/light/light';
import { proposeWhite } from '../photo/light/propose';
import { unevenOver } from '../photo/light/unevenness';
import { wholeFrame } from '../photo/pixels/frame';
import type { Pixels } from '../photo/pixels/pixels';
import { findGrid } from '../photo/wall/grid';
import { cellsOf, likenessOf } from '../photo/wall/gridBy';
import { readWall } from '../photo/wall/readWall';
import type { Subject } from './readArguments';

/** Reads a picture of `what`: the keys of its row in read.json, or the reason why it cannot be read. */
export function* readRow(pixels: Pixels, what: Subject, knowledge: Knowledge): InParts<Result<object>> {
  yield null;
  if (what === 'fabric') return yield* fabricRow(pixels);
  if (what === 'block') return yield* blockOfPicture(pixels, knowledge);
  return yield* wallRow(pixels, knowledge);
}

function* fabricRow(pixels: Pixels): InParts<Result<object>> {
  const white = proposeWhite(pixels);
  // A white that is hardly one is no measure: the colours of the picture stay as they are.
  const light = white && white.sure >= 0.5 ? lightOf(white.spot.light, WHITE_PAPER) : ok(DAYLIGHT);
  const chosen = light.ok ? light.value : DAYLIGHT;
  const frame = wholeFrame(pixels);
  const seed = 1;
  const uneven = unevenOver(pixels, frame, chosen === DAYLIGHT || !white ? null : white.frame, seed);
  const read = yield* readFabric(pixels, { frame, light: chosen, uneven, perInch: null, seed });
  if (!read.ok) return read;
  const { mean, value, colours, spread, name, wayUp } = read.value;
  const { width, height } = pixels;
  const corners = [{ x: 0, y: 0 }, { x: width, y: 0 }, { x: width, y: height }, { x: 0, y: height }]; // biome-ignore format: corners
  return ok({
    corners,
    mean,
    value,
    spread,
    colours,
    wayUp,
    name: speak(name),
    cast: chosen === DAYLIGHT ? null : castOf(chosen),
  });
}

function* blockOfPicture(pixels: Pixels, knowledge: Knowledge): InParts<Result<object>> {
  const { wedge } = knowledge.project;
  const found = yield* findCorners(pixels, shapeOf(wedge, wedge.outerSeam));
  const read = found && (yield* readBlock(pixels, found.corners, knowledge, found.lens.bend));
  if (!read)
    return failed(
      'no-block',
      '',
      phrase(
        'No block of wedges is to be seen in this picture. Take it from straight above, with all of the block in it.',
      ),
    );
  return ok({
    ...blockRow(found.corners, read, knowledge.project),
    likeness: found.likeness / BEST_LIKENESS,
  });
}

/** The sum of all parts of a likeness. */
const BEST_LIKENESS = 6.4;

function* wallRow(pixels: Pixels, knowledge: Knowledge): InParts<Result<object>> {
  const grid = yield* findGrid(pixels, shapeOf(knowledge.project.wedge, 0));
  if (!grid)
    return failed(
      'no-wall',
      '',
      phrase(
        'No wall of blocks is to be seen in this picture. Take it from the front, with all of the wall in it.',
      ),
    );
  const { wedge } = knowledge.project;
  const cells = cellsOf(grid, pixels, wedge);
  const likeness = yield* likenessOf(pixels, grid, wedge);
  const blocks = yield* readWall(pixels, { cells, likeness, bend: grid.bend }, knowledge);
  const { rows, columns, corners, sure } = grid;
  return ok({
    corners,
    rows,
    columns,
    confidence: sure,
    cells: blocks.map((block, at) => ({
      row: Math.floor(at / columns) + 1,
      column: (at % columns) + 1,
      empty: block === null,
      ...(block ? blockRow(cells[at]!, block, knowledge.project) : { corners: cells[at]! }),
    })),
  });
}

/** Corners, rims and bands clockwise from the top side as photographed, and which block of the project it is. */
function blockRow(corners: readonly Point[], { wedges, known }: ReadBlock, { blocks }: Project): object {
  const block = known && blocks.find(({ number }) => number === known.number);
  return {
    corners,
    rims: wedges.map((bands) => bandRow(bands[0]!)),
    wedges: wedges.map((bands) => bands.map((band) => ({ ...bandRow(band), width: band.width }))),
    block:
      known && block
        ? { id: block.id, number: known.number, quarters: known.quarters, confidence: known.sure }
        : null,
  };
}

function bandRow({ fabric, sure }: ReadBand): object {
  return { fabric, confidence: sure, sure: sure >= SURE };
}
