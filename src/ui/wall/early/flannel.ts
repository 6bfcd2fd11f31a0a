// The flannel that the quilt hangs on.
import type { CSSProperties } from 'react';
import { greyOf } from '../../../colour/tone';

/** A neutral grey of the wanted L*, 0 to 100, and ink that reads on it. */
export function flannel(lightness: number) {
  return {
    '--flannel': greyOf(lightness),
    '--on-flannel': lightness > 55 ? '#161616' : '#f4f4f4',
  } satisfies Record<string, string> as CSSProperties & Record<'--flannel' | '--on-flannel', string>;
}
