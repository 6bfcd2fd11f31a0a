// The panel of the current step.
import { Suspense } from 'react';
import { useApp } from '../app';
import { STEP_PARTS } from '../stepParts';

export function StepPanel() {
  const Panel = STEP_PARTS[useApp((app) => app.step)].panel;
  return (
    <Suspense>
      <Panel />
    </Suspense>
  );
}
