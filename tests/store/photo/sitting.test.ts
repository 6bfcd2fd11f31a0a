import { beforeEach, describe, expect, it } from 'vitest';
import { photoAnswers } from '../../../src/store/photo/photoAnswers';
import { photoCloth } from '../../../src/store/photo/photoFabric';
import type { PhotoJobs } from '../../../src/store/photo/photoJobs';
import { createPhotoReader } from '../../../src/store/photo/photoReader';
import { createSitting } from '../../../src/store/photo/sitting';
import { imageFile } from '../../model/picture/images';
import { settled, stubs, WorkingStub } from '../workers/stubWorker';
import { SHARP } from './sharpCodec';

/** Left half red, right half a grey that the light makes orange. */
const file = async (name: string) =>
  new File(
    [
      new Uint8Array(
        await imageFile({ width: 200, height: 100, at: (x) => (x < 100 ? [150, 60, 50] : [220, 170, 110]) }),
      ),
    ],
    name,
  );
const RED = { x: 50, y: 50, width: 60, height: 60, angle: 0 };
const GREY = { x: 150, y: 50, width: 40, height: 40, angle: 0 };

let addresses: Set<string>;
const sittingOf = (start: () => WorkingStub<PhotoJobs> = () => new WorkingStub(photoAnswers(SHARP))) => {
  let count = 0;
  return createSitting(createPhotoReader(start), {
    make: () => {
      const address = `blob:${++count}`;
      addresses.add(address);
      return address;
    },
    revoke: (address) => addresses.delete(address),
  });
};
beforeEach(() => {
  addresses = new Set();
});

describe('fabrics being made from photographs', () => {
  it('are read from what can be opened; each other file is refused by name', async () => {
    const sitting = sittingOf();
    await sitting.take([new File(['words'], 'a.jpg'), await file('b.png'), new File([], 'c.png')]);
    const { photos, refused, working, waiting } = sitting.state.getState();
    expect(refused.map(({ name, problem }) => [name, problem.code])).toEqual([
      ['a.jpg', 'no-photo'],
      ['c.png', 'photo-empty'],
    ]);
    expect(photos.map(({ name }) => name)).toEqual(['b.png']);
    expect(photos[0]!.patches[0]!.read).not.toBeNull();
    expect([working, waiting]).toEqual([null, 0]);
    sitting.dismiss(refused[0]!);
    expect(sitting.state.getState().refused).toEqual([refused[1]]);
  });

  it('are read again when frame, light or true size changes, and only then are there a size and another colour', async () => {
    const sitting = sittingOf();
    await sitting.take([await file('one.png')]);
    const [photo] = sitting.state.getState().photos;
    const [of, patch] = [photo!.file.key, photo!.patch];
    const read = () => sitting.state.getState().photos[0]!.patches[0]!.read!.found;
    sitting.editPatch(of, patch, { frame: RED });
    await sitting.settled();
    expect(read().mean).toBe('#963c32');
    expect(photoCloth(read(), '0'.repeat(64))).toMatchObject({ ok: false, problems: [{ code: 'no-size' }] });
    sitting.edit(of, () => ({ perInch: 20 }));
    await sitting.settled();
    expect(photoCloth(read(), '0'.repeat(64)).ok).toBe(true);
    expect(await sitting.takeLight(of, GREY, 'white')).toEqual([]);
    await sitting.settled();
    // Less red than it looked in orange light.
    expect(read().mean).not.toBe('#963c32');
    expect(Number.parseInt(read().mean.slice(5), 16)).toBeGreaterThan(0x32);
    expect(await sitting.takeLight(of, { ...GREY, width: 0.1, height: 0.1 }, 'card')).toEqual([]);
  });

  it('are only measured again where the true size alone changes: what is shown then is what reading anew would give', async () => {
    const workers: WorkingStub<PhotoJobs>[] = [];
    const sitting = sittingOf(() => {
      workers.push(new WorkingStub(photoAnswers(SHARP)));
      return workers.at(-1)!;
    });
    const readings = () =>
      workers.flatMap(({ heard }) => heard).filter((one) => one.kind === 'ask' && one.job === 'fabric')
        .length;
    // Dots eight pixels apart, which is a print that repeats.
    const at = (x: number, y: number): [number, number, number] =>
      x % 8 < 4 && y % 8 < 4 ? [150, 60, 50] : [230, 225, 210];
    const bytes = await imageFile({ width: 240, height: 240, at });
    await sitting.take([new File([new Uint8Array(bytes)], 'dots.png')]);
    const [photo] = sitting.state.getState().photos;
    const [of, key] = [photo!.file.key, photo!.patch];
    const patch = () => sitting.state.getState().photos[0]!.patches[0]!;
    expect(patch().read!.found).toMatchObject({ scale: null, tileSize: null });
    expect(readings()).toBe(1);
    const { hrefs } = patch().read!;
    for (const perInch of [20, 2.5, 40 / 3]) {
      sitting.edit(of, () => ({ perInch }));
      await sitting.settled();
      expect(patch().read!.found.scale).toBeCloseTo(8 / perInch, 1);
      expect(patch().read!.hrefs).toBe(hrefs);
    }
    expect(readings()).toBe(1);
    const measured = patch().read!.found;
    sitting.readAgain(of, key);
    await sitting.settled();
    expect(readings()).toBe(2);
    expect(patch().read!.found).toEqual(measured);
    // Where a reading was stopped, what stands there is of another frame: a true size does not make it good.
    sitting.editPatch(of, key, { frame: { ...patch().frame, width: 60 } });
    sitting.stop();
    sitting.edit(of, () => ({ perInch: 30 }));
    await sitting.settled();
    expect(patch().problems).toEqual([]);
    expect(patch().read!.found.tileSize!.width).toBeLessThanOrEqual(60 / 30);
  });

  it('share one light with those that come later, until each has its own', async () => {
    const sitting = sittingOf();
    await sitting.take([await file('one.png')]);
    const of = sitting.state.getState().photos[0]!.file.key;
    await sitting.takeLight(of, GREY, 'white');
    sitting.shareLight(of);
    await sitting.take([await file('two.png')]);
    const [one, two] = sitting.state.getState().photos;
    expect(two!.light!.light).toEqual(one!.light!.light);
    expect(two!.light!.at).toBeNull();
    sitting.shareLight(null);
    await sitting.take([await file('three.png')]);
    expect(sitting.state.getState().photos[2]!.light).toBeNull();
  });

  it('of a shelf are split by taps; the frame that nobody touched goes, and no address is left when all end', async () => {
    const sitting = sittingOf();
    await sitting.take([await file('shelf.png')]);
    const of = sitting.state.getState().photos[0]!.file.key;
    expect(await sitting.split(of, 40, 50)).toEqual([]);
    expect(await sitting.split(of, 160, 50)).toEqual([]);
    expect(await sitting.split(of, -1, 50)).toMatchObject([{ code: 'tap-outside' }]);
    await sitting.settled();
    const { patches } = sitting.state.getState().photos[0]!;
    expect(patches.map(({ read }) => read!.found.mean)).toEqual(['#963c32', '#dcaa6e']);
    // The photograph, and three pictures of each fabric.
    expect(addresses.size).toBe(1 + 2 * 3);
    sitting.removePatch(of, patches[0]!.key);
    expect(addresses.size).toBe(1 + 3);
    sitting.clear();
    expect(addresses.size).toBe(0);
    expect(sitting.state.getState().photos).toEqual([]);
  });

  it('stop at once, and nothing that waited goes on', async () => {
    const { workers, start } = stubs<PhotoJobs>();
    const sitting = createSitting(createPhotoReader(start));
    const taking = sitting.take([await file('one.png'), await file('two.png')]);
    while (workers.length === 0) await settled();
    sitting.stop();
    await taking;
    expect(sitting.state.getState().refused.map(({ problem }) => problem.code)).toEqual([
      'stopped',
      'stopped',
    ]);
    expect(workers).toHaveLength(1);
    expect(sitting.state.getState().working).toBeNull();
  });
});
