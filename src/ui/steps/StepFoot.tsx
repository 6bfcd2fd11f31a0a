// The foot of a step, always in sight: what is missing and where it is done, and the main action of the step.
import { type ReactNode, useDeferredValue, useMemo } from 'react';
import type { Phrase } from '../../model/phrase';
import type { Step } from '../../store/app';
import { useApp, useAppStore } from '../app';
import { Fractions } from '../fields/Fractions';
import { missing } from '../shell/missing';
import { useAnalysis } from '../useAnalysis';
import { useSay } from '../words';
import { SkipChoices } from './SkipChoices';

/**
 * The foot. `children` is the main action: one solid button, and at most one beside it. `instead` stands for what is missing, while
 * something is done to which that is no answer.
 */
export function StepFoot({ children, instead }: { children?: ReactNode; instead?: Phrase }) {
  const say = useSay();
  const store = useAppStore();
  // A moment later than what is typed: a plan of hundreds of blocks takes a while.
  const project = useDeferredValue(useApp((app) => app.project));
  const step = useApp((app) => app.step);
  const { balance } = useAnalysis(project);
  const things = balance?.project === project ? balance.findings.length : null;
  const { words, at } = useMemo(() => missing(project, step, things), [project, step, things]);
  const elsewhere = !instead && at !== null && at.step !== step;
  return (
    <footer className={elsewhere && isNext(step, at.step) ? 'step-foot leads-on' : 'step-foot'}>
      <p>
        <Fractions text={say(instead ?? words)} />
      </p>
      <div className="row">
        {children}
        {elsewhere ? (
          <button
            type="button"
            className="button solid to-step"
            onClick={() => store.getState().goTo(at.step)}
          >
            {say(at.name)}
          </button>
        ) : null}
        <SkipChoices />
      </div>
    </footer>
  );
}

/**
 * Whether the way to the other step is the main action rather than what the step itself does. A whole quilt is laid out from the
 * fabrics, whatever it lacks; a planned quilt is still cut at the wedges and arranged on the wall.
 */
function isNext(step: Step, at: Step): boolean {
  const planned = at === 'wall' || at === 'finishing';
  if (step === 'fabrics') return planned;
  if (step === 'wedges') return !planned;
  return step !== 'wall';
}
