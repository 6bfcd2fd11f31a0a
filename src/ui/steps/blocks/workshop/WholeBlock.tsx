// Commands on all places of a block: choose other wedges automatically, or take them out. To fill it stands in the foot of the step.
import { emptyBlocks } from '../../../../editing/commands/blocks';
import { openBlocks } from '../../../../editing/commands/chooseWedges';
import { whyPlacesLocked } from '../../../../model/freedom';
import type { Block } from '../../../../model/project';
import { useApp, useAppStore } from '../../../app';
import { Complaint, useRun } from '../../../fields/Complaint';
import { useSay } from '../../../words';
import { Proof } from '../list/ChooseWedges';
import type { useChoosing } from '../useChoosing';

interface Props {
  block: Block;
  choosing: ReturnType<typeof useChoosing>;
}

export function WholeBlock({ block, choosing }: Props) {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const [run, problems] = useRun();
  const filled = block.places.some((place) => place !== null);
  const whole = !block.places.includes(null);
  if (whyPlacesLocked(block)) return null;
  const open = openBlocks(project).includes(block.id);
  return (
    <div className="whole-block">
      <div className="row">
        {open ? null : <p className="quiet">{say('It is pinned: its wedges are changed by hand only.')}</p>}
        {open && whole ? (
          <button
            type="button"
            className="button"
            aria-disabled={choosing.busy}
            onClick={() => choosing.choose([block.id])}
          >
            {say('Choose new wedges')}
          </button>
        ) : null}
        {filled ? (
          <button
            type="button"
            className="button"
            onClick={() => run(emptyBlocks(store.getState().project, [block.id]))}
          >
            {say('Empty this block')}
          </button>
        ) : null}
      </div>
      <Proof words={choosing.words} />
      <Complaint problems={[...problems, ...choosing.problems]} />
    </div>
  );
}
