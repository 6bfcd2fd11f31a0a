// The state of a field that a person types into. Leaving the field or pressing Enter takes the text; Escape discards it. A
// refused text stays in the field, with the reason under it. Ctrl Z takes back what a field took that is no change of the quilt.
import { type FocusEvent, type KeyboardEvent, useId, useState } from 'react';
import type { Problem } from '../../model/result';
import type { RefusedText } from '../../store/app';
import { useAppStore } from '../app';
import { isKey } from '../keys';

/** The state of a typed field, for TypedField. */
export interface Typed {
  readonly id: string;
  readonly problems: readonly Problem[];
  /** Takes a text from another control (a step up, a picked colour); shows the reason if it is refused. */
  readonly offer: (text: string) => void;
  readonly input: {
    readonly value: string;
    /** The text while nothing is typed: where the field differs from it, Ctrl Z is the field's (App.tsx). */
    readonly 'data-shown': string;
    readonly onChange: (event: { target: { value: string } }) => void;
    readonly onBlur: (event: FocusEvent) => void;
    readonly onKeyDown: (event: KeyboardEvent) => void;
  };
}

/** The text before the last one taken, and the revision of the quilt, which taking it did not change: a wish of a form. */
interface Before {
  readonly text: string;
  readonly at: number;
}

/**
 * `shown`: the text of the field's value while nothing is typed. `take` reads the typed text and uses it; it returns why it was
 * refused, or an empty list. `first`: a refused text that the field begins with.
 */
export function useTyped(
  shown: string,
  take: (text: string) => readonly Problem[],
  first?: RefusedText,
): Typed {
  const id = useId();
  const store = useAppStore();
  const [typed, setTyped] = useState<string | null>(first?.text ?? null);
  const [problems, setProblems] = useState<readonly Problem[]>(first?.problems ?? []);
  const [before, setBefore] = useState<Before | null>(null);
  const revision = () => store.getState().revision;
  const offer = (text: string) => {
    const at = revision();
    const refused = take(text);
    setProblems(refused);
    if (refused.length > 0) return;
    setTyped(null);
    setBefore(text === shown || revision() !== at ? null : { text: shown, at });
  };
  /** Takes back what was taken last, where the quilt does not know of it. */
  const takeBack = (event: KeyboardEvent) => {
    if (typed !== null || before?.at !== revision() || !isKey(event, 'undo') || event.shiftKey) return;
    event.preventDefault();
    offer(before.text);
    setBefore(null);
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
      'data-shown': shown,
      onChange: (event) => setTyped(event.target.value),
      onBlur: commit,
      onKeyDown: (event) => {
        if (event.key === 'Enter') commit();
        takeBack(event);
        if (event.key !== 'Escape' || typed === null) return;
        event.stopPropagation();
        setTyped(null);
        setProblems([]);
      },
    },
  };
}
