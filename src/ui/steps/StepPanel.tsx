// The panel of the current step.
import { useApp } from '../app';
import { BlocksStep } from './BlocksStep';
import { FabricsStep } from './FabricsStep';
import { FinishingStep } from './FinishingStep';
import { SetsStep } from './SetsStep';
import { WallStep } from './WallStep';
import { WedgesStep } from './WedgesStep';

export function StepPanel() {
  const step = useApp((app) => app.step);
  switch (step) {
    case 'fabrics':
      return <FabricsStep />;
    case 'sets':
      return <SetsStep />;
    case 'wedges':
      return <WedgesStep />;
    case 'blocks':
      return <BlocksStep />;
    case 'wall':
      return <WallStep />;
    case 'finishing':
      return <FinishingStep />;
    default:
      return step satisfies never;
  }
}
