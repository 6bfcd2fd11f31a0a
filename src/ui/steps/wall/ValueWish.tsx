// How values and colours should lie. A shuffle goes by it; whether it can be seen in grey is said in figures.
import { isSeen, valueOrderWords } from '../../../balance/evenness/valueOrder';
import { changePreferences } from '../../../editing/commands/setting';
import { COLOUR_INTENTS, type Preferences, VALUE_INTENTS } from '../../../model/project';
import { useApp, useAppStore } from '../../app';
import { useAnalysis } from '../../useAnalysis';
import { useSay } from '../../words';

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

export function ValueWish() {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const preview = useApp((app) => app.preview);
  const { balance } = useAnalysis(preview?.project ?? project);
  const { intent } = project.preferences;
  const set = (to: Partial<Preferences['intent']>) =>
    store.getState().run(changePreferences({ intent: { ...intent, ...to } }));
  const order = balance?.valueOrder?.wanted === intent.value ? balance.valueOrder : null;
  return (
    <div className="stack value-wish">
      <label className="field">
        <span className="label">{say('Values')}</span>
        <select
          value={intent.value}
          onChange={(event) => {
            const value = VALUE_INTENTS.find((one) => one === event.target.value);
            if (value) set({ value });
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
            if (colour) set({ colour });
          }}
        >
          {COLOUR_INTENTS.map((one) => (
            <option key={one} value={one}>
              {say(COLOUR_WORDS[one])}
            </option>
          ))}
        </select>
      </label>
      <p className="quiet" role="status">
        {intent.value === 'scattered' && intent.colour === 'scattered'
          ? say('The shuffle goes by these wishes: choose, then press Shuffle.')
          : preview === null
            ? order && isSeen(order)
              ? say('A shuffle goes by these wishes.')
              : say('The blocks stay as they hang until a shuffle follows: press Shuffle.')
            : null}
        {order
          ? ` ${valueOrderWords(order)
              .map((one) => say(one))
              .join(' ')}`
          : null}
      </p>
    </div>
  );
}
