// The choice for findings: how alike two fabrics must be to clash.
import type { Clash } from '../../../balance/clashes/clashes';
import { changePreferences } from '../../../editing/commands/setting';
import { useApp, useAppStore } from '../../app';
import { useSay } from '../../words';
import { Fold } from './setting/Fold';

export function WhatCounts({ clashes }: { clashes: readonly Clash[] }) {
  const say = useSay();
  const store = useAppStore();
  const { lookalikes } = useApp((app) => app.project.preferences);
  const alike = clashes.filter((clash) => clash.likeness < 1).length;
  return (
    <Fold title="What counts as a clash" now={say('look-alike limit {value}', { value: lookalikes })}>
      <label className="field">
        <span className="label">
          {say('Two fabrics read as one below a colour difference of {value}', { value: lookalikes })}
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
              ? 'Look-alikes meet in one place now. 10 is about one step on a ten-step value scale; 0 leaves only the same fabric. Differences are by CIEDE2000.'
              : 'Look-alikes meet in {count} places now. 10 is about one step on a ten-step value scale; 0 leaves only the same fabric. Differences are by CIEDE2000.',
            { count: alike },
          )}
        </span>
      </label>
    </Fold>
  );
}
