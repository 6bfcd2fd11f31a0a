// The settings that the bar opens: how the wall is seen, what it hangs on, and the units of lengths.
import { changePreferences } from '../../editing/commands/setting';
import { useApp, useAppStore } from '../app';
import { Choice } from '../fields/Choice';
import { Popup } from '../popup/Popup';
import type { PopupProps } from '../popup/PopupButton';
import { SeeingMenu } from '../seeing/SeeingMenu';
import { useSay, useUnit } from '../words';

/** Which of them; both where the bar has room for one button. */
export type SettingsOf = 'seeing' | 'units' | 'both';

export function WallSettings({ of, ...popup }: PopupProps & { of: SettingsOf }) {
  return (
    <Popup {...popup} placement="bottom end">
      <div className="stack" style={{ minWidth: 250, padding: 6 }}>
        {of === 'units' ? null : (
          <div className="stack seeing">
            <SeeingMenu />
            <BackgroundField />
          </div>
        )}
        {of === 'seeing' ? null : <UnitField />}
      </div>
    </Popup>
  );
}

function BackgroundField() {
  const say = useSay();
  const store = useAppStore();
  const lightness = useApp((app) => app.project.preferences.wallLightness);
  return (
    <label className="field">
      <span className="label">
        {say('Wall background: {value} of 100', { value: Math.round(lightness) })}
      </span>
      <input
        type="range"
        min={0}
        max={100}
        value={lightness}
        style={{ accentColor: 'var(--solid)', padding: 0 }}
        onChange={(event) =>
          store.getState().run(changePreferences({ wallLightness: Number(event.target.value) }, true))
        }
      />
      <span className="spread quiet" aria-hidden>
        <span>{say('dark')}</span>
        <span>{say('light')}</span>
      </span>
    </label>
  );
}

function UnitField() {
  const store = useAppStore();
  const unit = useUnit();
  return (
    <Choice
      label="Lengths in"
      value={unit}
      options={[
        { value: 'in', label: 'inches' },
        { value: 'cm', label: 'centimetres' },
      ]}
      onChange={(next) => store.getState().measureIn(next)}
    />
  );
}
