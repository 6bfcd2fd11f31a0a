// A small quilt for tests of the workshop and the picture: two sets of four plain cloths, three blocks, one hung.

import { apply, type Command } from '../../src/editing/apply';
import { addBlocks, putWedge } from '../../src/editing/commands/blocks';
import { addFabric } from '../../src/editing/commands/fabrics';
import { addSet } from '../../src/editing/commands/stripSets';
import { createProject } from '../../src/model/create';
import type { Project, Tip } from '../../src/model/project';

/** Runs commands in order; throws with the reason where one is refused. */
export function after(project: Project, ...commands: ((now: Project) => Command)[]): Project {
  return commands.reduce((now, command) => {
    const outcome = apply(now, command(now));
    if (!outcome.ok) throw new Error(`after: ${outcome.problems[0]!.message.say}`);
    return outcome.project;
  }, project);
}

const CLOTHS = [
  ['Brick', '#7a2f2a'],
  ['Amber', '#c9862e'],
  ['Harbour', '#2d4a5b'],
  ['Milk', '#f1ead8'],
] as const;

/** Fabrics f2 Brick, f3 Amber, f4 Harbour, f5 Milk. Each set of four strips, 2 1/2" wide: 8 1/2" high. */
export function workshopProject(): Project {
  return after(
    createProject('p', 'Test quilt'),
    ...CLOTHS.map(
      ([name, colour]) =>
        () =>
          addFabric({ name, colour, cloth: { kind: 'plain' }, background: false }),
    ),
    // s1: Brick on the rim of tip-up wedges, Milk on that of tip-down ones. s2: Brick and Amber.
    () => addSet(stripsOf(['f2', 'f3', 'f4', 'f5'])),
    () => addSet(stripsOf(['f2', 'f4', 'f5', 'f3'])),
    () => addBlocks(2),
  );
}

function stripsOf(fabrics: readonly string[]) {
  return fabrics.map((fabric) => ({ fabric, width: 2.5 }));
}

/** Puts wedges in the first places of block b1: "s1 up", "s2 down" … */
export function withWedges(project: Project, ...wedges: string[]): Project {
  return after(
    project,
    ...wedges.map((wedge, place) => (now: Project) => {
      const [set, tip] = wedge.split(' ') as [string, Tip];
      return putWedge(now, 'b1', place, { set, tip });
    }),
  );
}
