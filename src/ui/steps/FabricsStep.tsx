// The panel of this step.
import { StepHeading } from './StepHeading';

export function FabricsStep() {
  return <StepHeading title="Fabrics" line="" />;
}
