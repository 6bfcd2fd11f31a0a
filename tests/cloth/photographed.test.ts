// Photographed fabric is weighed by its colours as a print is by its own: likeness, value and warmth need no picture.
import { expect, it } from 'vitest';
import { meanColour } from '../../src/cloth/likeness';
import { printMix } from '../../src/cloth/print/printMix';
import { clothAngle, printTile } from '../../src/cloth/print/printTile';
import { value } from '../../src/colour/spaces';
import { photographed } from '../model/picture/images';

const photo = photographed('a'.repeat(64), { angle: 10 });

it('has the colours that were read from it, and their mean as light', () => {
  expect(printMix(photo)).toEqual([
    { hex: '#a05030', share: 0.75 },
    { hex: '#e0d0b0', share: 0.25 },
  ]);
  // From light alone: 0.75 and 0.25 of the linear parts of the two colours (IEC 61966-2-1), worked out apart.
  expect(meanColour(printMix(photo))).toBe('#b38165');
  expect(value(meanColour(printMix(photo)))).toBeGreaterThan(value('#a05030'));
});

it('has no drawn figures, and lies with the grain of every strip, however it is turned', () => {
  expect(printTile(photo)).toBeNull();
  for (const grain of [0, 45, 90, 135, 180, 270]) expect(clothAngle(photo, grain)).toBe(10 + grain);
  expect(clothAngle(photo, -90)).toBe(280);
});
