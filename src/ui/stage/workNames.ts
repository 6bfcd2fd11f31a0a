// What lies on the large area of each step, by name.
import type { Step } from '../../store/app';

/** The work of a step on the large area; what lies there under Wall has names of its own (wall/WallWork.tsx). */
export const WORK_NAMES: Readonly<Record<Exclude<Step, 'wall'>, string>> = {
  fabrics: 'Fabrics laid out',
  sets: 'Strip sets laid out',
  wedges: 'Wedges laid out',
  blocks: 'Blocks laid out',
  finishing: 'To save or print',
};

/** The large area of a step as a whole. */
export const AREA_NAMES: Readonly<Record<Step, string>> = { ...WORK_NAMES, wall: 'Design wall' };
