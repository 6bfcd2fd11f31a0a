// A button for each set and tip, with its picture and how many are left: the keys of blocks that are entered by tapping.
import { memo, useMemo } from 'react';
import { growsWithUse, wedgeLedger } from '../../../../cutting/wedges/ledger';
import { type Entry, proposedTip } from '../../../../editing/entering/entry';
import type { Block, Place, Tip } from '../../../../model/project';
import { useApp } from '../../../app';
import { wedgeTitle } from '../../../steps/blocks/blockWords';
import { WedgePicture } from '../../../steps/blocks/WedgePicture';
import { useSay } from '../../../words';

interface Props {
  entry: Entry;
  target: Block | null;
  onTake: (wedge: Place) => void;
}

export function WedgeKeys({ entry, target, onTake }: Props) {
  const say = useSay();
  const project = useApp((app) => app.project);
  const ledger = useMemo(() => wedgeLedger(project), [project]);
  const left = (set: string, tip: Tip, there: number) => {
    const uses = (places: Block['places'] | Entry['places']) =>
      places.filter((wedge) => wedge?.set === set && wedge.tip === tip).length;
    return there - uses(entry.places) + (target ? uses(target.places) : 0);
  };
  const expected = entry.at === null ? null : proposedTip(entry, entry.at);
  return (
    <ul className="wedge-keys" data-expected={expected ?? 'none'}>
      {ledger.map(({ set, left: there }) => (
        <li key={set.id} className="sheet-of-paper" aria-label={say('Set {set}', { set: set.label })}>
          <b aria-hidden>{set.label}</b>
          {(['up', 'down'] as const).map((tip) => {
            // A set known only from sewn wedges has as many as are entered.
            const count = growsWithUse(set) ? null : left(set.id, tip, there[tip]);
            return (
              <WedgeKey
                key={tip}
                set={set.id}
                tip={tip}
                count={count}
                name={
                  count === null
                    ? say(wedgeTitle(project, { set: set.id, tip }))
                    : say('{wedge}: {count} left', {
                        wedge: say(wedgeTitle(project, { set: set.id, tip })),
                        count: Math.max(0, count),
                      })
                }
                onTake={onTake}
              />
            );
          })}
        </li>
      ))}
    </ul>
  );
}

interface KeyProps extends Place {
  /** Wedges that are left; null where every wedge entered shows that there was one more. */
  count: number | null;
  name: string;
  onTake: (wedge: Place) => void;
}

const WedgeKey = memo(function WedgeKey({ set, tip, count, name, onTake }: KeyProps) {
  return (
    <button
      type="button"
      className={`wedge-key ${tip}${count === null || count > 0 ? '' : ' none'}`}
      aria-label={name}
      title={name}
      // A press leaves the focus where it is, so that Enter after it goes to the next block.
      onMouseDown={(event) => event.preventDefault()}
      onClick={() => onTake({ set, tip })}
    >
      <WedgePicture wedge={{ set, tip }} height={64} />
      <span aria-hidden>
        {tip === 'up' ? '↑' : '↓'} {count === null ? null : Math.max(0, count)}
      </span>
    </button>
  );
});
