// The choices for findings: how alike two fabrics must be to clash, and how values and colours should lie. An arrangement that is
// wanted is no finding.
import type { Clash } from '../../../balance/clashes/clashes';
import { changePreferences } from '../../../editing/commands/setting';
import { COLOUR_INTENTS, type Preferences, VALUE_INTENTS } from '../../../model/project';
import { useApp, useAppStore } from '../../app';
import { useSay } from '../../words';
import { Fold } from './setting/Fold';

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

export function WhatCounts({ clashes }: { clashes: readonly Clash[] }) {
  const say = useSay();
  const store = useAppStore();
  const { intent, lookalikes } = useApp((app) => app.project.preferences);
  const set = (to: Partial<Preferences>) => store.getState().run(changePreferences(to));
  const alike = clashes.filter((clash) => clash.likeness < 1).length;
  return (
    <Fold title="What counts as a clash" now={say('alike below {value}', { value: lookalikes })}>
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
        <span className="quiet">
          {say(
            alike === 1
              ? 'Look-alikes meet in one place now. 10 is about a step on a ten-step value scale (CIEDE2000); 0 leaves only the same fabric.'
              : 'Look-alikes meet in {count} places now. 10 is about a step on a ten-step value scale (CIEDE2000); 0 leaves only the same fabric.',
            { count: alike },
          )}
        </span>
      </label>
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
    </Fold>
  );
}
