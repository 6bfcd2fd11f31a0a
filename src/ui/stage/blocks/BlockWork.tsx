// Round the panel and the large area: the opened block, and the hands that trade its wedges.
import type { ReactNode } from 'react';
import { BenchContext, useOpenedBlock } from '../../steps/blocks/workshop/bench';
import { TradingContext } from '../../steps/blocks/workshop/trade';
import { useTrade } from '../../steps/blocks/workshop/useTrade';
import { CarriedWedge } from './CarriedWedge';

export function BlockWork({ children }: { children: ReactNode }) {
  const trade = useTrade();
  const bench = useOpenedBlock();
  return (
    <TradingContext value={trade}>
      <BenchContext value={bench}>
        {children}
        <CarriedWedge />
      </BenchContext>
    </TradingContext>
  );
}
