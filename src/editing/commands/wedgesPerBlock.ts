// Another number of wedges to the block when the blocks there are stand in the way: the blocks emptied with it in one change.
import { phrase } from '../../model/phrase';
import type { WedgePlan } from '../../model/project';
import type { Command } from '../apply';
import { setWedge } from './stripSets';

/** Empties every block and changes the number. Refused, like changeWedge, by what is cut or sewn. */
export function changeWedgesEmptying(perBlock: WedgePlan['perBlock']): Command {
  return {
    label: phrase('empty the blocks for {count} wedges each', { count: perBlock }),
    change: (draft) => {
      setWedge(draft, { perBlock });
      for (const block of draft.blocks) block.places = block.places.map(() => null);
    },
  };
}
