// A form that splits strips lengthwise, such as 2 1/2" precuts into 1 1/2" and 1".
import { useState } from 'react';
import { splitStrips } from '../../../../editing/commands/stripsOnHand';
import { isTooNarrow, USUAL, upToStep } from '../../../../model/lengths';
import { counted } from '../../../../model/phrase';
import type { StripOnHand } from '../../../../model/project';
import type { LengthUnit } from '../../../../model/units';
import { useApp, useAppStore } from '../../../app';
import { Complaint, useRun } from '../../../fields/Complaint';
import { CountField } from '../../../fields/CountField';
import { Fractions } from '../../../fields/Fractions';
import { LengthField } from '../../../fields/LengthField';
import { useSay, useUnit } from '../../../words';

export function SplitStrips({ row }: { row: StripOnHand }) {
  const say = useSay();
  const store = useAppStore();
  const seam = useApp((app) => app.project.wedge.seam);
  const [count, setCount] = useState(row.count);
  const [first, setFirst] = useState(usualFirst(row.width, seam, useUnit()));
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

/** The usual first width: the wider part of a precut strip, such as 1 1/2 of 2 1/2; of other widths half, on a round figure. */
function usualFirst(width: number, seam: number, unit: LengthUnit): number {
  const { precut, widthStep } = USUAL[unit];
  if (Math.abs(width - precut.width) < 1e-9 && !isTooNarrow(width - precut.split, seam)) return precut.split;
  return upToStep(width / 2, widthStep);
}
