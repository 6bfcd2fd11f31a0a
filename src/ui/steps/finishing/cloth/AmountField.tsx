// A decimal amount: a price, a number of yards, a part in the hundred. May be left empty where nothing is known.
import { useId, useState } from 'react';
import { phrase } from '../../../../model/phrase';
import type { Problem } from '../../../../model/result';
import { Complaint } from '../../../fields/Complaint';
import { useSay } from '../../../words';

interface Props {
  label: string;
  /** What the amount is in, beside the label: yd, £, %. */
  unit?: string;
  value: number | null;
  onCommit: (value: number | null) => readonly Problem[];
  least?: number;
  most: number;
  /** Whether it may be empty. */
  optional?: boolean;
  /** Shown with two decimals. */
  money?: boolean;
}

export function AmountField({
  label,
  unit,
  value,
  onCommit,
  least = 0,
  most,
  optional = false,
  money = false,
}: Props) {
  const say = useSay();
  const id = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const shown = value === null ? '' : money ? value.toFixed(2) : String(Number(value.toFixed(4)));
  const refuse = (code: string, words: string) =>
    setProblems([{ code, path: label, message: phrase(words, { least, most }) }]);
  const commit = () => {
    if (typed === null) return;
    const text = typed.trim().replace(',', '.');
    const read = text === '' ? null : /^\d+(\.\d+)?$/.test(text) ? Number(text) : Number.NaN;
    if (read === null ? !optional : Number.isNaN(read))
      refuse('not-an-amount', 'Write an amount such as 12.50.');
    else if (read !== null && (read < least || read > most)) {
      refuse('not-in-range', 'It must be from {least} to {most}.');
    } else {
      const refused = read === value ? [] : onCommit(read);
      setProblems(refused);
      if (refused.length === 0) setTyped(null);
    }
  };
  return (
    <div className="field">
      <label htmlFor={id}>
        {say(label)} {unit ? <span className="quiet">({unit})</span> : null}
      </label>
      <input
        id={id}
        inputMode="decimal"
        autoComplete="off"
        value={typed ?? shown}
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
