// Lays a quilt out to the end in one go, with a short shuffle.
import {
  type LayingProgress,
  type LayingWish,
  layingQuilt,
  type QuiltLaid,
} from '../../../src/editing/whole/layingQuilt';
import type { Project } from '../../../src/model/project';

export const WISH: LayingWish = { seed: 3, want: 'most', cut: false, budget: { steps: 2_000 } };

/** The answer; stopped after so many parts where a number is given. */
export function laidOut(
  project: Project,
  wish: Partial<LayingWish> = {},
  stopAfter = Number.POSITIVE_INFINITY,
  hear: (part: LayingProgress) => void = () => {},
): QuiltLaid {
  const going = layingQuilt(project, { ...WISH, ...wish });
  for (let part = 0; ; part += 1) {
    const step = going.next(part >= stopAfter);
    if (step.done) return step.value;
    hear(step.value);
  }
}
