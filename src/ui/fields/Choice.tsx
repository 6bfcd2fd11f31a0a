// A choice of one of a few options: radio buttons drawn as one strip.
import { useId } from 'react';
import { useSay } from '../words';
import { Fractions } from './Fractions';

interface Props<T extends string> {
  label: string;
  value: T;
  options: readonly { readonly value: T; readonly label: string }[];
  onChange: (value: T) => void;
  hideLabel?: boolean;
  disabled?: boolean;
}

export function Choice<T extends string>({ label, value, options, onChange, hideLabel, disabled }: Props<T>) {
  const say = useSay();
  const name = useId();
  return (
    <fieldset
      className="field"
      style={{ border: 0, padding: 0, margin: 0, alignItems: 'flex-start' }}
      disabled={disabled}
    >
      <legend className={hideLabel ? 'hidden-text' : 'quiet'} style={{ padding: 0 }}>
        {say(label)}
      </legend>
      <div className="choice">
        {options.map((option) => (
          <label key={option.value}>
            <input
              type="radio"
              name={name}
              checked={option.value === value}
              onChange={() => onChange(option.value)}
            />
            <span>
              <Fractions text={say(option.label)} />
            </span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
