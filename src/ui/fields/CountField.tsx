// A whole number with a step down and up. What was typed stays until it can be used.
import { Minus, Plus } from 'lucide-react';
import { useId, useState } from 'react';
import { phrase } from '../../model/phrase';
import type { Problem } from '../../model/result';
import { useSay } from '../words';
import { Complaint } from './Complaint';

interface Props {
  label: string;
  value: number;
  onCommit: (value: number) => readonly Problem[];
  least: number;
  most: number;
  hideLabel?: boolean;
  disabled?: boolean;
}

export function CountField({ label, value, onCommit, least, most, hideLabel, disabled }: Props) {
  const say = useSay();
  const id = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const take = (text: string) => {
    const read = /^\s*\d+\s*$/.test(text) ? Number(text) : Number.NaN;
    if (!(read >= least && read <= most)) {
      const message = phrase('Write a whole number from {least} to {most}.', { least, most });
      setProblems([{ code: 'not-in-range', path: label, message }]);
      return;
    }
    const refused = read === value ? [] : onCommit(read);
    setProblems(refused);
    if (refused.length === 0) setTyped(null);
  };
  const name = say(label);
  return (
    <div className="field">
      <label htmlFor={id} className={hideLabel ? 'hidden-text' : undefined}>
        {name}
      </label>
      <div className="row" style={{ flexWrap: 'nowrap', gap: 0 }}>
        <button
          type="button"
          className="button bare"
          aria-label={say('{name}: one less', { name })}
          disabled={disabled || value <= least}
          onClick={() => take(String(value - 1))}
        >
          <Minus size={16} aria-hidden />
        </button>
        <input
          id={id}
          style={{ width: '3.6rem', textAlign: 'center' }}
          inputMode="numeric"
          autoComplete="off"
          disabled={disabled}
          value={typed ?? String(value)}
          aria-invalid={problems.length > 0}
          aria-describedby={`${id}-why`}
          onChange={(event) => setTyped(event.target.value)}
          onBlur={() => typed !== null && take(typed)}
          onKeyDown={(event) => {
            if (event.key === 'Enter' && typed !== null) take(typed);
            if (event.key === 'ArrowUp' && value < most) take(String(value + 1));
            if (event.key === 'ArrowDown' && value > least) take(String(value - 1));
            if (event.key === 'Escape' && typed !== null) {
              event.stopPropagation();
              setTyped(null);
              setProblems([]);
            }
          }}
        />
        <button
          type="button"
          className="button bare"
          aria-label={say('{name}: one more', { name })}
          disabled={disabled || value >= most}
          onClick={() => take(String(value + 1))}
        >
          <Plus size={16} aria-hidden />
        </button>
      </div>
      <Complaint problems={problems} id={`${id}-why`} />
    </div>
  );
}
