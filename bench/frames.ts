// How long frames take from one to the next while something is done on a page, against an empty page in the same run, so that the machine
// does not matter.
import type { Page } from 'playwright';
import type { BenchRow } from './row';

/** Milliseconds in which a turn or a swap is played. */
const PLAYED = 450;
/** Milliseconds between two times. */
const BETWEEN = 500;
/** How much longer than on an empty page the 95th of 100 frames may take. */
const MOST = 3;

/** Written as text, because what tsx makes of a function does not run in a page. */
const WATCH = `
  globalThis.frames = [];
  (() => {
    const frames = globalThis.frames;
    let last = performance.now();
    const next = (now) => {
      frames.push(now - last);
      last = now;
      if (globalThis.frames === frames && frames.length < 1000) requestAnimationFrame(next);
    };
    requestAnimationFrame(next);
  })()`;

/** Frames of one page, milliseconds: 95 of 100 are shorter than `p95`. */
export interface Frames {
  readonly median: number;
  readonly p95: number;
  readonly worst: number;
}

/** The line of what was done, beside the frames of an empty page. */
export function frameRow(name: string, frames: Frames, empty: Frames): BenchRow {
  const ratio = frames.p95 / empty.p95;
  const said = [frames.median, frames.p95, frames.worst].map((one) => one.toFixed(0)).join(', ');
  return {
    name: `frames of ${name}, 95 of 100 (median, p95, worst: ${said} ms)`,
    toReach: `≤ ${MOST} × an empty page`,
    measured: `${ratio.toFixed(1)} × ${empty.p95.toFixed(0)} ms`,
    ok: ratio <= MOST,
  };
}

/** What acts so many times on a page and measures the frames just after each. */
export function framesIn(times: number) {
  return async (page: Page, act: (time: number) => Promise<void>, pause = BETWEEN): Promise<Frames> => {
    const all: number[] = [];
    for (let time = 0; time < times; time += 1) {
      await page.evaluate(WATCH);
      await act(time);
      await page.waitForTimeout(PLAYED);
      const frames = await page.evaluate<number[]>('frames.splice(0)');
      // A page that drew nothing at all stood still.
      all.push(...(frames.length > 1 ? frames.slice(1) : [PLAYED]));
      await page.waitForTimeout(pause);
    }
    const sorted = all.toSorted((one, other) => one - other);
    const at = (share: number) => sorted[Math.floor(share * (sorted.length - 1))] ?? 0;
    return { median: at(0.5), p95: at(0.95), worst: at(1) };
  };
}
