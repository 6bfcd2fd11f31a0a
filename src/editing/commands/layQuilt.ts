// The command that keeps a quilt laid out as a whole; editing/whole works it out.
import { phrase } from '../../model/phrase';
import type { Project } from '../../model/project';
import type { Command } from '../apply';

/** The parts of a project that laying out changes, and the number the wedges were chosen by. */
export interface LaidParts
  extends Pick<Project, 'clothOnHand' | 'stripsOnHand' | 'stripSets' | 'blocks' | 'wall'> {
  readonly seed: number;
}

/** Takes over the parts of a quilt laid out from this very project. The caller makes sure that it has not changed since. */
export function layQuilt({ seed, ...parts }: LaidParts): Command {
  return {
    label: phrase('lay out the whole quilt'),
    change: (draft) => {
      Object.assign(draft, parts);
      draft.preferences.seed = seed;
    },
  };
}
