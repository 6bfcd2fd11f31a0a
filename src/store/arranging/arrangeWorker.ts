// The worker that arranges, in parts, so that it hears a stop. arrange/shuffle.ts, arrange/alternatives.ts and editing/whole decide
// everything.
import { chooseAlternatives, tryingAlternatives } from '../../arrange/alternatives';
import { findingFewBlocks } from '../../arrange/byHand/fewBlocks';
import { type ProvingProgress, provingFurther } from '../../arrange/provingFurther';
import { arranging, type ShuffleProgress } from '../../arrange/shuffle';
import { layingQuilt } from '../../editing/whole/layingQuilt';
import { serve } from '../workers/protocol';
import type { ArrangeJobs } from './arrangeJobs';

const now = () => performance.now();

serve<ArrangeJobs>({
  shuffle: ({ project, wish }, work) => {
    let moves: ShuffleProgress['moves'] = null;
    return work.run(arranging(project, wish, now), (progress, due) => {
      moves = progress.moves ?? moves;
      if (!due) return;
      work.tell({ ...progress, moves });
      moves = null;
    });
  },
  prove: ({ project, wish, from }, work) => {
    let moves: ProvingProgress['moves'] = null;
    return work.run(provingFurther(project, wish, from), (progress, due) => {
      moves = progress.moves ?? moves;
      if (!due) return;
      work.tell({ ...progress, moves });
      moves = null;
    });
  },
  lay: ({ project, wish }, work) => {
    let stage: string | null = null;
    return work.run(layingQuilt(project, wish, now), (progress, due) => {
      if (!due && progress.stage === stage) return;
      stage = progress.stage;
      work.tell(progress);
    });
  },
  try: ({ project, wish, count, share }, work) =>
    work.run(tryingAlternatives(project, wish, count, share, now), (spent, due) => {
      if (due) work.tell(spent);
    }),
  byHand: ({ project, wish }, work) =>
    work.run(findingFewBlocks(project, wish), (share, due) => {
      if (due) work.tell(share);
    }),
  choose: ({ project, wish, count, tries }) => chooseAlternatives(project, wish, count, tries),
});
