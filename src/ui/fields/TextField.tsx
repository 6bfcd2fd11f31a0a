// A short text that is taken when the field is left or Enter is pressed.
import { useId, useState } from 'react';
import { phrase } from '../../model/phrase';
import type { Problem } from '../../model/result';
import { useSay } from '../words';
import { Complaint } from './Complaint';

interface Props {
  label: string;
  value: string;
  onCommit: (value: string) => readonly Problem[];
  hideLabel?: boolean;
  longest?: number;
  required?: boolean;
}

export function TextField({ label, value, onCommit, hideLabel, longest = 120, required = true }: Props) {
  const say = useSay();
  const id = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const commit = () => {
    if (typed === null) return;
    const text = typed.trim();
    if (required && text === '') {
      setProblems([{ code: 'empty', path: label, message: phrase('It cannot be empty.') }]);
      return;
    }
    if (text.length > longest) {
      const message = phrase('At most {longest} characters; it has {length}.', {
        longest,
        length: text.length,
      });
      setProblems([{ code: 'too-long', path: label, message }]);
      return;
    }
    const refused = text === value ? [] : onCommit(text);
    setProblems(refused);
    if (refused.length === 0) setTyped(null);
  };
  return (
    <div className="field">
      <label htmlFor={id} className={hideLabel ? 'hidden-text' : undefined}>
        {say(label)}
      </label>
      <input
        id={id}
        autoComplete="off"
        value={typed ?? value}
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
