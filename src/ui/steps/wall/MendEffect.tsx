// The whole effect of a mend: one line, and when opened each term of the score and every clash that goes or comes.
import type { Effect } from '../../../arrange/mend/proposals';
import type { Finding } from '../../../balance/finding';
import { weightsOf } from '../../../balance/score/wishes';
import { useApp } from '../../app';
import { Apart } from '../../fields/Apart';
import { Fractions } from '../../fields/Fractions';
import { useSay } from '../../words';
import { ScoreTable } from './ScoreTable';
import { scorePair } from './scoreWords';

/** `of`: the words of the mend. */
export function MendEffect({ effect, of }: { effect: Effect; of: string }) {
  const say = useSay();
  return (
    <>
      <p className="effect">
        <EffectLine effect={effect} />
      </p>
      <details className="within effect-parts">
        <summary className="quiet">
          {say('What it changes')}
          <Apart of={of} />
        </summary>
        <ScoreTable of={of} before={effect.before.terms} after={effect.after.terms} />
        <Things title={say('Mended')} things={effect.mended} />
        <Things title={say('New')} things={effect.added} />
      </details>
    </>
  );
}

function Things({ title, things }: { title: string; things: readonly Finding[] }) {
  const say = useSay();
  if (things.length === 0) return null;
  return (
    <>
      <h4>{title}</h4>
      <ul>
        {things.map((thing) => (
          <li key={thing.id}>
            <Fractions text={say(thing.words)} /> <Measured thing={thing} />
          </li>
        ))}
      </ul>
    </>
  );
}

function Measured({ thing }: { thing: Finding }) {
  const say = useSay();
  return (
    <span className="quiet">
      <Fractions text={say(thing.measured)} />
    </span>
  );
}

function EffectLine({ effect }: { effect: Effect }) {
  const say = useSay();
  const gone = effect.mended.length;
  const come = effect.added.length;
  const weights = weightsOf(useApp((app) => app.project.preferences));
  const { verdict, ...score } = scorePair(effect.before.total, effect.after.total, weights);
  const first = effect.added[0];
  return (
    <>
      {say(gone === 1 ? 'Mends one thing' : 'Mends {gone} things', { gone })}
      {first ? (
        <>
          {say(come === 1 ? ', but brings one:' : ', but brings {come}, first:', { come })}{' '}
          <Fractions text={say(first.words)} />
        </>
      ) : (
        say(', brings nothing new.')
      )}{' '}
      {say(
        verdict === 'better'
          ? 'The top scores {after} points, better than {before} (a random layout scores 100; lower is better).'
          : verdict === 'worse'
            ? 'The top scores {after} points, worse than {before} (a random layout scores 100; lower is better).'
            : 'The top scores {after} points, as before (a random layout scores 100; lower is better).',
        score,
      )}
    </>
  );
}
