// The panel of this step.
import { StepHeading } from './StepHeading';

export function FinishingStep() {
  return <StepHeading title="Finishing" line="" />;
}
