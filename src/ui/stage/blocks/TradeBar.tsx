// The effect of the trade under way, before it is done.
import { useMemo } from 'react';
import { rimClashes } from '../../../balance/clashes/wedgeClashes';
import { findBlock } from '../../../model/find';
import { useApp } from '../../app';
import { wedgeTitle } from '../../steps/blocks/blockWords';
import { putDownMoves, samePlace, useTrading } from '../../steps/blocks/workshop/trade';
import { useSay } from '../../words';

export function TradeBar() {
  const say = useSay();
  const project = useApp((app) => app.project);
  const { held, carried, hold } = useTrading();
  const from = carried?.from ?? held;
  const over = carried?.over ?? null;
  const to = over === null || over === 'tray' || samePlace(from, over) ? null : over;
  const effect = useMemo(() => {
    if (!from || !to) return null;
    const { blocks, moves } = putDownMoves(project, from, to);
    return rimClashes(project, blocks, moves);
  }, [project, from, to]);
  if (!from) return null;
  const block = 'spare' in from ? undefined : findBlock(project, from.block);
  return (
    <div className="trade-bar">
      <p>
        {to && effect
          ? say('Clashes on the rims of these blocks: {now} now, {after} after the trade.', effect)
          : 'spare' in from
            ? say('{wedge} is in hand. Put it down on a place.', {
                wedge: say(wedgeTitle(project, from.spare)),
              })
            : over === 'tray'
              ? say('Put it down here to leave its place empty.')
              : say(
                  'The wedge from block {block}, place {place} is in hand. Choose the place to trade with.',
                  { place: from.place + 1, block: block?.number ?? 0 },
                )}
      </p>
      {held ? (
        <button data-always type="button" className="button" onClick={() => hold(null)}>
          {say('Cancel')}
        </button>
      ) : null}
    </div>
  );
}
