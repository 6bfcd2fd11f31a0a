// The options of a shuffle: what it may move, how long it searches, and the weights of the score.
import type { Scopes } from '../../../../arrange/decisions';
import { askedOf, capSeconds, EFFORT_NAMES, type Effort } from '../../../../arrange/search/effort';
import { TERM_NAMES } from '../../../../balance/score/weights';
import { weightsOf } from '../../../../balance/score/wishes';
import { changePreferences } from '../../../../editing/commands/setting';
import { meaningOf } from '../../../../model/words/glossary';
import { useApp, useAppStore } from '../../../app';
import { DrawField } from '../../../fields/DrawField';
import { useSay } from '../../../words';
import { TERM_WORDS } from '../ScoreTable';

const SCOPE_WORDS: readonly (readonly [keyof Scopes, string])[] = [
  ['swap', 'Swap blocks'],
  ['turn', 'Turn blocks'],
  ['shiftCorners', 'Turn corners by one wedge, if not sewn'],
  ['trade', 'Trade wedges between blocks that are not sewn'],
  ['strips', 'Order of strips in sets that are not sewn'],
];

const EFFORT_WORDS: Readonly<Record<Effort, string>> = { short: 'Short', longer: 'Longer', long: 'Long' };

export function ShuffleWishes() {
  const say = useSay();
  const store = useAppStore();
  const preferences = useApp((app) => app.project.preferences);
  const weights = weightsOf(preferences);
  const asked = askedOf(preferences);
  const { scopes, effort } = asked;
  const ask = (to: Partial<typeof asked>) =>
    store.getState().run(changePreferences({ shuffle: { ...asked, ...to } }));
  return (
    <details className="wishes">
      <summary>{say('Shuffle options')}</summary>
      <div className="stack" style={{ marginTop: 8 }}>
        <div>
          {SCOPE_WORDS.map(([scope, words]) => (
            <label key={scope} className="check">
              <input
                type="checkbox"
                checked={scopes[scope]}
                onChange={(event) => ask({ scopes: { ...scopes, [scope]: event.target.checked } })}
              />
              {say(words)}
            </label>
          ))}
        </div>
        <fieldset className="weights">
          <legend className="quiet">{say('How much each counts')}</legend>
          {TERM_NAMES.map((name) => (
            <label key={name}>
              <span>{say(TERM_WORDS[name])}</span>
              <input
                type="range"
                min={0}
                max={6}
                step={0.5}
                value={weights[name]}
                aria-valuetext={say('{weight}', { weight: weights[name] })}
                onChange={(event) => {
                  const to = { weights: { ...weights, [name]: Number(event.target.value) } };
                  store.getState().run(changePreferences(to, true));
                }}
              />
              <output>{say('{weight}', { weight: weights[name] })}</output>
            </label>
          ))}
        </fieldset>
        <DrawField
          value={asked.seed}
          most={9999}
          same={meaningOf('shuffle number')}
          onChange={(seed) => ask({ seed })}
        />
        <label className="field">
          <span className="label">{say('Search time')}</span>
          <select
            value={effort}
            onChange={(event) => {
              const next = EFFORT_NAMES.find((one) => one === event.target.value);
              if (next) ask({ effort: next });
            }}
          >
            {EFFORT_NAMES.map((one) => (
              <option key={one} value={one}>
                {say(EFFORT_WORDS[one])}
              </option>
            ))}
          </select>
          <span className="quiet">
            {say(
              'Counted in moves tried, so that the same number gives the same layout; it stops after {seconds} s in any case.',
              { seconds: capSeconds(effort) },
            )}
          </span>
        </label>
      </div>
    </details>
  );
}
