// The panel while sewn blocks are entered: which keys there are, and a set for a wedge whose set is not known.
import { lettersSayTips } from '../../../editing/entering/entry';
import { useApp } from '../../app';
import { ENTERING_KEYS } from '../../keys';
import { useSay } from '../../words';
import { SewnSet } from './SewnSet';

export function EnteringHelp() {
  const say = useSay();
  const stripSets = useApp((app) => app.project.stripSets);
  const letters = stripSets.map(({ label }) => label.toUpperCase());
  const long = letters.find((label) => letters.some((one) => one !== label && one.startsWith(label)));
  return (
    <>
      <section aria-labelledby="keys-title">
        <h3 id="keys-title">{say('Keys')}</h3>
        <dl className="entry-keys">
          {ENTERING_KEYS.map(({ shown, does }) => (
            <div key={shown}>
              <dt>
                <kbd>{say(shown)}</kbd>
              </dt>
              <dd>{say(does)}</dd>
            </div>
          ))}
        </dl>
        {lettersSayTips(stripSets) ? (
          <p className="quiet">{say('U and D say the tip too, as no set begins with them.')}</p>
        ) : null}
        {long ? (
          <p className="quiet">
            {say(
              'Longer names take both letters. After {set} alone press Space, as a longer name begins with it.',
              {
                set: long,
              },
            )}
          </p>
        ) : null}
      </section>
      <SewnSet />
    </>
  );
}
