// The main action at the cutting table: open the set that is cut next, then mark it as cut; the next one opens by itself.
import type { LedgerRow } from '../../../cutting/wedges/ledger';
import { markSets } from '../../../editing/commands/setProgress';
import { useAppStore } from '../../app';
import { Complaint, useRun } from '../../fields/Complaint';
import { useSay } from '../../words';

interface Props {
  ledger: readonly LedgerRow[];
  open: LedgerRow | null;
}

export function CutNext({ ledger, open }: Props) {
  const say = useSay();
  const store = useAppStore();
  const [run, problems] = useRun();
  const waiting = ledger.filter(({ set, available }) => set.progress !== 'cut' && available.up + available.down > 0);
  // Sewn sets before those that are only planned.
  const next = waiting.find(({ set }) => set.progress === 'sewn') ?? waiting[0];
  const now = open && waiting.includes(open) ? open : null;
  if (!next) return null;
  const cut = ({ set }: LedgerRow) => {
    if (!run(markSets([set.id], 'cut'))) return;
    const rest = waiting.filter((row) => row.set.id !== set.id);
    const after = rest.find((row) => row.set.progress === 'sewn') ?? rest[0];
    store.getState().lay({ set: after?.set.id ?? null });
  };
  return (
    <>
      {now ? (
        <button type="button" className="button solid" onClick={() => cut(now)}>
          {say('Mark set {set} as cut', { set: now.set.label })}
        </button>
      ) : (
        <button
          type="button"
          className="button solid"
          onClick={() => store.getState().lay({ set: next.set.id })}
        >
          {say('Cut set {set} next', { set: next.set.label })}
        </button>
      )}
      <Complaint problems={problems} />
    </>
  );
} // biome-ignore format: one line to a condition
