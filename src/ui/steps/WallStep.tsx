// The panel of this step.
import { StepHeading } from './StepHeading';

export function WallStep() {
  return <StepHeading title="Wall" line="" />;
}
