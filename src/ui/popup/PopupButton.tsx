// A button that opens something over the page, whose code is fetched when the button is pointed at, has the focus or is pressed.
import { type ReactNode, useState } from 'react';
import { Hint } from '../fields/Hint';
import type { Later } from '../later';
import { Shown } from '../Shown';
import { useEscape } from '../useEscape';

/** What the opened part is given. */
export interface PopupProps {
  /** The button it belongs to. */
  readonly button: HTMLElement;
  readonly name: string;
  readonly onClose: () => void;
}

interface Props<Own extends PopupProps> {
  className: string;
  /** The name of the button. */
  name: string;
  /** The name of what opens; that of the button unless given. */
  opens?: string;
  /** Whether the button tells its name as a hint. */
  hinted?: boolean;
  part: Later<Own>;
  /** What the part is given besides. */
  given: Omit<Own, keyof PopupProps>;
  children: ReactNode;
}

export function PopupButton<Own extends PopupProps>(props: Props<Own>) {
  const { className, name, opens = name, hinted, part, given, children } = props;
  const [button, setButton] = useState<HTMLElement | null>(null);
  const close = () => setButton(null);
  // What is open closes by itself where it has the focus; it may not be there yet, or the focus be elsewhere.
  useEscape(close, button !== null);
  const control = (
    <button
      type="button"
      className={className}
      aria-label={name}
      aria-expanded={button !== null}
      onPointerEnter={part.ahead}
      onFocus={part.ahead}
      onClick={({ currentTarget }) => {
        // Some browsers give no focus to a button that is pressed; it is where the focus comes back to.
        currentTarget.focus();
        setButton(button ? null : currentTarget);
      }}
    >
      {children}
    </button>
  );
  const own = { ...given, button, name: opens, onClose: close } as unknown as Own;
  return (
    <>
      {hinted ? <Hint words={name}>{control}</Hint> : control}
      {button && <Shown part={part} given={own} over />}
    </>
  );
}
