// The panel of the current step.
import { useApp } from '../app';
import { Shown } from '../Shown';
import { STEP_PARTS } from '../stepParts';

export function StepPanel() {
  const step = useApp((app) => app.step);
  return <Shown key={step} part={STEP_PARTS[step].panel} given={{}} />;
}
