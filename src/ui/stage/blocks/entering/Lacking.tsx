// Where the sets have too few wedges for what is entered: what lacks, with its ways out, and which planned blocks give wedges up.
import { Plus } from 'lucide-react';
import type { Supply, WedgesCounted } from '../../../../editing/entering/enterBlocks';
import { findBlock, findSet } from '../../../../model/find';
import { counted, phrase } from '../../../../model/phrase';
import { useApp } from '../../../app';
import { useSay } from '../../../words';

interface Props {
  supply: Supply;
  onCount: (counted: WedgesCounted) => void;
}

export function Lacking({ supply, onCount }: Props) {
  const say = useSay();
  const project = useApp((app) => app.project);
  const givers = [...new Set(supply.given.map(({ block }) => findBlock(project, block)?.number ?? 0))];
  return (
    <div role="status" className="lacking">
      {givers.length > 0 ? (
        <p className="quiet">
          {say(
            counted(
              supply.given.length,
              'One of these wedges comes out of planned block {blocks}.',
              '{count} of these wedges come out of planned blocks {blocks}.',
              { blocks: { list: givers.map(String) } },
            ),
          )}
        </p>
      ) : null}
      {supply.short.map(({ set, tip, there, needed }) => {
        const values = { set: findSet(project, set)?.label ?? '', there, needed };
        return (
          <div key={`${set} ${tip}`} className="lack">
            <p>
              {say(
                phrase(
                  tip === 'up'
                    ? 'Set {set} has {there} wedges tip up; the blocks would need {needed}.'
                    : 'Set {set} has {there} wedges tip down; the blocks would need {needed}.',
                  values,
                ),
              )}
            </p>
            <button type="button" className="button" onClick={() => onCount({ set, tip, count: needed })}>
              <Plus size={16} aria-hidden /> {say('The set gave {needed}: correct its count', values)}
            </button>
          </div>
        );
      })}
      {supply.short.length > 0 ? (
        <p className="quiet">
          {say(
            'Or the wedge is wrong: Back takes the last one out; press a place to mark it. Plus (+) corrects the count.',
          )}
        </p>
      ) : null}
    </div>
  );
}
