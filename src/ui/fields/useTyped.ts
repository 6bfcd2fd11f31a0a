// What is typed into a field: it stays as it was typed until it can be used, and why it was refused stands beside it. Taken
// when the field is left or Enter is pressed; Escape gives it up.
import { type FocusEvent, type KeyboardEvent, useId, useState } from 'react';
import type { Problem } from '../../model/result';

/** A field somebody types into; give it to TypedField. */
export interface Typed {
  readonly id: string;
  readonly problems: readonly Problem[];
  /** Takes a text that came another way (a step up, a picked colour); shows why it was refused. */
  readonly offer: (text: string) => void;
  readonly input: {
    readonly value: string;
    readonly onChange: (event: { target: { value: string } }) => void;
    readonly onBlur: (event: FocusEvent) => void;
    readonly onKeyDown: (event: KeyboardEvent) => void;
  };
}

/**
 * `shown`: the field's value in words while nothing is typed. `take` reads what was typed and uses it; it returns why it was
 * refused, or an empty list.
 */
export function useTyped(shown: string, take: (text: string) => readonly Problem[]): Typed {
  const id = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const offer = (text: string) => {
    const refused = take(text);
    setProblems(refused);
    if (refused.length === 0) setTyped(null);
  };
  const commit = () => {
    if (typed !== null) offer(typed);
  };
  return {
    id,
    problems,
    offer,
    input: {
      value: typed ?? shown,
      onChange: (event) => setTyped(event.target.value),
      onBlur: commit,
      onKeyDown: (event) => {
        if (event.key === 'Enter') commit();
        if (event.key !== 'Escape' || typed === null) return;
        event.stopPropagation();
        setTyped(null);
        setProblems([]);
      },
    },
  };
}
