// One block in the list. It renders again only when it has changed, and is not laid out while out of sight (see blocks.css).
import { memo } from 'react';
import type { Clash } from '../../../../balance/clashes/clashes';
import type { Piece } from '../../../../drawing/drawing';
import { finishedBlock } from '../../../../geometry/wedge';
import { turnsOf } from '../../../../model/find';
import type { Block, BlockId, Fabric, WedgePlan } from '../../../../model/project';
import { BlockView } from '../../../wall/BlockView';
import { useSay } from '../../../words';
import { PROGRESS_NAMES, stateWords } from '../blockWords';
import { StageMark } from '../HowFar';

interface Props {
  block: Block;
  pieces: readonly Piece[];
  fabrics: readonly Fabric[];
  wedge: WedgePlan;
  turn: number;
  clashes: readonly Clash[];
  /** Whether the block is marked; null while no blocks are being marked. */
  marked: boolean | null;
  onPress: (block: BlockId, range: boolean) => void;
}

export const BlockListCard = memo(function BlockListCard(props: Props) {
  const say = useSay();
  const { block, wedge, marked } = props;
  const { width, height } = finishedBlock(wedge);
  const state = say(stateWords(block, props.clashes));
  const stage = say(PROGRESS_NAMES[block.progress]);
  return (
    <button
      type="button"
      className="block-card"
      aria-label={say('Block {block}: {state}, {stage}', { block: block.number, state, stage })}
      {...(marked === null ? {} : { 'aria-pressed': marked })}
      onClick={(event) => props.onPress(block.id, event.shiftKey)}
    >
      <svg viewBox={`${-width / 2} ${-height / 2} ${width} ${height}`} className="picture" aria-hidden>
        <g transform={`rotate(${(props.turn * 360) / turnsOf(wedge.perBlock)})`}>
          <BlockView pieces={props.pieces} fabrics={props.fabrics} lit={null} near={false} />
        </g>
      </svg>
      <span className="words" aria-hidden>
        <span className="number">{block.number}</span>
        <StageMark stage={block.progress} size={16} />
      </span>
      <span className="state" aria-hidden>
        {state}
      </span>
    </button>
  );
});
