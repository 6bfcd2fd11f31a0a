// The shuffle for balance: its options and its progress; then its answer, to keep or leave.
import { Shuffle as ShuffleIcon, Square } from 'lucide-react';
import { askedOf, capSeconds } from '../../../arrange/search/effort';
import { TERM_NAMES } from '../../../balance/score/terms';
import { weightsOf } from '../../../balance/score/wishes';
import { changePreferences } from '../../../editing/commands/setting';
import { hasWedges } from '../../../model/find';
import type { ShuffleState } from '../../../store/shuffling';
import { useApp, useAppStore } from '../../app';
import { Complaint, useRun } from '../../fields/Complaint';
import { DrawField } from '../../fields/DrawField';
import { Fractions } from '../../fields/Fractions';
import { useShuffling } from '../../session';
import { useSay } from '../../words';
import { AlternativesPart } from './AlternativesPart';
import { ScoreTable } from './ScoreTable';
import { ShuffleWishes } from './ShuffleWishes';
import { scorePair } from './scoreWords';

/** Number of blocks from which a shuffle takes unexpectedly long: the bound alone takes seconds (cubic in blocks). */
const MANY = 600;

export function ShufflePart() {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const size = project.wall.cells.filter((cell) => cell !== null).length;
  const bare = size > 0 && !hasWedges(project);
  const { shuffle: state, start, stop, leave } = useShuffling();
  const asked = askedOf(project.preferences);
  const weights = weightsOf(project.preferences);
  const unmoving = Object.values(asked.scopes).every((free) => !free);
  const unminding = TERM_NAMES.every((name) => weights[name] === 0);
  const idle = size === 0 || bare || unmoving || unminding;
  return (
    <section aria-label={say('Shuffle for balance')}>
      <h3>{say('Shuffle for balance')}</h3>
      <p className="quiet">
        {say(
          asked.scopes.trade || asked.scopes.strips
            ? 'Moves what is free and looks for the order in which fabrics meet themselves least and lights and darks lie even. Pins hold.'
            : 'Moves what is free and looks for the order in which fabrics meet themselves least across the seams between blocks, and lights and darks lie even. Blocks stay as they are inside. Pins hold.',
        )}
      </p>
      {state.kind === 'running' ? null : (
        <div style={{ marginTop: 10 }}>
          <DrawField
            value={asked.seed}
            most={9999}
            same="From the same start the same number gives the same order again."
            onChange={(seed) => store.getState().run(changePreferences({ shuffle: { ...asked, seed } }))}
          >
            <button type="button" className="button solid" disabled={idle} onClick={start}>
              <ShuffleIcon size={16} aria-hidden /> {say('Shuffle')}
            </button>
          </DrawField>
        </div>
      )}
      {bare ? (
        <div className="row" style={{ marginTop: 8 }}>
          <p>{say('The blocks have no wedges yet, so there is nothing to shuffle.')}</p>
          <button type="button" className="button" onClick={() => store.getState().goTo('blocks')}>
            {say('Choose wedges')}
          </button>
        </div>
      ) : null}
      {size > 0 && !bare && (unmoving || unminding) ? (
        <p style={{ marginTop: 8 }}>
          {say(
            unmoving
              ? 'It may move nothing yet: tick below what it may move.'
              : 'Nothing counts yet: give at least one part of the score some weight below.',
          )}
        </p>
      ) : null}
      {state.kind === 'idle' && size > MANY ? (
        <p className="quiet" style={{ marginTop: 8 }}>
          {say(
            'With {count} blocks the order goes on getting a little better for half a minute and more: Long can be chosen below. How far it is from the best is worked out last, which takes a while; Stop ends that too, with the order found.',
            { count: size },
          )}
        </p>
      ) : null}
      <Running state={state} onStop={stop} />
      <Answer state={state} onLeave={leave} />
      <Complaint problems={state.kind === 'idle' ? state.problems : []} />
      {state.kind === 'idle' ? <AlternativesPart disabled={idle} /> : null}
      {/* It stays while the shuffle runs, so that it is still open afterwards. */}
      <div hidden={state.kind === 'running'}>
        <ShuffleWishes />
      </div>
    </section>
  );
}

function Running({ state, onStop }: { state: ShuffleState; onStop: () => void }) {
  const say = useSay();
  const weights = weightsOf(useApp((app) => app.project.preferences));
  if (state.kind !== 'running') return null;
  const share = Math.round((state.progress?.share ?? 0) * 100);
  const { before, after } = scorePair(state.progress?.start ?? 0, state.progress?.best ?? 0, weights);
  const score = { before, after };
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
          {state.progress?.closing
            ? say('Score {after} points, from {before}. Working out how much better any order could be …', {
                ...score,
              })
            : state.progress
              ? say('{steps} moves tried; score {after} points, from {before}.', {
                  steps: state.progress.steps.toLocaleString('en'),
                  ...score,
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
  const { effort } = askedOf(useApp((app) => app.project.preferences));
  if (state.kind !== 'done') return null;
  const { result, keep } = state;
  return (
    <div className="stack answer" role="status">
      <p>
        <strong>
          <Fractions text={say(result.verdictWords)} />
        </strong>
      </p>
      {result.capped ? (
        <p className="quiet">
          {say('Stopped after {seconds} s, before all moves were tried: another run may end otherwise.', {
            seconds: capSeconds(effort),
          })}
        </p>
      ) : null}
      {keep === null ? (
        <p>{say('Nothing it may move makes the top better.')}</p>
      ) : (
        <>
          <p className="quiet">{say('The wall shows the new order; nothing is kept yet.')}</p>
          <ScoreTable before={result.before.terms} after={result.after.terms} />
        </>
      )}
      <Complaint problems={problems} />
      <div className="row">
        {keep ? (
          <button
            type="button"
            className="button solid"
            onClick={() => {
              if (run(keep)) onLeave();
            }}
          >
            {say('Keep this order')}
          </button>
        ) : null}
        <button data-always type="button" className="button" onClick={onLeave}>
          {say(keep ? 'Leave it as it was' : 'Close')}
        </button>
      </div>
    </div>
  );
}
