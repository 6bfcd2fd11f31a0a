// A photographed block that is tied to one of the quilt: a pieced one is told as sewn, a pictured one gets the new picture and looks on
// the wall as it did.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { analyse } from '../../../src/balance/analyse';
import { setBlockProgress } from '../../../src/editing/commands/blocks';
import { openDocument } from '../../../src/editing/openDocument';
import type { ReadBlock } from '../../../src/editing/pictured/addPictured';
import { tieToBlock, untiePhoto } from '../../../src/editing/pictured/tieToBlock';
import { cellOf, findBlock, orientation, turnsOf } from '../../../src/model/find';
import { picturesUsed } from '../../../src/model/picture/picture';
import { BLOCK_PROGRESS, type PicturedBlock, type Project } from '../../../src/model/project';
import { awkwardTop } from '../../arrange/awkwardTop';
import { pictureNumber, withPictures } from '../../geometry/pictured';
import { runs } from '../../runs';
import { done, refusal } from '../outcomes';

const RUNS = { numRuns: runs(8, 60), seed: 1811 };
const top = fc
  .tuple(fc.integer({ min: 0, max: 400 }), fc.constantFrom(6 as const, 8 as const, 10 as const, 12 as const))
  .map(([seed, perBlock]) => awkwardTop(seed, perBlock));

/** Blocks 2 to 6 of the top. */
const block = fc.integer({ min: 1, max: 5 }).map((at) => `b${at}`);

/** The block as a photograph shows it that was taken with the block turned by so many quarters clockwise. */
function photographed(project: Project, id: string, quarters: number): ReadBlock {
  const { wedges, cornerShift } = findBlock(project, id) as PicturedBlock;
  const steps = (quarters * wedges.length) / 4;
  return {
    picture: pictureNumber(500),
    wedges: wedges.map((_, place) => wedges[(place - steps + wedges.length) % wedges.length]!),
    cornerShift,
    cornerFabric: null,
  };
}

/** What a block shows, clockwise from the top of the wall. */
function asHung(project: Project, id: string): PicturedBlock['wedges'] {
  const block = findBlock(project, id) as PicturedBlock;
  const round = block.wedges.length;
  const first = orientation(block, cellOf(project, id)?.turn ?? 0, project.wedge);
  return block.wedges.map((_, at) => block.wedges[(at - first + round) % round]!);
}

/** What lies against its neighbours: how long, and of which fabrics. */
function facing(project: Project): unknown {
  const { clashes } = analyse(project);
  return clashes
    .filter(({ kind }) => kind === 'facing')
    .map(({ inches, fabrics }) => [inches.toFixed(6), fabrics]);
}

describe('a photograph that is tied to a block in a picture', () => {
  it('takes the place of the other picture, and on the wall the block looks as it did', () => {
    fc.assert(
      fc.property(top, block, fc.nat(3), (project, id, turns) => {
        const before = withPictures(project, 0b111110);
        fc.pre(cellOf(before, id) !== undefined);
        const quarters = (turns * 4) / turnsOf(project.wedge.perBlock);
        const read = photographed(before, id, quarters % 4);
        const after = done(before, tieToBlock(before, id, read, quarters % 4));
        const { cornerFabric } = findBlock(before, id)!;
        expect(findBlock(after, id)).toMatchObject({ picture: read.picture, wedges: read.wedges, cornerFabric });
        expect(asHung(after, id)).toEqual(asHung(before, id));
        expect(facing(after)).toEqual(facing(before));
      }),
      RUNS,
    );
  }); // biome-ignore format: short
});

describe('a photograph that is tied to a pieced block', () => {
  const read = photographed(withPictures(awkwardTop(0, 8), 2), 'b1', 0);

  it('does what telling that the block is squared does, as far as it is not', () => {
    fc.assert(
      fc.property(top, block, fc.constantFrom(...BLOCK_PROGRESS), (given, id, progress) => {
        fc.pre(!findBlock(given, id)!.places.includes(null));
        const project = done(given, setBlockProgress([id], progress));
        const tied = tieToBlock(project, id, read, 0);
        const isSquared = progress === 'squared' || progress === 'joined';
        const after = done(project, tied);
        expect(done(after, untiePhoto(after, id))).toEqual(
          isSquared ? project : done(project, setBlockProgress([id], 'squared')),
        );
      }),
      RUNS,
    );
  });

  it('goes with the block: its picture is used, comes out of the file, and goes when it is removed', () => {
    const given = done(awkwardTop(0, 8), setBlockProgress(['b1'], 'squared'));
    const project = done(given, tieToBlock(given, 'b1', read, 5));
    expect(findBlock(project, 'b1')).toMatchObject({ photo: { picture: read.picture, turn: 1 } });
    expect([...picturesUsed(project)]).toEqual([read.picture]);
    const opened = openDocument(JSON.parse(JSON.stringify(project)));
    expect(opened).toEqual({ ...opened, ok: true, value: project });
    expect(picturesUsed(done(project, untiePhoto(project, 'b1'))).size).toBe(0);
  });

  it('is refused where a place is empty: the photograph shows another block', () => {
    const project = awkwardTop(0, 8);
    const places = findBlock(project, 'b1')!.places.with(0, null);
    const open = {
      ...project,
      blocks: project.blocks.map((one) =>
        one.id === 'b1' && one.kind === 'pieced' ? { ...one, progress: 'planned' as const, places } : one,
      ),
    };
    expect(refusal(open, tieToBlock(open, 'b1', read, 0))).toContain('has an empty place');
  });
});
