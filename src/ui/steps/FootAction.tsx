// Puts the main action of a step into its foot, from the part of the panel that knows what it does.
import { createContext, type ReactNode, useContext } from 'react';
import { createPortal } from 'react-dom';

/** The element in the foot that takes the main action; null until the foot is there. */
export const FootSlot = createContext<HTMLElement | null>(null);

export function FootAction({ children }: { children: ReactNode }) {
  const slot = useContext(FootSlot);
  return slot ? createPortal(children, slot) : null;
}
