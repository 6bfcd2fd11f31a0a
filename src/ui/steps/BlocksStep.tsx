// Step 4, blocks: their number, the choice of wedges and the list; or the workshop of the picked block.
import { useEffect, useMemo, useRef } from 'react';
import { findBlock } from '../../model/find';
import { useApp } from '../app';
import { Complaint } from '../fields/Complaint';
import { useAnalysis } from '../useAnalysis';
import { clashesByBlock } from './blocks/blockWords';
import { BlockList } from './blocks/list/BlockList';
import './blocks/blocks.css';
import { ChooseWedges } from './blocks/list/ChooseWedges';
import { HowMany } from './blocks/list/HowMany';
import { CarriedWedge } from './blocks/workshop/CarriedWedge';
import { TradeBar } from './blocks/workshop/TradeBar';
import { TradingContext } from './blocks/workshop/trade';
import { useTrade } from './blocks/workshop/useTrade';
import { Workshop } from './blocks/workshop/Workshop';
import { Caution } from './Caution';
import { StepFoot } from './StepFoot';
import { StepHeading } from './StepHeading';

export function BlocksStep() {
  const project = useApp((app) => app.project);
  const picked = useApp((app) => app.picked);
  const { balance } = useAnalysis(project);
  const clashes = useMemo(() => clashesByBlock(balance?.clashes ?? []), [balance]);
  const trade = useTrade();
  const top = useRef<HTMLDivElement>(null);
  const block = picked === null ? undefined : findBlock(project, picked);
  // Scrolls to the start when another block is picked.
  // biome-ignore lint/correctness/useExhaustiveDependencies: when the picked block changes
  useEffect(() => {
    // In braces, because newer browsers return a promise here, which an effect must not return.
    top.current?.scrollIntoView({ block: 'end' });
  }, [block?.id]);
  return (
    <TradingContext value={trade}>
      <div ref={top} />
      {block ? (
        <Workshop key={block.id} block={block} clashes={clashes} />
      ) : (
        <>
          <StepHeading
            title="Blocks"
            line="Wedges go round a block tip up and tip down in turn, so that their seams nest."
          />
          <TradeBar />
          <HowMany />
          <ChooseWedges />
          <BlockList clashes={clashes} />
          <Caution about={['sewing', 'pressing']} />
        </>
      )}
      <Complaint problems={trade.problems} />
      <CarriedWedge />
      <StepFoot />
    </TradingContext>
  );
}
