// The foot of a step, always in sight: what is missing and where it is done, and the main action of the step.
import type { ReactNode } from 'react';
import { useApp, useAppStore } from '../app';
import { missing } from '../shell/missing';
import { useSay } from '../words';

/** The foot. `children` is the main action: one solid button, and at most one beside it. */
export function StepFoot({ children }: { children?: ReactNode }) {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const step = useApp((app) => app.step);
  const { words, at } = missing(project, step);
  return (
    <footer className="step-foot">
      <p>{say(words)}</p>
      <div className="row">
        {children}
        {at === null || at.step === step ? null : (
          <button type="button" className="button" onClick={() => store.getState().goTo(at.step)}>
            {say(at.name)}
          </button>
        )}
      </div>
    </footer>
  );
}
