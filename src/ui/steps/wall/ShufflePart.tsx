// The shuffle for balance: what it may move, what it minds most, how long it looks; then its answer to accept or leave.
import { Shuffle as ShuffleIcon, Square } from 'lucide-react';
import { useState } from 'react';
import type { ShuffleWish } from '../../../arrange/shuffle';
import { weightsOf } from '../../../balance/wishes';
import { rearrange } from '../../../editing/wall';
import { useApp } from '../../app';
import { Complaint, useRun } from '../../fields/Complaint';
import { DrawField } from '../../fields/DrawField';
import { Fractions } from '../../fields/Fractions';
import { useSay } from '../../words';
import { AlternativesPart } from './AlternativesPart';
import { ScoreTable } from './ScoreTable';
import { ShuffleWishes } from './ShuffleWishes';
import { type ShuffleState, useShuffle } from './shuffleState';
import type { Wishes } from './wishes';

export function ShufflePart() {
  const say = useSay();
  const hung = useApp((app) => app.project.wall.cells.some((cell) => cell !== null));
  const preferences = useApp((app) => app.project.preferences);
  const { intent, lookalikes } = preferences;
  const { state, start, stop, leave } = useShuffle();
  const [seed, setSeed] = useState(1);
  const [wishes, setWishes] = useState<Wishes>({
    scopes: { swap: true, turn: true, shiftCorners: true, trade: false, strips: false },
    seconds: 4,
  });
  const wish: ShuffleWish = {
    seed,
    scopes: wishes.scopes,
    weights: weightsOf(preferences),
    intent,
    lookalikes,
    budget: { milliseconds: wishes.seconds * 1000 },
  };
  return (
    <section aria-label={say('Shuffle for balance')}>
      <h3>{say('Shuffle for balance')}</h3>
      <p className="quiet">
        {say(
          'Turns and swaps what is free until no fabric meets itself and lights and darks are even. Pins hold.',
        )}
      </p>
      {state.kind === 'running' ? null : (
        <div style={{ marginTop: 10 }}>
          <DrawField
            value={seed}
            most={9999}
            same="The same number begins the shuffle in the same way."
            onChange={setSeed}
          >
            <button type="button" className="button solid" disabled={!hung} onClick={() => start(wish)}>
              <ShuffleIcon size={16} aria-hidden /> {say('Shuffle')}
            </button>
          </DrawField>
        </div>
      )}
      <Running state={state} onStop={stop} />
      <Answer state={state} onLeave={leave} />
      <Complaint problems={state.kind === 'idle' ? state.problems : []} />
      {state.kind === 'idle' ? <AlternativesPart wish={wish} disabled={!hung} /> : null}
      {state.kind === 'running' ? null : <ShuffleWishes wishes={wishes} onChange={setWishes} />}
    </section>
  );
}

function Running({ state, onStop }: { state: ShuffleState; onStop: () => void }) {
  const say = useSay();
  if (state.kind !== 'running') return null;
  const share = Math.round((state.progress?.share ?? 0) * 100);
  return (
    <div className="stack" style={{ marginTop: 10 }}>
      <div
        className="progress"
        role="progressbar"
        aria-label={say('Shuffling')}
        aria-valuenow={share}
        aria-valuemin={0}
        aria-valuemax={100}
      >
        <div style={{ transform: `scaleX(${share / 100})` }} />
      </div>
      <div className="spread">
        <p className="quiet">
          {state.progress
            ? say('{steps} moves tried; score {best}, from {start}.', {
                steps: state.progress.steps.toLocaleString('en'),
                best: state.progress.best.toFixed(2),
                start: state.progress.start.toFixed(2),
              })
            : say('Starting …')}
        </p>
        <button type="button" className="button" onClick={onStop}>
          <Square size={14} aria-hidden /> {say('Stop')}
        </button>
      </div>
    </div>
  );
}

function Answer({ state, onLeave }: { state: ShuffleState; onLeave: () => void }) {
  const say = useSay();
  const [run, problems] = useRun();
  if (state.kind !== 'done') return null;
  const { result } = state;
  return (
    <div className="stack answer" role="status">
      <p>
        <strong>
          <Fractions text={say(result.verdictWords)} />
        </strong>
      </p>
      {result.moves.length === 0 ? (
        <p>{say('Nothing it may move makes the top better.')}</p>
      ) : (
        <>
          <p className="quiet">{say('The wall shows the new order; nothing is kept yet.')}</p>
          <ScoreTable before={result.before.terms} after={result.after.terms} />
        </>
      )}
      <Complaint problems={problems} />
      <div className="row">
        {result.moves.length > 0 ? (
          <button
            type="button"
            className="button solid"
            onClick={() => {
              if (run(rearrange(result.moves, result.label))) onLeave();
            }}
          >
            {say('Keep this order')}
          </button>
        ) : null}
        <button data-always type="button" className="button" onClick={onLeave}>
          {say(result.moves.length > 0 ? 'Leave it as it was' : 'Close')}
        </button>
      </div>
    </div>
  );
}
