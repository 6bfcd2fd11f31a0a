// The panel of this step.
import { StepHeading } from './StepHeading';

export function WedgesStep() {
  return <StepHeading title="Wedges" line="" />;
}
