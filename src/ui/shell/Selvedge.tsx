// The selvedge: the list of steps, drawn as the printed edge of cloth. Each step has a dot that is filled by its progress.
import { useMemo } from 'react';
import { STEPS, type Step } from '../../store/app';
import { useApp, useAppStore } from '../app';
import { useSay } from '../words';
import { type StepState, stepStates } from './stepStates';

const STEP_NAMES: Readonly<Record<Step, string>> = {
  fabrics: 'Fabrics',
  sets: 'Strip sets',
  wedges: 'Wedges',
  blocks: 'Blocks',
  wall: 'Wall',
  finishing: 'Finishing',
};

export function Selvedge() {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const step = useApp((app) => app.step);
  const states = useMemo(() => stepStates(project), [project]);
  return (
    <nav className="selvedge" aria-label={say('Order of work')}>
      <ol>
        {STEPS.map((one) => (
          <li key={one}>
            <button
              type="button"
              className="dot-step"
              aria-current={one === step ? 'step' : undefined}
              onClick={() => store.getState().goTo(one)}
            >
              <Dot state={states[one]} current={one === step} />
              <span className="name">{say(STEP_NAMES[one])}</span>
              <span className="figure">{say(states[one].figure)}</span>
            </button>
          </li>
        ))}
      </ol>
    </nav>
  );
}

function Dot({ state, current }: { state: StepState; current: boolean }) {
  const filled = Math.min(1, Math.max(0, state.done));
  const around = 2 * Math.PI * 5;
  return (
    <svg viewBox="-12 -12 24 24" width="24" height="24" aria-hidden>
      <circle r="10" fill="none" stroke="currentColor" strokeWidth={current ? 1.6 : 1} />
      <circle
        r="5"
        fill="none"
        stroke="currentColor"
        strokeWidth="10"
        strokeDasharray={`${around * filled} ${around}`}
        transform="rotate(-90)"
      />
    </svg>
  );
}
