// What is tried on the wall is what accepting it gives: the same quilt, or the same refusal.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { apply, type Command } from '../../src/editing/apply';
import { chooseWedges, fillEmpty, openBlocks } from '../../src/editing/commands/chooseWedges';
import { rearrange } from '../../src/editing/commands/wall';
import { gaining, losing } from '../../src/editing/commands/wedgeCount';
import { type Move, moved } from '../../src/model/moves';
import { phrase } from '../../src/model/phrase';
import type { Project } from '../../src/model/project';
import { createApp } from '../../src/store/app';
import { anyMoves, partlySewn } from '../editing/randomMoves';
import { runs } from '../runs';

const LABEL = phrase('try it');
const seeds = fc.integer({ min: 0, max: 1e6 });

/** Tries a command on the wall, then accepts it, then takes it back; tells whether it could be done. */
function holds(project: Project, command: Command): boolean {
  const before = structuredClone(project);
  const app = createApp(project);
  const refusedPreview = app.getState().showPreview(command);
  const { preview, announced } = app.getState();
  expect(app.getState().project).toBe(project);
  const refused = app.getState().run(command);
  expect(refusedPreview).toEqual(refused);
  if (refused.length > 0) {
    expect(preview).toBeNull();
    expect(announced.words).toEqual(refused[0]!.message);
    expect(app.getState().project).toBe(project);
    expect(project).toEqual(before);
    return false;
  }
  expect(app.getState().project).toEqual(preview?.project ?? before);
  expect(app.getState().preview).toBeNull();
  app.getState().undo();
  expect(app.getState().project).toEqual(before);
  app.getState().redo();
  expect(app.getState().project).toEqual(preview?.project ?? before);
  expect(project).toEqual(before);
  return true;
}

describe('a change tried on the wall', () => {
  it('of moves of any kind is what accepting gives, or is refused with the same words; it can be sent and kept', () => {
    const done = new Set<Move['kind']>();
    const outcomes = { done: 0, refused: 0 };
    fc.assert(
      fc.property(seeds, fc.integer({ min: 1, max: 5 }), (seed, count) => {
        const project = partlySewn(seed);
        const moves = anyMoves(project, seed, count);
        const command = rearrange(moves, LABEL);
        expect(structuredClone(command)).toEqual(command);
        const carriedOut = holds(project, command);
        outcomes[carriedOut ? 'done' : 'refused'] += 1;
        if (!carriedOut) return;
        for (const { kind } of moves) done.add(kind);
        // What the arranger weighs is what is shown and done.
        const outcome = apply(project, command);
        expect(outcome.ok && outcome.project).toEqual(moved(project, moves));
      }),
      { numRuns: runs(150, 400) },
    );
    expect(done.size).toBe(7);
    expect(Math.min(outcomes.done, outcomes.refused)).toBeGreaterThan(runs(12, 50));
  });

  it('of a wedge lost or found shows the count with the blocks, and of wedges chosen the seed with them', () => {
    let changing = 0;
    fc.assert(
      fc.property(seeds, fc.constantFrom('up' as const, 'down' as const), (seed, tip) => {
        const project = partlySewn(seed);
        const set = project.stripSets[seed % project.stripSets.length]!.id;
        const { loss } = losing(project, set, tip);
        const chosen = [
          chooseWedges(project, openBlocks(project), seed % 999),
          fillEmpty(project, seed % 999),
        ];
        for (const one of [...(loss ? [loss] : []), gaining(project, set, tip), ...chosen]) {
          if (one.command.moves.length > 0) changing += 1;
          expect(holds(project, one.command)).toBe(true);
        }
      }),
      { numRuns: runs(8, 40) },
    );
    expect(changing).toBeGreaterThan(runs(12, 40));
  });

  it('that changes nothing leaves no step to undo, though it goes there and back', () => {
    const project = partlySewn(8);
    const cell = project.wall.cells.findIndex((one) => {
      const block = project.blocks.find(({ id }) => id === one?.block);
      return one && !one.pinned && block?.progress === 'planned';
    });
    const { block, turn } = project.wall.cells[cell]!;
    const app = createApp(project);
    const there = [turn === 0 ? 1 : 0, turn].map((to): Move => ({ kind: 'turn', block, turn: to }));
    expect(app.getState().run(rearrange(there, LABEL))).toEqual([]);
    expect(app.getState().history.done).toEqual([]);
  });
});
