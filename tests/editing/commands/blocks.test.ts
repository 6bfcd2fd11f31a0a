import { expect, test } from 'vitest';
import { apply } from '../../../src/editing/apply';
import { removeBlock } from '../../../src/editing/commands/blocks';
import { pinBlocks } from '../../../src/editing/commands/wall';
import { speak } from '../../../src/model/phrase';
import { after, workshopProject } from '../workshopProject';

test('a pinned block is not removed until its pin is taken out', () => {
  const pinned = after(workshopProject(), (now) => pinBlocks(now, ['b1'], true));
  const refused = apply(pinned, removeBlock(pinned, 'b1'));
  expect(refused.ok).toBe(false);
  if (!refused.ok) expect(speak(refused.problems[0]!.message)).toContain('Block 1 is pinned');
  const free = after(
    pinned,
    (now) => pinBlocks(now, ['b1'], false),
    (now) => removeBlock(now, 'b1'),
  );
  expect(free.blocks.map((block) => block.id)).toEqual(['b2']);
  expect(free.wall.cells[0]).toBeNull();
});
