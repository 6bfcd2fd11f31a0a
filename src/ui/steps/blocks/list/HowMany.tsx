// The number of whole blocks that the cut wedges allow, the number of blocks there are, and a form to add more.
import { Plus } from 'lucide-react';
import { useState } from 'react';
import { blocksAllowed } from '../../../../editing/commands/chooseWedges';
import { counted, phrase } from '../../../../model/phrase';
import { MOST_BLOCKS } from '../../../../model/project';
import { useApp, useAppStore } from '../../../app';
import { CountField } from '../../../fields/CountField';
import { useSay } from '../../../words';
import type { useChoosing } from '../useChoosing';

interface Props {
  choosing: ReturnType<typeof useChoosing>;
  /** So many blocks are added by the button in the foot of the step. */
  inFoot: number;
}

export function HowMany({ choosing, inFoot }: Props) {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const { add, busy } = choosing;
  const there = project.blocks.length;
  const allowed = blocksAllowed(project);
  const mostMore = MOST_BLOCKS - there;
  const missing = Math.max(0, allowed - there);
  const [typed, setTyped] = useState<number | null>(null);
  const count = Math.max(1, Math.min(mostMore, typed ?? (missing || 1)));
  /** Number of blocks to add for which there are not enough wedges. */
  const beyond = mostMore > 0 && allowed > 0 ? Math.min(count, Math.max(0, there + count - allowed)) : 0;
  return (
    <section aria-labelledby="many-title">
      <h3 id="many-title">{say('How many')}</h3>
      {allowed === 0 ? (
        <div className="stack">
          <p>{say('No whole block can be made yet: there are too few wedges. Strip sets come first.')}</p>
          <div className="row">
            <button type="button" className="button solid" onClick={() => store.getState().goTo('sets')}>
              {say('Go to the strip sets')}
            </button>
          </div>
        </div>
      ) : null}
      <p hidden={allowed === 0}>
        {say(
          counted(
            allowed,
            'Enough wedges for 1 block; {made}.',
            'Enough wedges for {count} blocks; {made}.',
            { made: there === 0 ? phrase('none made yet') : phrase('{there} made', { there }) },
          ),
        )}
      </p>
      {mostMore > 0 ? (
        <div className="row add-blocks">
          <CountField
            label="Blocks to add"
            describedBy={beyond > 0 ? 'many-beyond' : undefined}
            value={count}
            least={1}
            most={mostMore}
            onCommit={(next) => {
              setTyped(next);
              return [];
            }}
          />
          {count === inFoot ? null : (
            <button
              type="button"
              className="button"
              aria-disabled={busy}
              onClick={() => {
                add(count);
                setTyped(null);
              }}
            >
              <Plus size={16} aria-hidden /> {say(counted(count, 'Add 1 block', 'Add {count} blocks'))}
            </button>
          )}
        </div>
      ) : (
        <p className="quiet">{say('A quilt holds {most} blocks at most.', { most: MOST_BLOCKS })}</p>
      )}
      {beyond > 0 ? (
        <p className="quiet" id="many-beyond" role="status">
          {say(
            counted(
              beyond,
              '1 of these will have empty places until more wedges are cut.',
              '{count} of these will have empty places until more wedges are cut.',
            ),
          )}
        </p>
      ) : null}
    </section>
  );
}
