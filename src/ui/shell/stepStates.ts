// Computes the progress of each step: a part from 0 to 1 for its dot, and one figure in words.
import { wedgeLedger } from '../../cutting/wedges/ledger';
import { counted, type Phrase, phrase } from '../../model/phrase';
import type { Project } from '../../model/project';
import type { Step } from '../../store/app';

export interface StepState {
  readonly done: number;
  readonly figure: Phrase;
}

/** The progress of every step. */
export function stepStates(project: Project): Readonly<Record<Step, StepState>> {
  const ledger = wedgeLedger(project);
  const places = project.blocks.flatMap((block) => block.places);
  const filled = places.filter((place) => place !== null).length;
  const hung = project.wall.cells.filter((cell) => cell !== null).length;
  const high = ledger.filter((row) => row.height >= project.wedge.cutHeight).length;
  const there = ledger.reduce((sum, row) => sum + row.available.up + row.available.down, 0);
  const whole = project.blocks.filter((block) => !block.places.includes(null)).length;
  const sewn = project.blocks.filter((block) => block.progress !== 'planned').length;
  const ratio = (part: number, all: number) => (all === 0 ? 0 : part / all);
  const cloths = project.fabrics.filter((fabric) => !fabric.background).length;
  return {
    fabrics: { done: cloths > 0 ? 1 : 0, figure: phrase('{count}', { count: project.fabrics.length }) },
    sets: { done: ratio(high, ledger.length), figure: phrase('{count}', { count: ledger.length }) },
    wedges: { done: ratio(filled, there), figure: phrase('{filled}/{there}', { filled, there }) },
    blocks: {
      done: ratio(whole, project.blocks.length),
      figure: phrase('{whole}/{all}', { whole, all: project.blocks.length }),
    },
    wall: {
      done: ratio(hung, project.wall.cells.length),
      figure: phrase('{hung}/{cells}', { hung, cells: project.wall.cells.length }),
    },
    finishing: {
      done: ratio(sewn, project.blocks.length),
      figure: counted(sewn, '{count} sewn', '{count} sewn'),
    },
  };
}
