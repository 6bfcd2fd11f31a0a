// The wall in words, row by row: the number of every block and how it is turned where it hangs. The pattern and the printed page have it
// alike.
import { slantedRows } from '../cutting/sewing/slantedRows';
import { type Phrase, phrase } from '../model/phrase';
import type { Project } from '../model/project';
import { isPlain, rowAndColumn } from '../model/wallCells';
import type { Drawing, HungBlock } from './drawing';

type Say = (sentence: string | Phrase) => string;

/** The words of every place, row by row from the left; on point the slanted rows, from the upper left. */
export function wallRows(project: Project, drawing: Drawing, say: Say): string[][] {
  const hung = new Map(drawing.blocks.map((block) => [block.cell, block]));
  const words = (cell: number) => {
    const block = hung.get(cell);
    if (block) return turnedWords(block, say);
    return say(isPlain(cell, project) ? 'plain square' : 'empty');
  };
  const slanted = slantedRows(project).map((row) =>
    row.map((entry) => {
      if (entry === 'side') return say('side triangle');
      return entry === 'corner' ? say('setting corner') : words(entry.cell);
    }),
  );
  return slanted.length > 0 ? slanted : levelRows(project).map((row) => row.map(words));
}

/** Cells of every level row from the left. */
function levelRows(project: Project): number[][] {
  const rows = Array.from({ length: project.wall.rows }, (): number[] => []);
  for (const cell of project.wall.cells.keys()) rows[rowAndColumn(cell, project).row - 1]!.push(cell);
  return rows;
}

function turnedWords(hung: HungBlock, say: Say): string {
  const number = { number: hung.number };
  switch (hung.quarters % 4) {
    case 1:
      return say(phrase('{number} turned right', number));
    case 2:
      return say(phrase('{number} upside down', number));
    case 3:
      return say(phrase('{number} turned left', number));
    default:
      return String(hung.number);
  }
}
