// The light of rendered blocks is taken out of their strips, and a strip whose fabric is not in the list becomes that fabric.
import { describe, expect, it } from 'vitest';
import { ciede2000 } from '../../../src/colour/difference';
import { type LinearRgb, labD65Of, linearOfHex } from '../../../src/colour/spaces';
import { apothem } from '../../../src/geometry/wedge';
import type { Project } from '../../../src/model/project';
import { atOnce } from '../../../src/model/work/parts';
import { isLightKnown, type LightThere, withoutLight } from '../../../src/photo/block/daylight';
import { squaredUp } from '../../../src/photo/block/pictured';
import { type ReadByCorners, readBlock } from '../../../src/photo/block/readBlock';
import { knowledgeOf } from '../../../src/photo/block/readLook';
import { stripPatch } from '../../../src/photo/block/strip';
import { swatchesOf } from '../../../src/photo/block/swatches';
import { readFabric } from '../../../src/photo/fabric/readFabric';
import { DAYLIGHT } from '../../../src/photo/light/light';
import { wholeFrame } from '../../../src/photo/pixels/frame';
import { meanOf } from '../../../src/photo/pixels/linear';
import { stripInPicture } from '../../../src/store/photo/fabricOfStrip';
import { runs } from '../../runs';
import { linearPlane } from '../render/linearPlane';
import { type BlockShot, blockShotOnce } from '../render/shots';

const SEEDS = [3, 28, 0].slice(0, runs(2, 3));
const shots = Promise.all(SEEDS.map((seed) => blockShotOnce(seed, runs(500, 700))));

const known = new Map<BlockShot, ReadByCorners>();

/** The block as it is read by all the quilt has, read once. */
function readOnce(shot: BlockShot): ReadByCorners {
  const read = known.get(shot) ?? atOnce(readBlock(shot.pixels, shot.corners, knowledgeOf(shot.project)))!;
  known.set(shot, read);
  return read;
}

function rimThere({ project, corners, wedges }: BlockShot, place: number, light: LightThere | null) {
  const outer = apothem(project.wedge);
  return { corners, bend: 0, allowance: 0, place, outer, inner: outer - wedges[place]![0]!.width, light };
}

function offTruth({ project }: BlockShot, fabric: string, seen: LinearRgb): number {
  const truth = swatchesOf(project.fabrics).find((one) => one.fabric === fabric)!.light;
  return ciede2000(labD65Of(seen), labD65Of(truth));
}

const middle = (values: readonly number[]) =>
  values.toSorted((one, other) => one - other)[values.length >> 1]!;

describe('the light of a block', () => {
  it('is taken out of its strips, which then have the colours of their fabrics', async () => {
    const [before, after]: [number[], number[]] = [[], []];
    for (const shot of await shots) {
      const read = readOnce(shot);
      if (!isLightKnown([read])) continue;
      shot.wedges.forEach((bands, place) => {
        for (const [into, light] of [
          [before, null],
          [after, read.light],
        ] as const) {
          const patch = stripPatch(shot.pixels, rimThere(shot, place, light), shot.project.wedge);
          if (!patch.ok) continue;
          const mean = meanOf(linearPlane(patch.value.pixels)) as unknown as LinearRgb;
          into.push(offTruth(shot, bands[0]!.fabric, mean));
        }
      });
    }
    expect(after.length).toBeGreaterThan(runs(6, 12));
    // Two fabrics are told apart from about ΔE00 2 on (common practice, no source).
    expect(middle(after)).toBeLessThan(2.5);
    expect(middle(before)).toBeGreaterThan(2 * middle(after));
  }, 600_000);

  it('leaves a strip of a fabric that is not in the list with the colour of that fabric', async () => {
    const off: number[] = [];
    const some = (await shots).slice(0, runs(1, 3));
    for (const shot of some) {
      const widths = shot.wedges.map(([rim]) => rim!.width);
      const place = widths.indexOf(Math.max(...widths));
      const strange = shot.wedges[place]![0]!.fabric;
      const project: Project = {
        ...shot.project,
        fabrics: shot.project.fabrics.filter(({ id }) => id !== strange),
        blocks: [],
        stripSets: [],
      };
      const read = atOnce(readBlock(shot.pixels, shot.corners, knowledgeOf(project)))!;
      const patch = stripPatch(shot.pixels, rimThere(shot, place, read.light), project.wedge);
      if (!patch.ok) throw new Error(patch.problems[0]!.message.say);
      const { pixels, perInch } = patch.value;
      const wish = { frame: wholeFrame(pixels), light: DAYLIGHT, uneven: null, perInch, seed: 1 };
      const fabric = atOnce(readFabric(pixels, wish));
      if (!fabric.ok) throw new Error(fabric.problems[0]!.message.say);
      expect(fabric.value.tileSize!.width).toBeLessThanOrEqual(pixels.width / perInch);
      off.push(offTruth(shot, strange, linearOfHex(fabric.value.mean)));
    }
    expect(Math.max(...off)).toBeLessThan(6);
    expect(off.length).toBe(some.length);
  }, 600_000);

  it('is refused, with what to do, where a strip is narrow or shows few pixels', async () => {
    const [shot] = await shots;
    const there = rimThere(shot!, 0, null);
    for (const strip of [{ ...there, inner: there.outer - 0.3 }, { ...there, inner: there.outer }, { ...there, corners: there.corners.map(({ x, y }) => ({ x: x / 8, y: y / 8 })) }]) // biome-ignore format: three strips
      expect(stripPatch(shot!.pixels, strip, shot!.project.wedge)).toMatchObject({
        ok: false,
        problems: [{ code: 'patch-small' }],
      });
  });
});

describe('a strip of a block that hangs as its picture', () => {
  it('has the colour of its fabric, read from that picture', async () => {
    const off: number[] = [];
    for (const shot of await shots) {
      const { pixels, corners, project, wedges } = shot;
      const { light, allowance } = readOnce(shot);
      const picture = squaredUp(pixels, corners, 0, project.wedge, allowance, 900, withoutLight(light));
      const block = {
        wedges: wedges.map((bands) => ({ bands: bands.map((band) => ({ ...band, sure: 0.5 })) })),
      };
      wedges.forEach((bands, place) => {
        const patch = stripPatch(
          picture,
          stripInPicture(block, picture, project.wedge, place, 0),
          project.wedge,
        );
        if (!patch.ok) return;
        const mean = meanOf(linearPlane(patch.value.pixels)) as unknown as LinearRgb;
        off.push(offTruth(shot, bands[0]!.fabric, mean));
      });
    }
    expect(off.length).toBeGreaterThan(runs(6, 12));
    expect(middle(off)).toBeLessThan(2.5);
  }, 600_000);
});
