// One block in the gallery. It renders again only when it has changed, and is not laid out while out of sight (see blocksStage.css).
import { memo, useRef } from 'react';
import type { Clash } from '../../../balance/clashes/clashes';
import type { Piece } from '../../../drawing/drawing';
import { finishedBlock } from '../../../geometry/wedge';
import { turnsOf } from '../../../model/find';
import type { Block, BlockId, Fabric, WedgePlan } from '../../../model/project';
import { PROGRESS_NAMES, stateWords } from '../../steps/blocks/blockWords';
import { StageMark } from '../../steps/blocks/HowFar';
import { BlockView } from '../../wall/BlockView';
import { useSay } from '../../words';
import { useInSight } from './useInSight';

interface Props {
  block: Block;
  pieces: readonly Piece[];
  fabrics: readonly Fabric[];
  wedge: WedgePlan;
  turn: number;
  clashes: readonly Clash[];
  /** Whether the block is marked; null while no blocks are being marked. */
  marked: boolean | null;
  /** Null for a picture that is not pressed. */
  onPress: ((block: BlockId, range: boolean) => void) | null;
}

export const BlockCard = memo(function BlockCard(props: Props) {
  const say = useSay();
  const { block, marked, onPress } = props;
  const state = say(stateWords(block, props.clashes));
  const stage = say(PROGRESS_NAMES[block.progress]);
  const name = say('Block {block}: {state}, {stage}', { block: block.number, state, stage });
  const face = <CardFace {...props} state={state} stage={stage} />;
  if (!onPress) {
    return (
      <div className="block-card" role="img" aria-label={name}>
        {face}
      </div>
    );
  }
  return (
    <button
      type="button"
      className="block-card"
      aria-label={name}
      {...(marked === null ? {} : { 'aria-pressed': marked })}
      onClick={(event) => onPress(block.id, event.shiftKey)}
    >
      {face}
    </button>
  );
});

function CardFace({
  block,
  wedge,
  turn,
  pieces,
  fabrics,
  state,
  stage,
}: Props & { state: string; stage: string }) {
  const picture = useRef<SVGSVGElement>(null);
  // Seams and the direction of prints are drawn for what is in sight, because 400 blocks of them are tens of thousands of paths.
  const inSight = useInSight(picture);
  const { width, height } = finishedBlock(wedge);
  return (
    <>
      <svg
        ref={picture}
        viewBox={`${-width / 2} ${-height / 2} ${width} ${height}`}
        className="picture"
        aria-hidden
      >
        <g transform={`rotate(${(turn * 360) / turnsOf(wedge.perBlock)})`}>
          <BlockView pieces={pieces} fabrics={fabrics} lit={null} near={inSight} />
        </g>
      </svg>
      <span className="words" aria-hidden>
        <span className="number">{block.number}</span>
        <span className="stage-of">
          <StageMark stage={block.progress} size={16} /> {stage}
        </span>
      </span>
      <span className="state" aria-hidden>
        {state}
      </span>
    </>
  );
}
