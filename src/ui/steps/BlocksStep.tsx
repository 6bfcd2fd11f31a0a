// The panel of this step.
import { StepHeading } from './StepHeading';

export function BlocksStep() {
  return <StepHeading title="Blocks" line="" />;
}
