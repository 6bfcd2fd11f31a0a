// React's view of the app store.
import { createContext, useContext } from 'react';
import { useStore } from 'zustand';
import type { App, AppStore } from '../store/app';

export const AppContext = createContext<AppStore | null>(null);

/** The store itself, for handlers that read the state when an event happens. */
export function useAppStore(): AppStore {
  const store = useContext(AppContext);
  if (!store) throw new Error('useAppStore: outside AppContext');
  return store;
}

/** A part of the app's state; the component renders again when that part changes. */
export function useApp<T>(select: (app: App) => T): T {
  return useStore(useAppStore(), select);
}
