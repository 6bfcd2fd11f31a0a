// What a shuffle may move and what it minds most.
import type { Scopes } from '../../../arrange/decisions';
import { TERM_NAMES } from '../../../balance/terms';
import { weightsOf } from '../../../balance/wishes';
import { changePreferences } from '../../../editing/setting';
import { COLOUR_INTENTS, type Preferences, VALUE_INTENTS } from '../../../model/project';
import type { Wishes } from '../../../store/shuffling';
import { useApp, useAppStore } from '../../app';
import { CountField } from '../../fields/CountField';
import { useSay } from '../../words';
import { TERM_WORDS } from './ScoreTable';

const SCOPE_WORDS: readonly (readonly [keyof Scopes, string])[] = [
  ['swap', 'Swap blocks'],
  ['turn', 'Turn blocks'],
  ['shiftCorners', 'Corners on the other places, where they are not on yet'],
  ['trade', 'Trade wedges between blocks that are not sewn'],
  ['strips', 'Order of strips in sets that are not sewn'],
];

const VALUE_WORDS: Readonly<Record<Preferences['intent']['value'], string>> = {
  scattered: 'Lights and darks scattered',
  'light middle': 'Light in the middle',
  'dark middle': 'Dark in the middle',
  'light to dark': 'Light to dark across',
};

const COLOUR_WORDS: Readonly<Record<Preferences['intent']['colour'], string>> = {
  scattered: 'Colours scattered',
  'families together': 'Colour families together',
};

export function ShuffleWishes({
  wishes,
  onChange,
}: {
  wishes: Wishes;
  onChange: (wishes: Partial<Wishes>) => void;
}) {
  const say = useSay();
  const store = useAppStore();
  const preferences = useApp((app) => app.project.preferences);
  const { intent, lookalikes } = preferences;
  const weights = weightsOf(preferences);
  const { scopes } = wishes;
  const set = (to: Partial<Preferences>) => store.getState().run(changePreferences(to));
  return (
    <details className="wishes">
      <summary>{say('What it may move, and what it minds')}</summary>
      <div className="stack" style={{ marginTop: 8 }}>
        <div>
          {SCOPE_WORDS.map(([scope, words]) => (
            <label key={scope} className="check" style={{ display: 'flex' }}>
              <input
                type="checkbox"
                checked={scopes[scope]}
                onChange={(event) => onChange({ scopes: { ...scopes, [scope]: event.target.checked } })}
              />
              {say(words)}
            </label>
          ))}
        </div>
        <label className="field">
          <span className="label">{say('Values')}</span>
          <select
            value={intent.value}
            onChange={(event) => {
              const value = VALUE_INTENTS.find((one) => one === event.target.value);
              if (value) set({ intent: { ...intent, value } });
            }}
          >
            {VALUE_INTENTS.map((one) => (
              <option key={one} value={one}>
                {say(VALUE_WORDS[one])}
              </option>
            ))}
          </select>
        </label>
        <label className="field">
          <span className="label">{say('Colours')}</span>
          <select
            value={intent.colour}
            onChange={(event) => {
              const colour = COLOUR_INTENTS.find((one) => one === event.target.value);
              if (colour) set({ intent: { ...intent, colour } });
            }}
          >
            {COLOUR_INTENTS.map((one) => (
              <option key={one} value={one}>
                {say(COLOUR_WORDS[one])}
              </option>
            ))}
          </select>
        </label>
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
                onChange={(event) => {
                  const to = { weights: { ...weights, [name]: Number(event.target.value) } };
                  store.getState().run(changePreferences(to, true));
                }}
              />
              <output>{weights[name]}</output>
            </label>
          ))}
        </fieldset>
        <label className="field">
          <span className="label">
            {say('Two cloths read as one below a colour difference of {value}', { value: lookalikes })}
          </span>
          <input
            type="range"
            min={0}
            max={30}
            value={lookalikes}
            style={{ accentColor: 'var(--solid)', padding: 0 }}
            onChange={(event) => {
              const command = changePreferences({ lookalikes: Number(event.target.value) }, true);
              store.getState().run(command);
            }}
          />
          <span className="quiet">{say('CIEDE2000; 10 is about one step on a ten-step value scale')}</span>
        </label>
        <CountField
          label="Seconds to look"
          value={wishes.seconds}
          least={1}
          most={120}
          onCommit={(seconds) => {
            onChange({ seconds });
            return [];
          }}
        />
      </div>
    </details>
  );
}
