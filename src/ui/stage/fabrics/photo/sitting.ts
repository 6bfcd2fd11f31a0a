// React's view of the sitting: the photographs of which fabrics are being made.
import { useStore } from 'zustand';
import type { SittingState } from '../../../../store/photo/sitting';
import { type Sitting, sittingOf } from '../../../../store/photo/sitting';
import { useAppStore } from '../../../app';

export function useSitting(): Sitting {
  return sittingOf(useAppStore());
}

/** A part of its state; the component renders again when that part changes. */
export function useSittingState<T>(select: (state: SittingState) => T): T {
  return useStore(useSitting().state, select);
}
