// The panel of each step and what the step lays on the large area. Their code comes when the step is opened, or before that while the
// page is idle.
import type { Step } from '../store/app';
import { type Later, later } from './later';

interface StepParts {
  readonly panel: Later<object>;
  /** Null where the large area is the wall itself. */
  readonly work: Later<object> | null;
}

export const STEP_PARTS: Readonly<Record<Step, StepParts>> = {
  fabrics: {
    panel: later(async () => (await import('./steps/FabricsStep')).FabricsStep),
    work: later(async () => (await import('./stage/fabrics/FabricsStage')).FabricsStage),
  },
  sets: {
    panel: later(async () => (await import('./steps/SetsStep')).SetsStep),
    work: later(async () => (await import('./stage/sets/SetsStage')).SetsStage),
  },
  wedges: {
    panel: later(async () => (await import('./steps/WedgesStep')).WedgesStep),
    work: later(async () => (await import('./stage/wedges/WedgesStage')).WedgesStage),
  },
  blocks: {
    panel: later(async () => (await import('./steps/BlocksStep')).BlocksStep),
    work: later(async () => (await import('./stage/blocks/BlocksStage')).BlocksStage),
  },
  wall: { panel: later(async () => (await import('./steps/WallStep')).WallStep), work: null },
  finishing: {
    panel: later(async () => (await import('./steps/FinishingStep')).FinishingStep),
    work: later(async () => (await import('./stage/finishing/FinishingStage')).FinishingStage),
  },
};
