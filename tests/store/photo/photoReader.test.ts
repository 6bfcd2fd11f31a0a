import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { ok } from '../../../src/model/result';
import { DAYLIGHT } from '../../../src/photo/light/light';
import { wholeFrame } from '../../../src/photo/pixels/frame';
import { photoAnswers } from '../../../src/store/photo/photoAnswers';
import type { PhotoJobs } from '../../../src/store/photo/photoJobs';
import { createPhotoReader } from '../../../src/store/photo/photoReader';
import { imageFile } from '../../model/picture/images';
import { settled, stubs, WorkingStub } from '../workers/stubWorker';
import { SHARP } from './sharpCodec';

const photo = async (key: number) => ({
  key,
  bytes: new Uint8Array(await imageFile({ width: 64, height: 48, at: () => [180, 60, 40] })),
});

const FABRIC = {
  wish: {
    frame: wholeFrame({ width: 64, height: 48 }),
    light: DAYLIGHT,
    white: null,
    perInch: 16,
    seed: 1,
  },
};

describe('reading photographs beside the page', () => {
  it('opens a photograph and reads its fabric, all as plain data', async () => {
    const reader = createPhotoReader(() => new WorkingStub<PhotoJobs>(photoAnswers(SHARP)));
    const one = await photo(1);
    const opened = await reader.ask('open', one, { longest: 32 });
    expect(opened).toMatchObject({
      ok: true,
      value: { width: 64, height: 48, shown: { width: 32, height: 24 } },
    });
    const fabric = await reader.ask('fabric', one, FABRIC);
    expect(fabric).toMatchObject({ ok: true, value: { mean: '#b43c28', figures: 'plain' } });
    if (!fabric?.ok) return;
    const mean = await sharp(fabric.value.tile.bytes).stats();
    expect(mean.channels.map((channel) => Math.round(channel.mean))).toEqual([180, 60, 40, 255]);
  });

  it('sends a photograph once, and again to a worker that takes the place of a lost one', async () => {
    const { workers, start } = stubs<PhotoJobs>();
    const reader = createPhotoReader(start);
    const one = await photo(1);
    const spot = { frame: FABRIC.wish.frame };
    const first = reader.ask('spot', one, spot);
    await settled();
    expect(workers[0]!.asked('spot').ask.photo.bytes).toEqual(one.bytes);
    workers[0]!.answer('spot', ok({ light: [1, 1, 1], unevenness: 0 }));
    await first;
    const second = reader.ask('spot', one, spot);
    await settled();
    expect(workers[0]!.asked('spot').ask.photo).toEqual({ key: 1, bytes: null });
    workers[0]!.break('gone');
    expect(workers[1]!.asked('spot').ask.photo.bytes).toEqual(one.bytes);
    workers[1]!.answer('spot', ok({ light: [0.5, 1, 1], unevenness: 0 }));
    expect(await second).toEqual(ok({ light: [0.5, 1, 1], unevenness: 0 }));
  });

  it('does one job after another, and a stop settles all of them at once', async () => {
    const { workers, start } = stubs<PhotoJobs>();
    const reader = createPhotoReader(start);
    const one = await photo(1);
    const asks = [reader.ask('fabric', one, FABRIC), reader.ask('open', await photo(2), { longest: 9 })];
    await settled();
    expect(workers[0]!.heard).toHaveLength(1);
    reader.stop();
    expect(await Promise.all(asks)).toEqual([null, null]);
    expect(workers[0]!.ended).toBe(true);
    const again = reader.ask('spot', one, { frame: FABRIC.wish.frame });
    await settled();
    expect(workers[1]!.asked('spot').ask.photo.bytes).toEqual(one.bytes);
    workers[1]!.fail('spot', 'no canvas');
    expect(await again).toMatchObject({ ok: false, problems: [{ code: 'worker-failed' }] });
  });
});
