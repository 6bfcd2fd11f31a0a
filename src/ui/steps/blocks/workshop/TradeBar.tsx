// The effect of the trade under way, before it is done.
import { useMemo } from 'react';
import { rimClashes } from '../../../../balance/clashes/wedgeClashes';
import { tradeWedges } from '../../../../editing/commands/blocks';
import { findBlock } from '../../../../model/find';
import { useApp } from '../../../app';
import { useSay } from '../../../words';
import { samePlace, useTrading } from './trade';

export function TradeBar() {
  const say = useSay();
  const project = useApp((app) => app.project);
  const { held, carried, hold } = useTrading();
  const from = carried?.from ?? held;
  const to = carried?.over && !samePlace(carried.over, carried.from) ? carried.over : null;
  const block = from && findBlock(project, from.block);
  const effect = useMemo(
    () =>
      from && to ? rimClashes(project, [from.block, to.block], tradeWedges(project, from, to).moves) : null,
    [project, from, to],
  );
  if (!from || !block) return null;
  const values = { place: from.place + 1, block: block.number };
  return (
    <div className="trade-bar">
      <p>
        {to && effect
          ? say(
              'Rims that meet or look alike in the blocks concerned: {now} now, {after} after the trade.',
              effect,
            )
          : say(
              'The wedge from block {block}, place {place} is in hand. Choose the place to trade with.',
              values,
            )}
      </p>
      {held ? (
        <button data-always type="button" className="button" onClick={() => hold(null)}>
          {say('Leave it')}
        </button>
      ) : null}
    </div>
  );
}
