// React's view of the session.
import { createContext, useContext } from 'react';
import { useStore } from 'zustand';
import type { HandMoves } from '../store/handMoves';
import type { Laying } from '../store/laying';
import type { PicturesAtHand } from '../store/picturesAtHand';
import type { SessionState } from '../store/saving/sessionState';
import type { Seeking } from '../store/seeking';
import type { Session } from '../store/session';
import type { Shuffling } from '../store/shuffling';

export const SessionContext = createContext<Session | null>(null);

/** The session. Throws outside SessionContext. */
export function useSession(): Session {
  const session = useContext(SessionContext);
  if (!session) throw new Error('useSession: outside SessionContext');
  return session;
}

/** A part of the session's state; the component renders again when that part changes. */
export function useSessionState<T>(select: (state: SessionState) => T): T {
  return useStore(useSession().state, select);
}

/** The pictures of the open quilt, and where they are in the page; the component renders again when some come or go. */
export function usePicturesAtHand(): PicturesAtHand {
  return useStore(useSession().pictures.state);
}

/** The state of the shuffle of the open quilt. */
export function useShuffling(): Shuffling {
  return useStore(useSession().shuffling);
}

/** The state of the search for several orders of the open quilt. */
export function useSeeking(): Seeking {
  return useStore(useSession().seeking);
}

/** The state of laying out the whole open quilt. */
export function useLaying(): Laying {
  return useStore(useSession().laying);
}

/** The state of the search for what few blocks moved by hand can do. */
export function useHandMoves(): HandMoves {
  return useStore(useSession().handMoves);
}
