// The panel of this step.
import { StepHeading } from './StepHeading';

export function SetsStep() {
  return <StepHeading title="Sets" line="" />;
}
