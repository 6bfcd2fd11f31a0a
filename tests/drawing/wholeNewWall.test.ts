import { describe, expect, it } from 'vitest';
import { isWholeNewWall } from '../../src/drawing/wholeNewWall';
import type { Project } from '../../src/model/project';
import { scrappyTop } from '../balance/tops';

const large = scrappyTop({ rows: 10, columns: 10, seed: 3 });

/** The project with the first blocks of its wall turned. */
function turned(project: Project, count: number): Project {
  const cells = project.wall.cells.map((cell, at) =>
    cell && at < count ? { ...cell, turn: (cell.turn + 1) % 4 } : cell,
  );
  return { ...project, wall: { ...project.wall, cells } };
}

describe('A whole new wall', () => {
  it('is another quilt, or most blocks hung otherwise', () => {
    expect(isWholeNewWall(large, { ...large, id: 'another' })).toBe(true);
    expect(isWholeNewWall(large, turned(large, 100))).toBe(true);
  });

  it('is not what a hand changes: nothing, a turn, an exchange, another fabric', () => {
    expect(isWholeNewWall(large, large)).toBe(false);
    expect(isWholeNewWall(large, turned(large, 2))).toBe(false);
    expect(isWholeNewWall(large, { ...large, fabrics: large.fabrics.slice() })).toBe(false);
  });
});
