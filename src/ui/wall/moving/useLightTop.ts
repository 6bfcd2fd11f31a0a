// While a zoom lasts, the top is shown in flat colours where the browser paints the fabrics too slowly (Firefox takes 240 to 670 ms a frame
// for 80 printed blocks, Chromium 16): told by its frames, not by its name, and remembered until the page is loaded again.
import { type RefObject, useCallback, useEffect, useLayoutEffect, useRef } from 'react';
import type { Top } from './paintFlat';
import { slowFrames } from './slowFrames';

/** Milliseconds after the last zoom until the fabrics are shown again, where the sheet is not drawn anew. */
const REST = 400;

const isStuttering = slowFrames();
let isWatched = false;
let zoomedAt = 0;
/** Comes where frames are slow. */
let paintFlat: typeof import('./paintFlat').paintFlat | null = null;

/** Measures frames until none was zoomed for a while, or they are slow. A slow frame may well be longer than the rest after a zoom. */
function watchFrames(): void {
  if (isWatched || paintFlat) return;
  isWatched = true;
  let before = performance.now();
  const tick = () => {
    const now = performance.now();
    const slow = isStuttering(now - before);
    before = now;
    isWatched = !slow && now - zoomedAt < REST;
    if (slow) void fetchPaint();
    if (isWatched) requestAnimationFrame(tick);
  };
  requestAnimationFrame(tick);
}

async function fetchPaint(): Promise<void> {
  // Without it the fabrics are shown, slowly.
  const code = await import('./paintFlat').catch(() => null);
  if (code) paintFlat = code.paintFlat;
}

/** Returns what to call at each zoom of the top on `sheet`; `canvas` lies on it, and is shown instead of the top. */
export function useLightTop(
  sheet: RefObject<HTMLElement | null>,
  canvas: RefObject<HTMLCanvasElement | null>,
  top: Top,
): () => void {
  const latest = useRef(top);
  const timer = useRef<number | undefined>(undefined);
  const end = useCallback(() => {
    clearTimeout(timer.current);
    const { classList } = sheet.current ?? {};
    if (classList?.contains('light')) classList.remove('light');
  }, [sheet]);
  useLayoutEffect(() => {
    // The sheet is drawn anew: the fabrics are there again, and sharp.
    if (top.sheet !== latest.current.sheet || top.drawing !== latest.current.drawing) end();
    latest.current = top;
  });
  useEffect(() => end, [end]);

  return useCallback(() => {
    zoomedAt = performance.now();
    watchFrames();
    if (!paintFlat || !canvas.current || !sheet.current) return;
    clearTimeout(timer.current);
    timer.current = globalThis.setTimeout(end, REST) as unknown as number;
    if (sheet.current.classList.contains('light')) return;
    paintFlat(canvas.current, latest.current);
    sheet.current.classList.add('light');
  }, [sheet, canvas, end]);
}
