// React's view of the session.
import { createContext, useContext } from 'react';
import { useStore } from 'zustand';
import type { Session, SessionState } from '../store/session';

export const SessionContext = createContext<Session | null>(null);

export function useSession(): Session {
  const session = useContext(SessionContext);
  if (!session) throw new Error('useSession: outside SessionContext');
  return session;
}

export function useSessionState<T>(select: (state: SessionState) => T): T {
  return useStore(useSession().state, select);
}
