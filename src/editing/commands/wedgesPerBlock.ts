// Changes the number of wedges to the block and empties all blocks, in one command: for when the blocks prevent the change.
import { phrase } from '../../model/phrase';
import type { WedgePlan } from '../../model/project';
import type { Command } from '../apply';
import { setWedge } from './stripSets';

/** Empties every block and changes the number. Refused like changeWedge where wedges are cut or blocks sewn. */
export function changeWedgesEmptying(perBlock: WedgePlan['perBlock']): Command {
  return {
    label: phrase('empty the blocks for {count} wedges each', { count: perBlock }),
    change: (draft) => {
      setWedge(draft, { perBlock });
      for (const block of draft.blocks) block.places = block.places.map(() => null);
    },
  };
}
