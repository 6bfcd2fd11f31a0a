// Has a whole quilt laid out in a worker, so that the page stays free.
import type { LayingProgress, LayingWish, QuiltLaid } from '../../editing/whole/layingQuilt';
import type { Project } from '../../model/project';
import type { Running } from '../workers/workerClient';
import { askOnce, newArrangeWorker, type StartArrangeWorker } from './arrangeClients';

const WHY = 'The quilt could not be laid out: {reason}. Nothing has changed.';

/** Starts laying out; the same project and wish give the same answer. */
export function startLaying(
  project: Project,
  wish: LayingWish,
  onProgress: (progress: LayingProgress) => void = () => {},
  start: StartArrangeWorker = newArrangeWorker,
): Running<QuiltLaid> {
  return askOnce('lay', { project, wish }, WHY, onProgress, start);
}
