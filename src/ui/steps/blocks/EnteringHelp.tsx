// The panel while sewn blocks are entered: which keys there are, and what to enter for wedges whose sets are not known.
import { useApp, useAppStore } from '../../app';
import { useSay } from '../../words';
import { StepHeading } from '../StepHeading';

const KEYS = [
  ['A … Z', 'the set; up and down take turns by themselves, and the place moves on'],
  ['↑ ↓', 'the tip of the wedge just put in, or of the first one before its letter'],
  ['← →', 'to another place'],
  ['Backspace', 'takes the last wedge out; before the first one, the block before comes back'],
  ['Enter', 'the next block'],
  ['+', 'corrects the count of a set that gave more wedges'],
] as const;

export function EnteringHelp() {
  const say = useSay();
  const store = useAppStore();
  const stripSets = useApp((app) => app.project.stripSets);
  const letters = stripSets.map(({ label }) => label.toUpperCase());
  const tips = ['U', 'D'].filter((key) => !letters.some((label) => label.startsWith(key)));
  const long = letters.find((label) => letters.some((one) => one !== label && one.startsWith(label)));
  return (
    <>
      <StepHeading
        title="Blocks"
        line="Enter sewn blocks as they are: one key to a wedge, clockwise from the top."
      />
      <section aria-labelledby="keys-title">
        <h3 id="keys-title">{say('Keys')}</h3>
        <dl className="entry-keys">
          {KEYS.map(([key, what]) => (
            <div key={key}>
              <dt>
                <kbd>{say(key)}</kbd>
              </dt>
              <dd>{say(what)}</dd>
            </div>
          ))}
        </dl>
        {tips.length > 0 ? (
          <p className="quiet">
            {say('{keys} say the tip too, as no set begins with them.', { keys: { list: tips } })}
          </p>
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
      <section aria-labelledby="unknown-title">
        <h3 id="unknown-title">{say('A wedge whose set is not here')}</h3>
        <div className="stack">
          <p>
            {say(
              'Add a strip set for it: its fabrics in order, the rim of tip-up wedges first, with widths measured on the block plus the seams. Then it has a letter here, and its count is corrected as you enter it.',
            )}
          </p>
          <div>
            <button type="button" className="button" onClick={() => store.getState().goTo('sets')}>
              {say('Go to the strip sets')}
            </button>
          </div>
        </div>
      </section>
    </>
  );
}
