// The panel of each step and what the step lays on the large area. Their code comes when the step is opened, or before that while the
// page is idle.
import type { Step } from '../store/app';
import { type Later, later } from './later';

export const STEP_PANELS: Readonly<Record<Step, Later<object>>> = {
  fabrics: later(async () => (await import('./steps/FabricsStep')).FabricsStep),
  sets: later(async () => (await import('./steps/SetsStep')).SetsStep),
  wedges: later(async () => (await import('./steps/WedgesStep')).WedgesStep),
  blocks: later(async () => (await import('./steps/BlocksStep')).BlocksStep),
  wall: later(async () => (await import('./steps/WallStep')).WallStep),
  finishing: later(async () => (await import('./steps/FinishingStep')).FinishingStep),
};

/** At the step Wall the large area is the wall itself. */
export const STEP_WORKS: Readonly<Record<Exclude<Step, 'wall'>, Later<object>>> = {
  fabrics: later(async () => (await import('./stage/fabrics/FabricsStage')).FabricsStage),
  sets: later(async () => (await import('./stage/sets/SetsStage')).SetsStage),
  wedges: later(async () => (await import('./stage/wedges/WedgesStage')).WedgesStage),
  blocks: later(async () => (await import('./stage/blocks/BlocksStage')).BlocksStage),
  finishing: later(async () => (await import('./stage/finishing/FinishingStage')).FinishingStage),
};
