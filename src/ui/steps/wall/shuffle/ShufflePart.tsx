// The shuffle for balance: how values should lie, its options, and what it found. It is begun, stopped and used in the foot.
import { useEffect, useRef } from 'react';
import { askedOf, capSeconds } from '../../../../arrange/search/effort';
import { weightsOf } from '../../../../balance/score/wishes';
import type { Problem } from '../../../../model/result';
import type { ShuffleState } from '../../../../store/shuffling';
import { useApp, useAppStore } from '../../../app';
import { Complaint } from '../../../fields/Complaint';
import { Fractions } from '../../../fields/Fractions';
import { useShuffling } from '../../../session';
import { useSay } from '../../../words';
import { AlternativesPart } from '../AlternativesPart';
import { ListMoves } from '../byHand/ListMoves';
import { ScoreTable } from '../ScoreTable';
import { ValueWish } from '../ValueWish';
import { ShuffleWishes } from './ShuffleWishes';
import { countedWords } from './shuffleNews';
import { whyNoShuffle } from './whyNoShuffle';

/** Number of blocks from which a shuffle takes unexpectedly long: the bound alone takes seconds (cubic in blocks). */
const MANY = 600;

export function ShufflePart() {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const size = project.wall.cells.filter((cell) => cell !== null).length;
  const { shuffle: state } = useShuffling();
  const asked = askedOf(project.preferences);
  const why = whyNoShuffle(project);
  return (
    <section aria-label={say('Shuffle for balance')}>
      <h3>{say('Shuffle for balance')}</h3>
      <p className="quiet">
        {say(
          asked.scopes.trade || asked.scopes.strips
            ? 'Moves what is free to find the layout in which fabrics meet themselves least and values lie as you wish. Pinned blocks stay.'
            : 'Moves what is free to find the layout in which fabrics meet themselves least across the seams between blocks, and values lie as you wish. Blocks stay as they are inside. Pinned blocks stay.',
        )}
      </p>
      {why === 'bare' ? (
        <div className="row" style={{ marginTop: 8 }}>
          <p>{say('The blocks have no wedges yet, so there is nothing to shuffle.')}</p>
          <button type="button" className="button" onClick={() => store.getState().goTo('blocks')}>
            {say('Choose wedges')}
          </button>
        </div>
      ) : null}
      {why === 'unmoving' || why === 'unminding' ? (
        <p style={{ marginTop: 8 }}>
          {say(
            why === 'unmoving'
              ? 'Nothing is allowed to move yet: tick something in the shuffle options below.'
              : 'Nothing counts yet: give at least one part of the score some weight below.',
          )}
        </p>
      ) : null}
      <Answer state={state} />
      <Complaint problems={state.kind === 'idle' ? state.problems : []} />
      <ValueWish />
      {state.kind === 'idle' && size > MANY ? (
        <p className="quiet" style={{ marginTop: 8 }}>
          {say(
            'With {count} blocks a longer search still finds a slightly better layout after half a minute: choose Long below. How close it comes to the best possible is worked out last, which takes a while; Stop ends that too, with the layout found.',
            { count: size },
          )}
        </p>
      ) : null}
      {state.kind === 'idle' ? <AlternativesPart disabled={why !== null} /> : null}
      {/* It stays while the shuffle runs, so that it is still open afterwards. */}
      <div hidden={state.kind === 'running' || state.kind === 'proving'}>
        <ShuffleWishes />
      </div>
    </section>
  );
}

/** What searching on is, and where it has not begun, its button. */
function GoOn({ problems }: { problems: readonly Problem[] | null }) {
  const say = useSay();
  const { goOn } = useShuffling();
  return (
    <>
      <p className="quiet">
        {say(
          'Searching on goes through all other layouts, until none can be better. With 12 blocks that takes seconds, with 16 mostly minutes; with more it may take hours. You can stop it and go on where it stopped, as long as this page stays open and the quilt stays as it is.',
        )}
      </p>
      {problems ? (
        <>
          <div>
            <button type="button" className="button" onClick={goOn}>
              {say('Search on')}
            </button>
          </div>
          <Complaint problems={problems} />
        </>
      ) : null}
    </>
  );
}

/** What the shuffle found; to use it or not is in the foot. */
function Answer({ state }: { state: ShuffleState }) {
  const say = useSay();
  const shown = useRef<HTMLDivElement>(null);
  const preferences = useApp((app) => app.project.preferences);
  const { effort } = askedOf(preferences);
  const done = state.kind === 'done';
  useEffect(() => {
    if (done) shown.current?.scrollIntoView({ block: 'nearest' });
  }, [done]);
  if (state.kind === 'proving') {
    return (
      <div className="stack answer">
        <p>
          <strong>{say('Searching all layouts')}</strong>
        </p>
        <GoOn problems={null} />
        <p className="quiet">{say('The wall shows the best layout so far; nothing is changed yet.')}</p>
      </div>
    );
  }
  if (state.kind !== 'done') return null;
  const { result, keep } = state;
  const counted = countedWords(result, weightsOf(preferences));
  return (
    <div ref={shown} className="stack answer">
      <p>
        <strong>
          <Fractions text={say(result.verdictWords)} />
        </strong>
      </p>
      {counted ? (
        <p className="quiet">
          <Fractions text={say(counted)} />
        </p>
      ) : null}
      {result.notBounded ? <p className="quiet">{say(result.notBounded)}</p> : null}
      {result.capped ? (
        <p className="quiet">
          {say('Stopped after {seconds} s, before all moves were tried: another run may end differently.', {
            seconds: capSeconds(effort),
          })}
        </p>
      ) : null}
      {result.left ? <GoOn problems={state.problems ?? []} /> : null}
      {keep === null ? (
        <p>{say('No move that is allowed makes the top better.')}</p>
      ) : (
        <>
          <p className="quiet">{say('The wall shows the new layout; nothing is changed yet.')}</p>
          <ScoreTable of={say('the new layout')} before={result.before.terms} after={result.told} />
          <ListMoves />
        </>
      )}
    </div>
  );
}
