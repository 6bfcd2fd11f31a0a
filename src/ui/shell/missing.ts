// What a step lacks for a whole top, in one line, and where it is done.
import { wedgeLedger } from '../../cutting/wedges/ledger';
import { counted, type Phrase, phrase } from '../../model/phrase';
import type { Project } from '../../model/project';
import type { Step } from '../../store/app';

export interface Missing {
  readonly words: Phrase;
  /** The step at which it is done, with the name of the button that goes there; null where nothing is missing. */
  readonly at: { readonly step: Step; readonly name: string } | null;
}

/** What is missing at a step, the first thing first. */
export function missing(project: Project, _step: Step): Missing {
  const cells = project.wall.cells.length;
  const empty = project.wall.cells.filter((cell) => cell === null).length;
  const there = wedgeLedger(project).reduce((sum, row) => sum + row.available.up + row.available.down, 0);
  const needed = cells * project.wedge.perBlock;
  if (there < needed)
    return {
      words: counted(needed - there, '{count} more wedge is needed.', '{count} more wedges are needed.'),
      at: { step: 'sets', name: 'To the strip sets' },
    };
  if (empty > 0)
    return {
      words: counted(empty, '{count} place on the wall is empty.', '{count} places on the wall are empty.'),
      at: { step: 'wall', name: 'To the wall' },
    };
  return { words: phrase('Nothing is missing.'), at: null };
}
