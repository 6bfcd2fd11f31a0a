// The number a chance is drawn by: the same number draws the same again, another one draws anew. Buttons that draw stand
// beside it.
import { type ReactNode, useId } from 'react';
import { useSay } from '../words';
import { CountField } from './CountField';

interface Props {
  value: number;
  most: number;
  /** What the same number gives again, in a sentence. */
  same: string;
  onChange: (value: number) => void;
  children?: ReactNode;
}

export function DrawField({ value, most, same, onChange, children }: Props) {
  const say = useSay();
  const id = useId();
  return (
    <div>
      <div className="row draw-field">
        <CountField
          label="Number of the draw"
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
