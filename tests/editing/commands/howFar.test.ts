// How far the work is governs what can still change; and after any sequence of edits no more wedges are used than were cut.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { apply, type Command } from '../../../src/editing/apply';
import * as blocks from '../../../src/editing/commands/blocks';
import { chooseWedges, fillEmpty, openBlocks } from '../../../src/editing/commands/chooseWedges';
import { markSets } from '../../../src/editing/commands/setProgress';
import * as stripSets from '../../../src/editing/commands/stripSets';
import * as wall from '../../../src/editing/commands/wall';
import { countWedge, gaining, losing } from '../../../src/editing/commands/wedgeCount';
import type { Project, Tip } from '../../../src/model/project';
import { demo, unsewn } from '../../demo';
import { runs } from '../../runs';
import { done, refusal } from '../outcomes';

const planned = unsewn(demo('harbour-reading-corner'));
const first = planned.blocks[0]!;
const set = planned.stripSets[0]!;

describe('a set that is cut', () => {
  const cut = done(planned, markSets([set.id], 'cut'));

  it('keeps its length, its first tip and the wedge it was cut for', () => {
    const held = `Set ${set.label} is cut; count its wedges instead.`;
    const turned = set.firstTip === 'up' ? 'down' : 'up';
    expect(refusal(cut, stripSets.changeSet(cut, set.id, { length: set.length + 2 }))).toBe(held);
    expect(refusal(cut, stripSets.changeSet(cut, set.id, { firstTip: turned }))).toBe(held);
    expect(refusal(cut, stripSets.changeWedge({ cutHeight: 7 }))).toBe(
      `Set ${set.label} is cut; its wedges are 7 1/2" high.`,
    );
    expect(refusal(cut, stripSets.changeWedge({ perBlock: 6 }))).toBe(
      `Set ${set.label} is cut into wedges of 8 to the block.`,
    );
    expect(refusal(cut, stripSets.changeWedge({ seam: 0.1875 }))).toBe(
      `Set ${set.label} is sewn with a seam of 1/4".`,
    );
  });

  it('still takes what the first sewn block says, another pressing, and a lock', () => {
    expect(done(cut, stripSets.changeWedge({ assemblySeam: 0.2978 })).wedge.assemblySeam).toBe(0.2978);
    const changed = done(cut, stripSets.changeSet(cut, set.id, { pressing: 'first', locked: true }));
    expect(changed.stripSets[0]).toMatchObject({ pressing: 'first', locked: true });
  });

  it('is free again once it is set back', () => {
    const back = done(cut, markSets([set.id], 'planned'));
    expect(refusal(back, stripSets.changeWedge({ cutHeight: 7.25 }))).toBe('');
  });
});

describe('a sewn block', () => {
  it('has its strip sets cut, whatever they were marked as, in one undo', () => {
    const sewn = done(planned, blocks.setBlockProgress([first.id], 'octagon'));
    const used = new Set(first.places.map((place) => place!.set));
    for (const one of sewn.stripSets)
      expect(one.progress, one.label).toBe(used.has(one.id) ? 'cut' : 'planned');
    expect(refusal(sewn, stripSets.layStrips(sewn, [...used][0]!, []))).toContain('is sewn; its strips stay');
  });

  it('keeps the strips of its sets even where a file says they are only planned', () => {
    const file: Project = {
      ...planned,
      blocks: planned.blocks.map((block) => ({ ...block, progress: 'octagon' as const })),
    };
    expect(refusal(file, stripSets.layStrips(file, set.id, set.strips.toReversed()))).toContain(
      'is sewn; its strips stay',
    );
    expect(refusal(file, stripSets.changeWedge({ cutHeight: 7 }))).toContain('its wedges are');
  });

  it('goes into its row only where it hangs, and stays there then', () => {
    const down = done(planned, wall.takeDown(planned, first.id));
    expect(refusal(down, blocks.setBlockProgress([first.id], 'joined'))).toBe(
      'Block 1 waits on the side table; hang it before it is sewn into its row.',
    );
    const joined = done(planned, blocks.setBlockProgress([first.id], 'joined'));
    expect(refusal(joined, wall.swapCells(joined, 0, 1))).toContain('sewn into its row');
    expect(refusal(joined, wall.turnBlock(joined, first.id, 1))).toContain('sewn into its row');
    const unpicked = done(joined, blocks.setBlockProgress([first.id], 'squared'));
    expect(refusal(unpicked, wall.turnBlock(unpicked, first.id, 1))).toBe('');
    expect(refusal(unpicked, wall.turnByOneWedge(unpicked, first.id, 1))).toContain('quarters only');
  });
});

/** Wedges a set gives, from first principles: (n − 1) p + b of clean length (trade notes, plane geometry), N = 8. */
function wedgesByHand(project: Project, id: string, tip: Tip): number {
  const found = project.stripSets.find((one) => one.id === id);
  if (!found) return 0;
  if (found.cut) return found.cut[tip];
  const { seam, cutHeight } = project.wedge;
  const height =
    found.strips.reduce((sum, strip) => sum + strip.width, 0) - 2 * seam * (found.strips.length - 1);
  if (found.strips.length === 0 || height < cutHeight - 1e-9) return 0;
  const half = Math.PI / 8;
  const base = 2 * (cutHeight + seam / Math.sin(half) - seam) * Math.tan(half);
  const pitch = Math.max(base / 2, base - height * Math.tan(half));
  let wedges = 0;
  while (wedges * pitch + base <= found.length + 1e-9) wedges += 1;
  const more = Math.ceil(wedges / 2);
  return (tip === 'up') === (found.firstTip === 'up') ? more : wedges - more;
}

describe('after any sequence of edits', () => {
  const step = fc.record({
    kind: fc.constantFrom(
      'put', 'trade', 'lose', 'gain', 'count', 'lay', 'remove', 'choose', 'fill', 'sew', 'mark', 'add', 'height', 'length',
    ),
    block: fc.nat(7),
    other: fc.nat(7),
    place: fc.nat(7),
    set: fc.nat(4),
    tip: fc.constantFrom<Tip>('up', 'down'),
    amount: fc.nat(3),
  }); // biome-ignore format: a table

  it('no more wedges are used than were cut, and no set is used that is not there', () => {
    let carriedOut = 0;
    fc.assert(
      fc.property(fc.array(step, { minLength: 5, maxLength: 25 }), (steps) => {
        let now = planned;
        for (const one of steps) {
          const block = now.blocks[one.block % Math.max(1, now.blocks.length)];
          const other = now.blocks[one.other % Math.max(1, now.blocks.length)];
          const chosen = now.stripSets[one.set % Math.max(1, now.stripSets.length)];
          if (!block || !other || !chosen) continue;
          const commands: Record<string, () => Command | null> = {
            put: () => blocks.putWedge(now, block.id, one.place, { set: chosen.id, tip: one.tip }),
            trade: () =>
              blocks.tradeWedges(
                now,
                { block: block.id, place: one.place },
                { block: other.id, place: one.amount },
              ),
            lose: () => losing(now, chosen.id, one.tip).loss?.command ?? null,
            gain: () => gaining(now, chosen.id, one.tip).command,
            count: () => countWedge(now, chosen.id, one.tip, -1),
            lay: () => stripSets.layStrips(now, chosen.id, chosen.strips.slice(one.amount)),
            remove: () => stripSets.removeSet(now, chosen.id),
            choose: () => chooseWedges(now, openBlocks(now), one.amount).command,
            fill: () => fillEmpty(now, one.amount).command,
            sew: () =>
              blocks.setBlockProgress(
                [block.id],
                (['planned', 'octagon', 'squared', 'joined'] as const)[one.amount]!,
              ),
            mark: () => markSets([chosen.id], (['planned', 'sewn', 'cut'] as const)[one.amount % 3]!),
            add: () => blocks.addBlocks(1),
            height: () => stripSets.changeWedge({ cutHeight: 7 + one.amount / 4 }),
            length: () => stripSets.changeSet(now, chosen.id, { length: 30 + 4 * one.amount }),
          };
          const command = commands[one.kind]!();
          const outcome = command && apply(now, command);
          if (outcome?.ok) {
            now = outcome.project;
            carriedOut += 1;
          }
          for (const { id, label } of now.stripSets) {
            for (const tip of ['up', 'down'] as const) {
              const used = now.blocks
                .flatMap((each) => each.places)
                .filter((held) => held?.set === id && held.tip === tip).length;
              expect(used, `set ${label} ${tip} after ${one.kind}`).toBeLessThanOrEqual(
                wedgesByHand(now, id, tip),
              );
            }
          }
          const known = new Set(now.stripSets.map((each) => each.id));
          for (const held of now.blocks.flatMap((each) => each.places))
            if (held) expect(known.has(held.set)).toBe(true);
        }
      }),
      { seed: 90_210, numRuns: runs(8, 25) },
    );
    expect(carriedOut).toBeGreaterThan(runs(30, 100));
  });
});
