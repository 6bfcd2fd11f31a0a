// Puts the main action of a step into its foot, from the part of the panel that knows what it does.
import { createContext, type ReactNode, useContext, useRef } from 'react';
import { createPortal } from 'react-dom';
import { heedRefusedFields } from '../fields/refusedFields';

/** The element in the foot that takes the main action; null until the foot is there. */
export const FootSlot = createContext<HTMLElement | null>(null);

export function FootAction({ children }: { children: ReactNode }) {
  const slot = useContext(FootSlot);
  const part = useRef<HTMLSpanElement>(null);
  return (
    <>
      <span ref={part} hidden />
      {slot
        ? createPortal(
            // A refused field of its part stops it, as if the button stood beside the field.
            <span className="foot-slot" onClickCapture={(event) => heedRefusedFields(event, part.current)}>
              {children}
            </span>,
            slot,
          )
        : null}
    </>
  );
}
