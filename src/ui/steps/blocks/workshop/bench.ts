// What is at hand of the opened block, for its panel and its picture on the large area: the chosen place, a wedge that is tried there, and
// the block beside it. It is no part of the project.
import { createContext, useCallback, useContext, useMemo, useState } from 'react';
import { findBlock } from '../../../../model/find';
import type { Block, BlockId, Place } from '../../../../model/project';
import { useApp } from '../../../app';

export interface Bench {
  /** The opened block; null for none. */
  readonly block: Block | null;
  /** The chosen place, from 0. */
  readonly place: number;
  /** A wedge shown in the chosen place instead of the wedge there. */
  readonly trying: Place | null;
  /** The block beside it, to compare with and to trade. */
  readonly second: Block | null;
  readonly choose: (place: number) => void;
  readonly tryOn: (wedge: Place | null) => void;
  readonly layBeside: (block: BlockId | null) => void;
}

interface AtHand {
  readonly of: BlockId | null;
  readonly place: number;
  readonly trying: Place | null;
  readonly second: BlockId | null;
}

const NOTHING: Omit<AtHand, 'of'> = { place: 0, trying: null, second: null };

export const BenchContext = createContext<Bench | null>(null);

/** The opened block round a component. Throws outside BenchContext. */
export function useBench(): Bench {
  const bench = useContext(BenchContext);
  if (!bench) throw new Error('useBench: outside BenchContext');
  return bench;
}

/** The state for BenchContext; another block begins at its first place. */
export function useOpenedBlock(): Bench {
  const project = useApp((app) => app.project);
  const picked = useApp((app) => app.picked);
  const [kept, setKept] = useState<AtHand>({ of: null, ...NOTHING });
  const set = useCallback(
    (part: Partial<AtHand>) =>
      setKept((before) => ({ ...(before.of === picked ? before : { of: picked, ...NOTHING }), ...part })),
    [picked],
  );
  const choose = useCallback((place: number) => set({ place, trying: null }), [set]);
  const tryOn = useCallback((trying: Place | null) => set({ trying }), [set]);
  const layBeside = useCallback((second: BlockId | null) => set({ second }), [set]);
  return useMemo(() => {
    const now = kept.of === picked ? kept : { of: picked, ...NOTHING };
    const block = picked === null ? null : (findBlock(project, picked) ?? null);
    const second = now.second === null ? null : (findBlock(project, now.second) ?? null);
    const place = Math.min(now.place, project.wedge.perBlock - 1);
    return { block, place, trying: now.trying, second, choose, tryOn, layBeside };
  }, [kept, picked, project, choose, tryOn, layBeside]);
}
