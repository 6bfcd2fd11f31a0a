// Whether a photographed print is directional: the tool proposes it by what it read, and a person's word stands over it.
import { expect, it } from 'vitest';
import { isDirectional, newPatch, type PatchRead } from '../../../src/store/photo/patches';

it('a print is directional as it looks, until somebody says', () => {
  const patch = newPatch(1, { x: 0, y: 0, width: 90, height: 90, angle: 0 });
  const read = (wayUp: number) => ({ found: { wayUp } }) as PatchRead;
  expect(isDirectional(patch)).toBe(false);
  expect(isDirectional({ ...patch, read: read(0.9) })).toBe(true);
  expect(isDirectional({ ...patch, read: read(0.3) })).toBe(false);
  expect(isDirectional({ ...patch, read: read(0.9), oneWay: false })).toBe(false);
  expect(isDirectional({ ...patch, read: read(0.3), oneWay: true })).toBe(true);
});
