// The names of blocks on the wall are spoken anew only where they change.
import { expect, it } from 'vitest';
import type { Clash } from '../../../src/balance/clashes/clashes';
import { drawProject } from '../../../src/drawing/drawProject';
import { type Phrase, speak } from '../../../src/model/phrase';
import type { Project } from '../../../src/model/project';
import { hungNames, hungWords } from '../../../src/ui/wall/standing/hungWords';
import { scrappyTop } from '../../balance/tops';

const turned = (project: Project, at: number): Project => {
  const cell = project.wall.cells[at]!;
  return {
    ...project,
    wall: {
      ...project.wall,
      cells: project.wall.cells.with(at, { ...cell, turn: (cell.turn + 1) % 4, pinned: !cell.pinned }),
    },
  };
};

it('each is what it would be made anew, and only that of the block that changes is', () => {
  let spoken = 0;
  const nameOf = hungNames((words: Phrase) => {
    spoken += 1;
    return speak(words);
  });
  const none: readonly Clash[] = [];
  let project = scrappyTop({ rows: 3, columns: 4, seed: 2 });
  const namesNow = (clashes: readonly Clash[] | null) => {
    const names = drawProject(project).blocks.map((hung) => nameOf(hung, project, clashes));
    const anew = drawProject(project).blocks.map((hung) => speak(hungWords(hung, project, clashes)));
    expect(names).toEqual(anew);
  };
  namesNow(null);
  expect(spoken).toBe(12);
  project = turned(project, 5);
  namesNow(null);
  expect(spoken).toBe(13);
  namesNow(none);
  expect(spoken).toBe(25);
  namesNow(none);
  expect(spoken).toBe(25);
  const { wall } = project;
  project = { ...project, wall: { ...wall, columns: 3, rows: 4 } };
  namesNow(none);
});
