// What lies on the large area of each step, by name.
import type { Step } from '../../store/app';

/** The work of a step on the large area; under Wall there is some only while there is a choice of layouts. */
export const WORK_NAMES: Readonly<Record<Step, string>> = {
  fabrics: 'Fabrics laid out',
  sets: 'Strip sets laid out',
  wedges: 'Wedges laid out',
  blocks: 'Blocks laid out',
  wall: 'Layouts to choose from',
  finishing: 'To save or print',
};

/** The large area of a step as a whole. */
export const AREA_NAMES: Readonly<Record<Step, string>> = { ...WORK_NAMES, wall: 'Design wall' };
