// A field for the number of a random draw: the same number gives the same result, another number another one. Its children are
// the buttons that draw.
import { type ReactNode, useId } from 'react';
import { useSay } from '../words';
import { CountField } from './CountField';

interface Props {
  label?: string;
  value: number;
  most: number;
  /** A sentence on what the same number gives again. */
  same: string;
  onChange: (value: number) => void;
  children?: ReactNode;
}

export function DrawField({ label = 'Shuffle number', value, most, same, onChange, children }: Props) {
  const say = useSay();
  const id = useId();
  return (
    <div>
      <div className="row draw-field">
        <CountField
          label={label}
          describedBy={id}
          value={value}
          least={0}
          most={most}
          onCommit={(next) => {
            onChange(next);
            return [];
          }}
        />
        {children}
      </div>
      <p className="quiet" id={id}>
        {say(same)}
      </p>
    </div>
  );
}
