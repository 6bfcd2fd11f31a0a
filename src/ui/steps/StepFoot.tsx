// The foot of a step, always in sight: what is missing and where it is done, and the main action of the step.
import { type ReactNode, useDeferredValue, useMemo } from 'react';
import { useApp, useAppStore } from '../app';
import { Fractions } from '../fields/Fractions';
import { missing } from '../shell/missing';
import { useAnalysis } from '../useAnalysis';
import { useSay } from '../words';

/** The foot. `children` is the main action: one solid button, and at most one beside it. */
export function StepFoot({ children }: { children?: ReactNode }) {
  const say = useSay();
  const store = useAppStore();
  // A moment later than what is typed: a plan of hundreds of blocks takes a while.
  const project = useDeferredValue(useApp((app) => app.project));
  const step = useApp((app) => app.step);
  const { balance } = useAnalysis(project);
  const things = balance?.project === project ? balance.findings.length : null;
  const { words, at } = useMemo(() => missing(project, step, things), [project, step, things]);
  return (
    <footer className="step-foot">
      <p>
        <Fractions text={say(words)} />
      </p>
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
