// Sets the progress of one block or of many at once.
import { setBlockProgress } from '../../../editing/commands/blocks';
import { BLOCK_PROGRESS, type Block, type BlockId } from '../../../model/project';
import { Complaint, useRun } from '../../fields/Complaint';
import { useSay } from '../../words';
import { PROGRESS_NAMES } from './blockWords';

interface Props {
  blocks: readonly BlockId[];
  /** The stage of all the blocks; null where they differ. */
  stage: Block['progress'] | null;
  disabled?: boolean;
}

export function HowFar({ blocks, stage, disabled }: Props) {
  const say = useSay();
  const [run, problems] = useRun();
  return (
    <div>
      <fieldset className="stages" aria-label={say('Progress')}>
        {BLOCK_PROGRESS.map((one) => (
          <button
            key={one}
            type="button"
            className="stage"
            aria-pressed={stage === one}
            disabled={disabled || blocks.length === 0}
            onClick={() => run(setBlockProgress(blocks, one))}
          >
            <StageMark stage={one} />
            {say(PROGRESS_NAMES[one])}
          </button>
        ))}
      </fieldset>
      <Complaint problems={problems} />
    </div>
  );
}

/** A small sign for each stage: loose wedges, an octagon, a square, a square in its row. */
export function StageMark({ stage, size = 20 }: { stage: Block['progress']; size?: number }) {
  const octagon = 'M-3 -7 L3 -7 L7 -3 L7 3 L3 7 L-3 7 L-7 3 L-7 -3 Z';
  return (
    <svg width={size} height={size} viewBox="-12 -12 24 24" className="stage-mark" aria-hidden>
      {stage === 'planned' ? <path d={octagon} strokeDasharray="3 2.4" /> : null}
      {stage === 'octagon' ? <path d={`${octagon} M-7 0 H7 M0 -7 V7 M-5 -5 L5 5 M-5 5 L5 -5`} /> : null}
      {stage === 'squared' ? <path d={`M-7 -7 H7 V7 H-7 Z ${octagon}`} /> : null}
      {stage === 'joined' ? (
        <path d={`M-7 -7 H7 V7 H-7 Z ${octagon} M-12 -7 H-7 V7 H-12 M12 -7 H7 V7 H12`} />
      ) : null}
    </svg>
  );
}
