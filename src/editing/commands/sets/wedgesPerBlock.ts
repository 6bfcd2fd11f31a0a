// Changes the wedge (how many make a block, how high it is) and empties all blocks, in one command: for when the blocks prevent
// the change.
import { phrase } from '../../../model/phrase';
import type { WedgePlan } from '../../../model/project';
import type { Inches } from '../../../model/units';
import type { Command } from '../../apply';
import { setWedge } from '../stripSets';

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

/** Empties every block and changes the cut height. Refused like changeWedge where wedges are cut or blocks sewn. */
export function changeHeightEmptying(cutHeight: Inches): Command {
  return {
    label: phrase('empty the blocks for wedges {height} high', { height: { inches: cutHeight } }),
    change: (draft) => {
      setWedge(draft, { cutHeight });
      for (const block of draft.blocks) block.places = block.places.map(() => null);
    },
  };
}
