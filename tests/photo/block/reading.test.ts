// Blocks in rendered pictures are found and read. A few pictures only; npm run bench measures hundreds.
import { describe, expect, it } from 'vitest';
import { atOnce } from '../../../src/model/work/parts';
import { findCorners } from '../../../src/photo/block/corners';
import { readBlock } from '../../../src/photo/block/readBlock';
import { knowledgeOf } from '../../../src/photo/block/readLook';
import { shapeOf } from '../../../src/photo/block/shape';
import { blankPixels } from '../../../src/photo/pixels/pixels';
import { runs } from '../../runs';
import { dice } from '../render/dice';
import { blockMarks, cornersOff } from '../render/marks';
import { randomQuilt } from '../render/quilts';
import { blockShotOnce } from '../render/shots';

/** Of the pictures, pixels: larger in the long run. */
const LONG_SIDE = runs(400, 700);

/** Whether it goes on for more than so many parts; what comes after them is left. */
function hasMoreParts(going: Generator<null>, count: number): boolean {
  for (let part = 0; part <= count; part += 1) if (going.next().done) return false;
  return true;
}

describe('a block in a picture', () => {
  it.each([3, 28, 0, 6].slice(0, runs(1, 4)))('is found, read and known again (picture %i)', async (seed) => {
    const shot = await blockShotOnce(seed, LONG_SIDE);
    const { wedge } = shot.project;
    const found = atOnce(findCorners(shot.pixels, shapeOf(wedge, wedge.outerSeam)))!;
    expect(cornersOff(found.corners, shot.corners)).toBeLessThan(0.01);
    const read = atOnce(readBlock(shot.pixels, found.corners, knowledgeOf(shot.project), found.lens.bend))!;
    expect(read.known).toMatchObject({ number: shot.number, quarters: shot.quarters });
    const marks = blockMarks(read, shot);
    expect(marks.rims).toBeGreaterThanOrEqual(marks.wedges - 1);
    expect(read.wedges).toHaveLength(wedge.perBlock);
    // Only what a person says is sure beyond doubt.
    for (const { sure } of [read.known!, ...read.wedges.flat()]) expect(sure).toBeLessThan(1);
  });

  it('is looked for and read in parts, so that a stop is heard amid one picture', async () => {
    const shot = await blockShotOnce(3, 400);
    const { wedge } = shot.project;
    expect(hasMoreParts(findCorners(shot.pixels, shapeOf(wedge, wedge.outerSeam)), 100)).toBe(true);
    const bare = knowledgeOf({ ...shot.project, blocks: [], stripSets: [] });
    expect(hasMoreParts(readBlock(shot.pixels, shot.corners, bare), 40)).toBe(true);
  });

  it('is read by its fabrics alone, the bands of nearly all wedges in their order', async () => {
    const shot = await blockShotOnce(3, LONG_SIDE);
    const bare = knowledgeOf({ ...shot.project, blocks: [], stripSets: [] });
    const marks = blockMarks(atOnce(readBlock(shot.pixels, shot.corners, bare))!, shot);
    expect(marks.rims).toBe(marks.wedges);
    expect(marks.bands).toBeGreaterThanOrEqual(marks.wedges - 2);
  });

  it('is not there where a picture is empty', () => {
    const { wedge } = randomQuilt(dice(1), 2, 2);
    expect(atOnce(findCorners(blankPixels(200, 160), shapeOf(wedge, 0)))).toBeNull();
  });

  it('is not read between corners of which three lie on a line', () => {
    const project = randomQuilt(dice(1), 2, 2);
    const corners = [{ x: 20, y: 20 }, { x: 60, y: 20 }, { x: 100, y: 20 }, { x: 20, y: 90 }]; // biome-ignore format: corners
    expect(atOnce(readBlock(blankPixels(200, 160), corners, knowledgeOf(project)))).toBeNull();
  });

  it('of another quilt is not taken for one of this', async () => {
    const [shot, other] = [await blockShotOnce(3, 400), await blockShotOnce(6, 300)];
    const project = {
      ...shot.project,
      blocks: other.project.blocks.slice(1),
      stripSets: shot.project.stripSets,
    };
    const strangers = project.blocks.filter(({ places }) => places.length === shot.project.wedge.perBlock);
    const read = atOnce(
      readBlock(
        shot.pixels,
        shot.corners,
        knowledgeOf({
          ...project,
          blocks: strangers.map((block) => ({
            ...block,
            places: block.places.map((place, at) =>
              place ? { ...place, set: shot.project.stripSets[at % 3]!.id } : null,
            ),
          })),
        }),
      ),
    );
    expect(read!.known).toBeNull();
  });
});
