// What the worker that reads photographs does for the jobs about blocks and walls. What is read is decided in photo/block and photo/wall.
import { asPieced } from '../../geometry/asPieced';
import { counted, type Phrase, phrase } from '../../model/phrase';
import type { WedgePlan } from '../../model/project';
import { failed, ok } from '../../model/result';
import type { Inches } from '../../model/units';
import type { InParts } from '../../model/work/parts';
import { findCorners } from '../../photo/block/corners';
import {
  asPhotographed,
  evenLight,
  isLightKnown,
  type LightThere,
  type LitBlock,
  withoutLight,
} from '../../photo/block/daylight';
import { picturedWedge, squaredUp } from '../../photo/block/pictured';
import { readBlock } from '../../photo/block/readBlock';
import { knowledgeOf } from '../../photo/block/readLook';
import { shapeOf } from '../../photo/block/shape';
import type { Light } from '../../photo/block/sunlight';
import type { Pixels } from '../../photo/pixels/pixels';
import { findGrid, type GridLaid } from '../../photo/wall/grid';
import { cellsOf, likenessOf } from '../../photo/wall/gridBy';
import { readWall } from '../../photo/wall/readWall';
import type { Answers } from '../workers/protocol';
import type { BlockFound, BlockJobs, BlockLaid } from './blockJobs';
import type { Codec, OnPixels, Work } from './photoMeans';

/** The longer side of the picture of a block that is kept, pixels: alone, and as one of a wall. */
const SIDE = 900;
const SIDE_ON_WALL = 420;

const IN_LINE = phrase('Three corners lie on one line. Move them to the corners of the block.');

export function blockAnswers(on: OnPixels, encode: Codec['encode']): Answers<BlockJobs> {
  const found = async (
    pixels: Pixels,
    { corners, bend }: BlockLaid,
    read: LitBlock,
    lit: { readonly light: LightThere | null; readonly ownLight: boolean },
    wedge: WedgePlan,
    allowance: Inches,
    side: number,
  ): Promise<BlockFound> => {
    const relit = lit.light ? withoutLight(lit.light) : undefined;
    return {
      ...lit,
      wedges: lit.light ? read.wedges : asPhotographed(read),
      known: read.known,
      shown: read.wedges.map((bands) => picturedWedge(bands, wedge)),
      picture: await encode(squaredUp(pixels, corners, bend, wedge, allowance, side, relit)),
      allowance,
    };
  };
  return {
    corners: on(async (pixels, { wedge }, work) => {
      const looking = findCorners(pixels, shapeOf(wedge, wedge.outerSeam));
      const seen = await told(work, phrase('Looking for the corners'), looking);
      return ok(seen && { corners: seen.corners, bend: seen.lens.bend });
    }),
    block: on(async (pixels, { laid, project, sitting }, work) => {
      const knowledge = knowledgeOf(asPieced(project));
      const reading = (light?: Light) =>
        told(work, phrase('Reading the block'), readBlock(pixels, laid.corners, knowledge, laid.bend, light));
      const own = await reading();
      if (!own) return failed('corners-in-line', 'corners', IN_LINE);
      const ownLight = isLightKnown([own]);
      const read = ownLight || !sitting ? own : (await reading(evenLight(sitting)))!;
      const light = ownLight || sitting ? read.light : null;
      const lit = { light, ownLight };
      return ok(await found(pixels, laid, read, lit, project.wedge, read.allowance, SIDE));
    }),
    grid: on(async (pixels, { wedge }, work) => {
      const looking = findGrid(pixels, shapeOf(wedge, 0));
      return ok(laidOnly(await told(work, phrase('Looking for rows and columns'), looking)));
    }),
    likeness: on(async (pixels, { grid, wedge }, work) =>
      ok(await told(work, phrase('Looking for empty cells'), likenessOf(pixels, grid, wedge))),
    ),
    wall: on(async (pixels, { grid, empty, project }, work) => {
      const { wedge } = project;
      const cells = cellsOf(grid, pixels, wedge);
      const likeness = empty.map((none) => (none ? 0 : 1));
      const wanted = empty.filter((none) => !none).length;
      const all = cells.length + wanted;
      let done = 0;
      const doing = counted(wanted, 'Reading 1 block', 'Reading {count} blocks');
      const toRead = { cells, likeness, bend: grid.bend };
      const reading = readWall(pixels, toRead, knowledgeOf(asPieced(project)), () => {
        done += 0.5;
      });
      const read = await work.run(reading, (_, due) => {
        if (due) work.tell({ doing, share: Math.min(1, done / all) });
      });
      const ownLight = isLightKnown(read.filter((one) => one !== null));
      const blocks: (BlockFound | null)[] = [];
      for (const [at, one] of read.entries()) {
        const laid = { corners: cells[at]!, bend: grid.bend };
        const lit = one && { light: ownLight ? one.light : null, ownLight };
        blocks.push(lit && (await found(pixels, laid, one, lit, wedge, 0, SIDE_ON_WALL)));
        if (one) work.tell({ doing, share: Math.min(1, (done + at + 1) / (all + cells.length)) });
      }
      return ok(blocks);
    }),
  };
}

/** Runs a job of which no share is known, and tells what it is doing as long as it goes on. */
function told<Outcome>(work: Work, doing: Phrase, going: InParts<Outcome>): Promise<Outcome> {
  work.tell({ doing, share: null });
  return work.run(going, (_, due) => {
    if (due) work.tell({ doing, share: null });
  });
}

/** A found grid without what is no part of it. */
function laidOnly(grid: GridLaid | null): GridLaid | null {
  if (!grid) return null;
  const { rows, columns, corners, gap, bend } = grid;
  return { rows, columns, corners, gap, bend };
}
