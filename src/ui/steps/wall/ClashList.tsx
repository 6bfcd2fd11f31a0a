// A folded list of single clashes, longest first, each with its length and ways to mend it. An open clash is marked on the wall.
import { useState } from 'react';
import type { Clash } from '../../../balance/clashes/clashes';
import { clashFinding } from '../../../balance/clashes/clashFindings';
import type { Balance } from '../../../store/analysis/analysis';
import { useApp, useAppStore } from '../../app';
import { Fractions } from '../../fields/Fractions';
import { useSay } from '../../words';
import { FindingRow } from './FindingRow';

const FIRST = 10;

interface Props {
  /** Words of the line that opens the list. */
  title: string;
  clashes: readonly Clash[];
  balance: Balance;
  /** Whether the list is below a finding, which then stays chosen. */
  below: boolean;
}

export function ClashList({ title, clashes, balance, below }: Props) {
  const say = useSay();
  const [open, setOpen] = useState(false);
  const [all, setAll] = useState(false);
  const sorted = clashes.toSorted((one, other) => other.weight - one.weight);
  return (
    <details className="singles within" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary className="quiet">
        <Fractions text={title} />
      </summary>
      {open ? (
        <>
          <ul className="findings">
            {(all ? sorted : sorted.slice(0, FIRST)).map((clash) => (
              <SingleClash key={clash.id} clash={clash} balance={balance} below={below} />
            ))}
          </ul>
          {sorted.length > FIRST ? (
            <button type="button" className="button" onClick={() => setAll(!all)}>
              {all
                ? say('Show the first {count}', { count: FIRST })
                : say('Show all {count}', { count: sorted.length })}
            </button>
          ) : null}
        </>
      ) : null}
    </details>
  );
}

function SingleClash({ clash, balance, below }: { clash: Clash; balance: Balance; below: boolean }) {
  const store = useAppStore();
  const open = useApp((app) => app.spot?.id === clash.id);
  return (
    <FindingRow
      finding={clashFinding(balance.project, clash)}
      balance={balance}
      open={open}
      onOpen={() => {
        const app = store.getState();
        app.showPreview(null);
        if (!below) app.showFinding(null);
        app.showSpot(open ? null : { id: clash.id, marks: clash.marks, blocks: clash.blocks });
      }}
    />
  );
}
