// Several good orders that differ, side by side as small pictures; one is laid on the wall, then kept or left.
import { Square } from 'lucide-react';
import { useEffect, useMemo, useState } from 'react';
import type { Alternative } from '../../../arrange/alternatives';
import type { ShuffleWish } from '../../../arrange/shuffle';
import { rearrange } from '../../../editing/wall';
import { moved } from '../../../model/moves';
import { phrase } from '../../../model/phrase';
import { useApp, useAppStore } from '../../app';
import { Complaint, useRun } from '../../fields/Complaint';
import { useSeeking } from '../../session';
import { SmallTop } from '../../wall/SmallTop';
import { useSay } from '../../words';

const LABEL = phrase('hang the blocks in another order');

export function AlternativesPart({ wish, disabled }: { wish: ShuffleWish; disabled: boolean }) {
  const say = useSay();
  const { state, start, stop, close } = useSeeking();
  return (
    <div className="stack alternatives">
      {state.kind === 'idle' ? (
        <div>
          <button type="button" className="button" disabled={disabled} onClick={() => start(wish)}>
            {say('Show several to choose from')}
          </button>
          <Complaint problems={state.problems} />
        </div>
      ) : null}
      {state.kind === 'running' ? (
        <>
          <div
            className="progress"
            role="progressbar"
            aria-label={say('Looking for orders that differ')}
            aria-valuenow={Math.round(state.share * 100)}
            aria-valuemin={0}
            aria-valuemax={100}
          >
            <div style={{ transform: `scaleX(${Math.min(1, state.share)})` }} />
          </div>
          <div className="spread">
            <p className="quiet">{say('Looking for orders that differ …')}</p>
            <button type="button" className="button" onClick={stop}>
              <Square size={14} aria-hidden /> {say('Stop')}
            </button>
          </div>
        </>
      ) : null}
      {state.kind === 'offered' ? <Offered alternatives={state.alternatives} onClose={close} /> : null}
    </div>
  );
}

function Offered({ alternatives, onClose }: { alternatives: readonly Alternative[]; onClose: () => void }) {
  const say = useSay();
  const store = useAppStore();
  const [chosen, setChosen] = useState<Alternative | null>(null);
  // What is tried leaves the wall with the list it was picked from.
  useEffect(() => () => store.getState().showPreview(null), [store]);
  const [run, problems] = useRun();
  const choose = (alternative: Alternative) => {
    const next = alternative === chosen ? null : alternative;
    setChosen(next);
    store.getState().showPreview(next ? { moves: next.moves, label: LABEL } : null);
  };
  return (
    <section className="stack answer" aria-label={say('Orders to choose from')}>
      <p className="quiet">
        {alternatives.length > 1
          ? say('Each is as good as they come, and differs from the others. Pick one to see it on the wall.')
          : say('No second order is nearly as good as this one.')}
      </p>
      <div className="offers">
        {alternatives.map((alternative, index) => (
          <OfferedOrder
            key={alternative.moves.map((move) => JSON.stringify(move)).join()}
            alternative={alternative}
            number={index + 1}
            pressed={alternative === chosen}
            onPress={() => choose(alternative)}
          />
        ))}
      </div>
      <Complaint problems={problems} />
      <div className="row">
        {chosen ? (
          <button
            type="button"
            className="button solid"
            onClick={() => {
              if (run(rearrange(chosen.moves, LABEL))) onClose();
            }}
          >
            {say('Keep this order')}
          </button>
        ) : null}
        <button data-always type="button" className="button" onClick={onClose}>
          {say('Leave it as it was')}
        </button>
      </div>
    </section>
  );
}

function OfferedOrder(props: {
  alternative: Alternative;
  number: number;
  pressed: boolean;
  onPress: () => void;
}) {
  const { alternative, number, pressed, onPress } = props;
  const say = useSay();
  const project = useApp((app) => app.project);
  const seen = useMemo(() => moved(project, alternative.moves), [project, alternative]);
  const values = {
    number,
    score: alternative.score.total.toFixed(2),
    apart: Math.round(alternative.apart * 100),
  };
  return (
    <button
      type="button"
      className="offered-order"
      aria-pressed={pressed}
      aria-label={say(
        'Order {number}: scores {score}, {apart} % of its seams unlike the nearest other',
        values,
      )}
      onClick={onPress}
    >
      <SmallTop project={seen} label="" />
      <span>{say('{score} · {apart} % unlike', values)}</span>
    </button>
  );
}
