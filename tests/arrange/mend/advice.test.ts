// Where nothing mends a finding at once, no way is named that cannot help.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lastAdvice, waysToMend } from '../../../src/arrange/mend/advice';
import { ALL_SCOPES } from '../../../src/arrange/score';
import { clashFinding } from '../../../src/balance/clashes/clashFindings';
import { moved } from '../../../src/model/moves';
import type { Project } from '../../../src/model/project';
import { clashList } from '../../balance/clashList';
import { scrappyTop } from '../../balance/tops';
import { runs } from '../../runs';
import { searched } from '../toTheEnd';

const NO_SCOPES = { swap: false, turn: false, shiftCorners: false, trade: false, strips: false };

function as(project: Project, progress: Project['blocks'][number]['progress']): Project {
  return { ...project, blocks: project.blocks.map((block) => ({ ...block, progress })) };
}

function pinned(project: Project): Project {
  const cells = project.wall.cells.map((cell) => cell && { ...cell, pinned: true });
  return { ...project, wall: { ...project.wall, cells } };
}

describe('advice where no single change mends', () => {
  it('names no way about what a shuffle with all it may change never changes', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 5000 }),
        fc.constantFrom('planned', 'octagon', 'squared', 'joined'),
        fc.boolean(),
        (seed, progress, pin) => {
          const sewn = as(scrappyTop({ rows: 2, columns: 3, seed, fabrics: 5 }), progress as 'planned');
          const project = pin ? pinned(sewn) : sewn;
          const clashes = clashList(project);
          const { moves } = searched(project, { seed: 1, scopes: ALL_SCOPES, budget: { steps: 800 } });
          const after = new Map(clashList(moved(project, moves)).map((clash) => [clash.id, clash.weight]));
          for (const clash of clashes) {
            const ways = waysToMend(project, clashFinding(project, clash));
            if (ways.move || ways.corners || ways.trade) continue;
            // Nothing is said to help, and nothing did. What faces it may change where one of two blocks moves.
            expect(after.get(clash.id)).toBeCloseTo(clash.weight, 9);
          }
        },
      ),
      { numRuns: runs(20, 60) },
    );
  });

  it('does not name the shuffle for what is inside sewn blocks, nor a pin that is not in the way', () => {
    const project = scrappyTop({ rows: 2, columns: 3, seed: 3, fabrics: 5 });
    const inside = clashList(project).find((clash) => clash.kind === 'rim' || clash.kind === 'radial')!;
    const finding = clashFinding(project, inside);
    const say = (of: Project, scopes = ALL_SCOPES) => lastAdvice(of, finding, scopes).say;
    expect(say(project)).toContain('A shuffle may');
    expect(say(project, { ...ALL_SCOPES, trade: false })).toContain('trade wedges');
    expect(say(as(project, 'squared'))).not.toContain('shuffle');
    expect(say(as(project, 'squared'))).not.toContain('pin');
    expect(say(pinned(as(project, 'squared')))).toContain('sewn');
  });

  it('names what the options leave out, and it alone', () => {
    const project = scrappyTop({ rows: 2, columns: 3, seed: 3, fabrics: 4 });
    const between = clashList(project).find((clash) => clash.kind === 'facing')!;
    const finding = clashFinding(project, between);
    expect(lastAdvice(project, finding, NO_SCOPES).say).toContain('swap and turn');
    expect(lastAdvice(as(project, 'squared'), finding, ALL_SCOPES).say).toContain('A shuffle may');
    expect(lastAdvice(as(project, 'joined'), finding, ALL_SCOPES).say).toContain('sewn');
  });
});
