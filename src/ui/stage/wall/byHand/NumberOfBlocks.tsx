// How much each further block gives that is moved by hand, to choose how many to move.

import type { FewBlocks, FewBlocksOffer } from '../../../../arrange/byHand/fewBlocks';
import { weightsOf } from '../../../../balance/score/wishes';
import type { HandList } from '../../../../editing/handList';
import { moved } from '../../../../model/moves';
import { counted } from '../../../../model/phrase';
import { useApp, useAppStore } from '../../../app';
import { scorePair } from '../../../steps/wall/scoreWords';
import { useSay } from '../../../words';

export function NumberOfBlocks({ found, list }: { found: FewBlocks; list: HandList | null }) {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const weights = weightsOf(project.preferences);
  const { before, offers } = found;
  // Steps that are made already belong to the list that is chosen.
  const begun = (list?.ticked.length ?? 0) > 0;
  const take = ({ steps, moves }: FewBlocksOffer) => {
    const to = moved(project, moves).wall;
    store.getState().lay({ moves: { from: project.wall, to, steps, ticked: [] } });
  };
  if (offers.length === 0)
    return <p className="sheet-of-paper">{say('No move that is allowed makes the top better.')}</p>;
  const worst = before.total;
  return (
    <fieldset className="sheet-of-paper hand-numbers" disabled={begun}>
      <legend>{say('How many blocks to move')}</legend>
      <p className="quiet">
        {say(
          begun
            ? 'Some moves are ticked off. To choose another number, take the ticks off first.'
            : 'The best that was found for each number of blocks. A random layout scores 100; lower is better.',
        )}
      </p>
      {offers.map((offer) => {
        const { before: was, after } = scorePair(worst, offer.score.total, weights);
        return (
          <label key={offer.blocks} className="hand-number">
            <input
              type="radio"
              name="hand-number"
              checked={list?.steps === offer.steps}
              onChange={() => take(offer)}
            />
            <span>
              <strong>{say(counted(offer.blocks, '1 block', '{count} blocks'))}</strong>{' '}
              {say(
                counted(
                  offer.steps.length,
                  'in 1 move: score {after}, from {was}',
                  'in {count} moves: score {after}, from {was}',
                  {
                    after,
                    was,
                  },
                ),
              )}
              {offer.proved ? ` · ${say('no better way with this number')}` : null}
            </span>
            <span className="hand-gain" aria-hidden>
              <i style={{ transform: `scaleX(${share(offer.score.total, worst)})` }} />
            </span>
          </label>
        );
      })}
    </fieldset>
  );
}

/** What is left of the score, as a part of what it was. */
function share(score: number, before: number): number {
  return before > 0 ? Math.max(0, Math.min(1, score / before)) : 0;
}
