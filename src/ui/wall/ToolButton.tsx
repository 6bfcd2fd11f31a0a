// A button at the foot of the wall: an icon, with its word where there is room, and its name in full as a tooltip.
import type { ReactNode } from 'react';
import { Hint } from '../fields/Hint';

interface Props {
  /** In full, with its key. */
  name: string;
  /** Part of the name. */
  word: string;
  icon: ReactNode;
  onPress: () => void;
  pressed?: boolean;
  /** Why it does nothing now. It can still be reached, so that the reason can be read. */
  reason?: string | null;
}

export function ToolButton({ name, word, icon, onPress, pressed, reason = null }: Props) {
  return (
    <Hint words={reason ?? name} placement="top">
      <button
        type="button"
        className="button bare"
        aria-label={name}
        aria-disabled={reason !== null}
        aria-pressed={pressed}
        onClick={onPress}
      >
        {icon}
        <span className="tool-word" aria-hidden>
          {word}
        </span>
      </button>
    </Hint>
  );
}
