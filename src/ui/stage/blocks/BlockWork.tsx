// Round the panel and the large area: the opened block, and the hands that trade its wedges.
import type { ReactNode } from 'react';
import { later } from '../../later';
import { Shown } from '../../Shown';
import { BenchContext, useOpenedBlock } from '../../steps/blocks/workshop/bench';
import { TradingContext } from '../../steps/blocks/workshop/trade';
import { useTrade } from '../../steps/blocks/workshop/useTrade';

const CARRIED = later(async () => (await import('./CarriedWedge')).CarriedWedge);

export function BlockWork({ children }: { children: ReactNode }) {
  const trade = useTrade();
  const bench = useOpenedBlock();
  return (
    <TradingContext value={trade}>
      <BenchContext value={bench}>
        {children}
        {trade.carried ? <Shown part={CARRIED} given={{}} /> : null}
      </BenchContext>
    </TradingContext>
  );
}
