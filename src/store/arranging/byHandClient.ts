// Has a worker find what few blocks moved by hand can do, so that the page stays free.
import type { FewBlocks, FewBlocksWish } from '../../arrange/byHand/fewBlocks';
import type { Project } from '../../model/project';
import type { Running } from '../workers/workerClient';
import { askOnce, newArrangeWorker, type StartArrangeWorker } from './arrangeClients';

const WHY = 'The moves by hand could not be found: {reason}. Nothing has changed.';

/** Starts looking; the same project and wish give the same answer. A stop gives what was found so far. */
export function startByHand(
  project: Project,
  wish: FewBlocksWish,
  onProgress: (share: number) => void = () => {},
  start: StartArrangeWorker = newArrangeWorker,
): Running<FewBlocks> {
  return askOnce('byHand', { project, wish }, WHY, onProgress, start);
}
