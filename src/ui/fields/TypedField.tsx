// A field to type into: its label, the line with its buttons, and right under it the reason of a refusal.
import type { InputHTMLAttributes, KeyboardEvent, ReactNode } from 'react';
import { useSay } from '../words';
import { Complaint } from './Complaint';
import type { Typed } from './useTyped';

interface Props
  extends Pick<InputHTMLAttributes<HTMLInputElement>, 'dir' | 'inputMode' | 'spellCheck' | 'style'> {
  label: string;
  typed: Typed;
  hideLabel?: boolean | undefined;
  disabled?: boolean | undefined;
  /** Unit of the value, shown beside the label: in, yd, %. */
  unit?: string | undefined;
  /** Id of the words that a screen reader reads with the field. */
  describedBy?: string | undefined;
  /** Puts controls round the line (a step down and up, a colour to pick). */
  frame?: (line: ReactNode) => ReactNode;
  onKey?: (event: KeyboardEvent) => void;
}

export function TypedField({ label, typed, hideLabel, unit, describedBy, frame, onKey, ...line }: Props) {
  const say = useSay();
  const { id, problems, input } = typed;
  const field = (
    <input
      id={id}
      autoComplete="off"
      {...line}
      {...input}
      onKeyDown={(event) => {
        onKey?.(event);
        input.onKeyDown(event);
      }}
      aria-invalid={problems.length > 0}
      aria-describedby={describedBy ? `${id}-why ${describedBy}` : `${id}-why`}
    />
  );
  return (
    <div className="field">
      <label htmlFor={id} className={hideLabel ? 'hidden-text' : undefined}>
        {say(label)}
        {unit ? <span className="quiet"> ({unit})</span> : null}
      </label>
      {frame ? frame(field) : field}
      <Complaint problems={problems} id={`${id}-why`} />
    </div>
  );
}
