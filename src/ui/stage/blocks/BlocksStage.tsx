// The step Blocks on the large area: the gallery, the opened block, or blocks being entered as they are sewn.
import { useMemo } from 'react';
import { useApp } from '../../app';
import { clashesByBlock } from '../../steps/blocks/blockWords';
import { useBench } from '../../steps/blocks/workshop/bench';
import { useAnalysis } from '../../useAnalysis';
import { BlockBench } from './BlockBench';
import { BlockGallery } from './BlockGallery';
import './blocksStage.css';
import { EnterBlocks } from './entering/EnterBlocks';

export function BlocksStage() {
  const project = useApp((app) => app.project);
  const entering = useApp((app) => app.laid.entering);
  const { block } = useBench();
  const { balance } = useAnalysis(project);
  const clashes = useMemo(() => clashesByBlock(balance?.clashes ?? []), [balance]);
  if (entering !== null) return <EnterBlocks way={entering} />;
  // The gallery stays mounted, so that its filter and its place in the list are there when a block is closed.
  return (
    <>
      {block ? <BlockBench key={block.id} block={block} clashes={clashes} /> : null}
      <div hidden={block !== null}>
        <BlockGallery clashes={clashes} />
      </div>
    </>
  );
}
