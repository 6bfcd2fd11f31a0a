// Six, ten and twelve wedges to the block get the whole way: strips planned, sets made, blocks composed, hung, turned, sewn.
import { describe, expect, it } from 'vitest';
import { analyse } from '../../src/balance/analyse';
import { planStrips, usualWidths } from '../../src/cutting/plan/planStrips';
import { makeSets, setMakingOf } from '../../src/cutting/sets/randomSets';
import { wedgeLedger } from '../../src/cutting/wedges/ledger';
import { seamsNotNesting } from '../../src/cutting/wedges/nesting';
import { cornerPieces } from '../../src/cutting/yardage/cornerPieces';
import { drawProject } from '../../src/drawing/drawProject';
import { apply, type Command } from '../../src/editing/apply';
import { addBlocks, setBlockProgress } from '../../src/editing/commands/blocks';
import { chooseWedges, openBlocks } from '../../src/editing/commands/chooseWedges';
import { changeWedge, replaceSets } from '../../src/editing/commands/stripSets';
import { writeDownStrips } from '../../src/editing/commands/stripsOnHand';
import { turnBlock, turnByOneWedge } from '../../src/editing/commands/wall';
import { finishedBlock } from '../../src/geometry/wedge';
import { createProject } from '../../src/model/create';
import { speak } from '../../src/model/phrase';
import type { Project, WedgePlan } from '../../src/model/project';
import { plainFabrics } from '../cutting/fabrics';

function done(from: Project, command: Command): Project {
  const outcome = apply(from, command);
  if (!outcome.ok) throw new Error(speak(outcome.problems[0]!.message));
  return outcome.project;
}

/** From an empty quilt of twelve fabrics to six blocks on the wall. */
function sixBlocks(perBlock: WedgePlan['perBlock']): Project {
  const cloths = plainFabrics(13).slice(1);
  const empty = createProject('p', 'Test');
  const start = done({ ...empty, fabrics: [...empty.fabrics, ...cloths] }, changeWedge({ perBlock }));
  const fabrics = cloths.map((fabric) => fabric.id);
  const plan = planStrips({ blocks: 6, wedge: start.wedge, widths: usualWidths('in'), fabrics, length: 40 })!;
  expect(plan.wedges.up).toBeGreaterThanOrEqual(3 * perBlock);
  expect(plan.wedges.down).toBeGreaterThanOrEqual(3 * perBlock);
  const cut = done(start, writeDownStrips(plan.strips.map((row) => ({ ...row, length: 40 }))));
  const made = makeSets(setMakingOf(cut, { blocks: 6 }, 1));
  expect(made.notes).toEqual([]);
  const blocks = done(done(cut, replaceSets(cut, made.sets, 1)), addBlocks(6));
  return done(blocks, chooseWedges(blocks, openBlocks(blocks), 1).command);
}

describe.each([6, 10, 12] as const)('%i wedges to the block', (perBlock) => {
  const top = sixBlocks(perBlock);

  it('make whole blocks of wedges tip up and tip down in turn, seams nesting, no fabric meeting itself on a rim', () => {
    for (const block of top.blocks) {
      expect(block.places).toHaveLength(perBlock);
      expect(block.places.map((place) => place?.tip)).toEqual(
        Array.from({ length: perBlock }, (_, place) =>
          (place % 2 === 0) === (block.places[0]!.tip === 'up') ? 'up' : 'down',
        ),
      );
      expect(seamsNotNesting(top, block)).toEqual([]);
    }
    expect(analyse(top).clashes.filter((clash) => clash.kind === 'rim' && clash.likeness === 1)).toEqual([]);
    for (const row of wedgeLedger(top))
      expect(Math.min(row.left.up, row.left.down)).toBeGreaterThanOrEqual(0);
  });

  it('fill the wall without a gap: a block is as wide as its polygon allows', () => {
    // Apothem 7 for a 7 1/2 wedge at 1/4 seams whatever N (trade notes 3); across corners 2A / cos(180°/N).
    const apothem =
      7.5 + 0.25 / Math.sin(Math.PI / perBlock) - 0.25 - 0.25 / Math.sin(Math.PI / perBlock) - 0.25;
    const width = perBlock % 4 === 0 ? 2 * apothem : (2 * apothem) / Math.cos(Math.PI / perBlock);
    const size = finishedBlock(top.wedge);
    expect(size.height).toBeCloseTo(2 * apothem, 9);
    expect(size.width).toBeCloseTo(width, 9);
    const drawing = drawProject(top);
    expect(drawing.width).toBeCloseTo(2 * size.width, 9);
    expect(drawing.height).toBeCloseTo(3 * size.height, 9);
  });

  it('turn on the wall as far as their shape allows, and are sewn to the end', () => {
    const first = top.blocks[0]!.id;
    let turned = top;
    const turns = perBlock % 4 === 0 ? 4 : 2;
    const seen = new Set<number>();
    for (let turn = 0; turn < turns; turn += 1) {
      turned = done(turned, turnBlock(turned, first, 1));
      seen.add(turned.wall.cells.find((cell) => cell?.block === first)!.turn);
    }
    expect(seen.size).toBe(turns);
    expect(turned).toEqual(top);
    for (let step = 0; step < perBlock; step += 1) turned = done(turned, turnByOneWedge(turned, first, 1));
    expect(turned).toEqual(top);
    const sewn = done(
      top,
      setBlockProgress(
        top.blocks.map((block) => block.id),
        'joined',
      ),
    );
    expect(sewn.stripSets.every((set) => set.progress === 'cut')).toBe(true);
  });

  it('get four setting pieces to the block from the cloth of the corners', () => {
    const [row] = cornerPieces(top, 'whole');
    expect(row!.fabric).toBe(top.setting.cornerFabric);
    expect(row!.count).toBe(perBlock === 6 ? 12 : 24);
  });
});
