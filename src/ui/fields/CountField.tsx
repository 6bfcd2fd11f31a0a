// A field for a whole number, with buttons for a step down and up.
import { Minus, Plus } from 'lucide-react';
import { phrase } from '../../model/phrase';
import type { Problem } from '../../model/result';
import { useSay } from '../words';
import { Hint } from './Hint';
import { TypedField } from './TypedField';
import { useTyped } from './useTyped';

interface Props {
  label: string;
  value: number;
  onCommit: (value: number) => readonly Problem[];
  least: number;
  most: number;
  hideLabel?: boolean;
  /** What tells its buttons from those of others with the same label. */
  of?: string;
  disabled?: boolean;
  /** Id of the words that a screen reader reads with the field. */
  describedBy?: string | undefined;
}

export function CountField({ label, value, onCommit, least, most, disabled, of, ...rest }: Props) {
  const say = useSay();
  const typed = useTyped(String(value), (text) => {
    const read = /^\s*\d+\s*$/.test(text) ? Number(text) : Number.NaN;
    if (read >= least && read <= most) return read === value ? [] : onCommit(read);
    const message = phrase('Write a whole number from {least} to {most}.', { least, most });
    return [{ code: 'not-in-range', path: label, message }];
  });
  const step = (by: 1 | -1) => typed.offer(String(value + by));
  const name = of ? `${say(label)} (${of})` : say(label);
  const less = say('{name}: one less', { name });
  const more = say('{name}: one more', { name });
  return (
    <TypedField
      label={label}
      typed={typed}
      disabled={disabled}
      inputMode="numeric"
      style={{ width: '3.6rem', textAlign: 'center' }}
      onKey={({ key }) => {
        if (key === 'ArrowUp' && value < most) step(1);
        if (key === 'ArrowDown' && value > least) step(-1);
      }}
      frame={(line) => (
        <div className="row" style={{ flexWrap: 'nowrap', gap: 0 }}>
          <Hint words={less} placement="top">
            <button
              type="button"
              className="button bare"
              aria-label={less}
              disabled={disabled || value <= least}
              onClick={() => step(-1)}
            >
              <Minus size={16} aria-hidden />
            </button>
          </Hint>
          {line}
          <Hint words={more} placement="top">
            <button
              type="button"
              className="button bare"
              aria-label={more}
              disabled={disabled || value >= most}
              onClick={() => step(1)}
            >
              <Plus size={16} aria-hidden />
            </button>
          </Hint>
        </div>
      )}
      {...rest}
    />
  );
}
