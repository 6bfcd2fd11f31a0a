// Looks for what few blocks moved by hand can do: the best with one block touched, two and so on.
import { shuffleWish } from '../arrange/asked';
import type { FewBlocks } from '../arrange/byHand/fewBlocks';
import { counted, type Phrase, phrase } from '../model/phrase';
import type { AppStore } from './app';
import { startByHand } from './arranging/byHandClient';
import { createOffering, type Offering } from './offering';

interface MovesFound {
  readonly found: FewBlocks;
}

/** Started with the most blocks to touch. */
export type HandMoves = Offering<MovesFound, [most: number]>;

/** The store of an app's search. */
export function createHandMoves(app: AppStore) {
  return createOffering(app, {
    begin: (project, [most]: [most: number], hear) =>
      startByHand(project, { ...shuffleWish(project), most }, hear),
    offer: (found: FewBlocks): MovesFound => ({ found }),
    stale: phrase('The quilt was changed, so the moves that were looked for no longer fit it.'),
    // A list that was taken from the offers stays, so nothing is lost with them.
    isLost: (kind, now) => kind === 'running' || !now.laid.moves,
    found: ({ found }) => {
      if (app.getState().step === 'wall') app.getState().tell(foundWords(found));
      else app.getState().announce(phrase('The moves by hand are found. They wait under Wall.'));
    },
  });
}

function foundWords({ offers: { length } }: FewBlocks): Phrase {
  return length === 0
    ? phrase('No move that is allowed makes the top better.')
    : counted(length, '1 number of blocks to choose from.', '{count} numbers of blocks to choose from.');
}
