import { describe, expect, it } from 'vitest';
import { createApp } from '../../../src/store/app';
import type { PhotoReader } from '../../../src/store/photo/photoReader';
import { createWallPhoto } from '../../../src/store/photo/wallPhoto';
import { scrappyTop } from '../../balance/tops';

/** A wall whose reader answers when the test says so. */
function room() {
  const app = createApp(scrappyTop({ rows: 2, columns: 3, seed: 4 }));
  const asked: { readonly job: string; readonly answer: (value: unknown) => void }[] = [];
  const reader = {
    ask: (job: string) =>
      new Promise((answer) => {
        asked.push({ job, answer: (value) => answer(value === null ? null : { ok: true, value }) });
      }),
    stop: () => {},
    close: () => {},
  } as unknown as PhotoReader;
  const revoked: string[] = [];
  const work = createWallPhoto(app, reader, {
    make: ({ width }) => `picture ${width}`,
    revoke: (address) => void revoked.push(address),
  });
  /** Answers the last ask, which must be this job. */
  const answer = async (job: string, value: unknown) => {
    for (let turn = 0; turn < 20 && asked.at(-1)?.job !== job; turn += 1)
      await new Promise((next) => setTimeout(next));
    expect(asked.at(-1)?.job).toBe(job);
    asked.at(-1)!.answer(value);
    await new Promise((next) => setTimeout(next));
  };
  const photo = () => work.state.getState().photo;
  return { work, answer, photo, revoked };
}

const FILE = new File([new Uint8Array([255, 216])], 'wall.jpg');
const OPENED = { width: 900, height: 600, shown: { width: 900 }, white: null };

describe('the photograph of a wall', () => {
  it('lies by the rows and columns of the quilt where no grid is found', async () => {
    const { work, answer, photo } = room();
    void work.take('wall.jpg', FILE);
    await answer('open', OPENED);
    await answer('grid', null);
    expect(photo()).toMatchObject({ found: false, grid: { rows: 2, columns: 3 } });
    expect(photo()!.cells).toHaveLength(6);
  });

  it('keeps what a person says of a cell while the others are still looked at', async () => {
    const { work, answer, photo } = room();
    void work.take('wall.jpg', FILE);
    await answer('open', OPENED);
    await answer('grid', null);
    work.markEmpty(0, true);
    work.markEmpty(1, false);
    await answer('likeness', [0.9, 0.1, 0.9, 0.1, 0.9, 0.9]);
    expect(photo()!.cells.map(({ empty }) => empty)).toEqual([true, false, false, true, false, false]);
  });

  it('drops an answer for a grid that was moved meanwhile, and says where corners cross', async () => {
    const { work, answer, photo } = room();
    void work.take('wall.jpg', FILE);
    await answer('open', OPENED);
    await answer('grid', null);
    const { grid } = photo()!;
    work.lay({ ...grid, rows: 1 });
    await answer('likeness', [0.9, 0.9, 0.1]);
    expect(photo()!.cells.map(({ empty }) => empty)).toEqual([false, false, true]);
    const [first, second, third, fourth] = grid.corners;
    work.lay({ ...grid, corners: [second!, first!, third!, fourth!] });
    expect(work.state.getState().problems).toMatchObject([{ code: 'corners-crossed' }]);
    expect(photo()!.cells).toEqual([]);
  });
});
