// A form that splits strips lengthwise, such as 2 1/2" precuts into 1 1/2" and 1".
import { useState } from 'react';
import { splitStrips } from '../../../../editing/commands/stripsOnHand';
import { isTooNarrow, upToStep } from '../../../../model/lengths';
import { counted } from '../../../../model/phrase';
import type { StripOnHand } from '../../../../model/project';
import { useApp, useAppStore } from '../../../app';
import { Complaint, useRun } from '../../../fields/Complaint';
import { CountField } from '../../../fields/CountField';
import { Fractions } from '../../../fields/Fractions';
import { LengthField } from '../../../fields/LengthField';
import { useSay } from '../../../words';

export function SplitStrips({ row }: { row: StripOnHand }) {
  const say = useSay();
  const store = useAppStore();
  const seam = useApp((app) => app.project.wedge.seam);
  const [count, setCount] = useState(row.count);
  const [first, setFirst] = useState(usualFirst(row.width, seam));
  const [run, problems] = useRun();
  // Two strips must each be wider than their two seams.
  if (isTooNarrow(row.width / 2, seam)) return null;
  const chosen = Math.min(count, row.count);
  const second = Math.max(0, row.width - first);
  return (
    <fieldset className="fab-split">
      <legend>{say('Split lengthwise')}</legend>
      <div className="fab-pair">
        <CountField
          label="How many"
          value={chosen}
          least={1}
          most={row.count}
          onCommit={(next) => {
            setCount(next);
            return [];
          }}
        />
        <LengthField
          label="One part"
          value={first}
          least={0.25}
          most={row.width}
          onCommit={(next) => {
            setFirst(next);
            return [];
          }}
        />
      </div>
      <button
        type="button"
        className="button"
        onClick={() => run(splitStrips(store.getState().project, row.id, chosen, first))}
      >
        <span>
          <Fractions
            text={say(
              counted(
                chosen,
                'Split 1 strip into {first} + {second}',
                'Split {count} strips into {first} + {second}',
                { first: { inches: first }, second: { inches: second } },
              ),
            )}
          />
        </span>
      </button>
      <Complaint problems={problems} />
    </fieldset>
  );
}

/** The usual first width: 1 1/2 of 2 1/2 (common practice, no source); of other widths half, to a quarter inch. */
function usualFirst(width: number, seam: number): number {
  if (Math.abs(width - 2.5) < 1e-9 && seam < 0.5) return 1.5;
  return upToStep(width / 2, 1 / 4);
}
