// The parts of finishing at the top of the panel: one is on show, in the panel and on the large area.
import { FINISHING_PARTS } from '../../../store/finishing';
import { useApp, useAppStore } from '../../app';
import { Toolbar } from '../../fields/Toolbar';
import { useSay } from '../../words';
import { PART_NAMES } from './parts';

export function PartsList() {
  const say = useSay();
  const store = useAppStore();
  const chosen = useApp((app) => app.laid.part);
  return (
    <nav aria-label={say('Parts of finishing')}>
      <Toolbar className="parts" aria-label={say('Parts')}>
        {FINISHING_PARTS.map((part) => (
          <button
            key={part}
            type="button"
            className="button"
            aria-current={part === chosen ? 'true' : undefined}
            onClick={() => store.getState().lay({ part })}
          >
            {say(PART_NAMES[part])}
          </button>
        ))}
      </Toolbar>
    </nav>
  );
}
