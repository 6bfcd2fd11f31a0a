// Random colours and prints for the laws of this room. Seeds are pinned so that a run repeats.
import fc from 'fast-check';
import type { ColourMix } from '../../src/cloth/likeness';

export const SEED = 20240611;

/** Any #rrggbb. */
export const anyHex = fc
  .integer({ min: 0, max: 0xffffff })
  .map((number) => `#${number.toString(16).padStart(6, '0')}`);

/** A cloth of one to six colours. */
export const anyMix: fc.Arbitrary<ColourMix> = fc
  .uniqueArray(fc.record({ hex: anyHex, area: fc.integer({ min: 1, max: 1000 }) }), {
    minLength: 1,
    maxLength: 6,
    selector: ({ hex }) => hex,
  })
  .map((parts) => {
    const total = parts.reduce((sum, { area }) => sum + area, 0);
    return parts.map(({ hex, area }) => ({ hex, share: area / total }));
  });
