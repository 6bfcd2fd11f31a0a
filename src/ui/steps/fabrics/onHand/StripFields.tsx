// The fields of one row of strips: cut width, length and number.
import type { StripOnHand } from '../../../../model/project';
import type { Problem } from '../../../../model/result';
import { CountField } from '../../../fields/CountField';
import { LengthField } from '../../../fields/LengthField';

const MOST_STRIPS = 10_000;

type Measures = Pick<StripOnHand, 'width' | 'length' | 'count'>;

interface Props {
  strips: Measures;
  /** The least number that the field accepts. */
  fewest: number;
  /** Makes a change; returns why it was refused. */
  onChange: (to: Partial<Measures>) => readonly Problem[];
}

export function StripFields({ strips, fewest, onChange }: Props) {
  return (
    <div className="fab-three">
      <LengthField
        label="Cut width"
        value={strips.width}
        least={0.25}
        most={60}
        onCommit={(width) => onChange({ width })}
      />
      <LengthField
        label="Length"
        value={strips.length}
        least={1}
        most={4000}
        onCommit={(length) => onChange({ length })}
      />
      <CountField
        label="Strips"
        value={strips.count}
        least={fewest}
        most={MOST_STRIPS}
        onCommit={(count) => onChange({ count })}
      />
    </div>
  );
}
