// When the frames of zooming count as slow, so that something lighter is drawn while it lasts.

/** Milliseconds from which a frame is seen to stutter: three at 60 to the second. */
const STUTTER = 50;
/** So many of the last frames must stutter: one or two may be a chance, or hold other work. */
const LAST = 4;
const ENOUGH = 3;

/** Takes the length of each frame of zooming, in milliseconds; tells whether they are slow. */
export function slowFrames(): (length: number) => boolean {
  let last: readonly number[] = [];
  return (length) => {
    last = [...last, length].slice(-LAST);
    return last.filter((one) => one >= STUTTER).length >= ENOUGH;
  };
}
