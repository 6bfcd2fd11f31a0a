// A length as makers write it: 7 1/2, 14-1/4, 2½, 36.2 cm. What was typed stays until it can be used.
import { useId, useState } from 'react';
import { phrase } from '../../model/phrase';
import type { Problem } from '../../model/result';
import { type Inches, lengthFieldText, parseLength } from '../../model/units';
import { useSay, useUnit } from '../words';
import { Complaint } from './Complaint';

interface Props {
  label: string;
  value: Inches;
  /** Takes the new length; returns why it was refused. */
  onCommit: (value: Inches) => readonly Problem[];
  least?: Inches;
  most?: Inches;
  hideLabel?: boolean;
  disabled?: boolean;
}

export function LengthField({ label, value, onCommit, least = 0, most = 4000, hideLabel, disabled }: Props) {
  const say = useSay();
  const unit = useUnit();
  const id = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const refuse = (
    code: string,
    sentence: Parameters<typeof phrase>[0],
    values?: Parameters<typeof phrase>[1],
  ) => setProblems([{ code, path: label, message: phrase(sentence, values) }]);
  const commit = () => {
    if (typed === null) return;
    const read = parseLength(typed, unit);
    const range = { least: { inches: least }, most: { inches: most } };
    if (read === null) {
      const say =
        unit === 'in'
          ? 'Write a length such as 7 1/2 or 7.5.'
          : 'Write a length in centimetres such as 19.5.';
      refuse('not-a-length', say);
    } else if (read < least) refuse('too-short', 'It must be at least {least}.', range);
    else if (read > most) refuse('too-long', 'It must be at most {most}.', range);
    else {
      const refused = Math.abs(read - value) < 1e-9 ? [] : onCommit(read);
      setProblems(refused);
      if (refused.length === 0) setTyped(null);
    }
  };
  return (
    <div className="field">
      <label htmlFor={id} className={hideLabel ? 'hidden-text' : undefined}>
        {say(label)} <span className="quiet">({unit})</span>
      </label>
      <input
        id={id}
        inputMode="text"
        autoComplete="off"
        disabled={disabled}
        value={typed ?? lengthFieldText(value, unit)}
        aria-invalid={problems.length > 0}
        aria-describedby={`${id}-why`}
        onChange={(event) => setTyped(event.target.value)}
        onBlur={commit}
        onKeyDown={(event) => {
          if (event.key === 'Enter') commit();
          if (event.key === 'Escape' && typed !== null) {
            event.stopPropagation();
            setTyped(null);
            setProblems([]);
          }
        }}
      />
      <Complaint problems={problems} id={`${id}-why`} />
    </div>
  );
}
