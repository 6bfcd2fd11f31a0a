// The panel of the current step.
import { useApp } from '../app';
import { Shown } from '../Shown';
import { STEP_PANELS } from '../stepParts';

export function StepPanel() {
  const step = useApp((app) => app.step);
  return <Shown key={step} part={STEP_PANELS[step]} given={{}} />;
}
