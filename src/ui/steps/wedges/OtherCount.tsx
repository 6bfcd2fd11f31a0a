// Offers two ways when another number of wedges to the block is refused: empty the blocks, or begin a new quilt from the same cloth.

import { apply } from '../../../editing/apply';
import { fromSameCloth } from '../../../editing/commands/sameCloth';
import { changeWedgesEmptying } from '../../../editing/commands/sets/wedgesPerBlock';
import { nameWith } from '../../../model/name';
import type { WedgePlan } from '../../../model/project';
import { useApp, useAppStore } from '../../app';
import { useSession } from '../../session';
import { useEscape } from '../../useEscape';
import { useSay, useWrite } from '../../words';

interface Props {
  perBlock: WedgePlan['perBlock'];
  onDone: () => void;
}

export function OtherCount({ perBlock, onDone }: Props) {
  const say = useSay();
  useEscape(onDone);
  const write = useWrite();
  const store = useAppStore();
  const session = useSession();
  const project = useApp((app) => app.project);
  const emptying = changeWedgesEmptying(perBlock);
  const values = { count: perBlock };
  const begin = () => {
    onDone();
    const name = nameWith(project.name, write(', {count} wedges', values));
    void session.openAsCopy(fromSameCloth(project, perBlock), name);
  };
  return (
    <div className="stack">
      {apply(project, emptying).ok ? (
        <>
          <p>{say('Empty the blocks first; their wedges are then chosen again. Undo brings them back.')}</p>
          <div>
            <button
              type="button"
              className="button solid"
              onClick={() => {
                onDone();
                store.getState().run(emptying);
              }}
            >
              {say('Empty the blocks and use {count}', values)}
            </button>
          </div>
        </>
      ) : (
        <p>
          {say('This quilt stays as it is. A new one can begin with its fabrics and what is not sewn yet.')}
        </p>
      )}
      <div className="row">
        <button type="button" className="button" onClick={begin}>
          {say('New quilt from these fabrics, {count} wedges', values)}
        </button>
        <button data-always type="button" className="button" onClick={onDone}>
          {say('Cancel')}
        </button>
      </div>
    </div>
  );
}
