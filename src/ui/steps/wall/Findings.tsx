// What pulls the eye: the findings, heaviest first, each with the number behind it and ways to mend it.
import { useState } from 'react';
import type { Finding } from '../../../balance/finding';
import type { Balance } from '../../../store/analysis';
import { useApp, useAppStore } from '../../app';
import { Fractions } from '../../fields/Fractions';
import { useAnalysis } from '../../useAnalysis';
import { useSay } from '../../words';
import { Mends } from './Mends';

const FIRST = 8;
const NOTHING: Pick<Balance, 'findings' | 'clashes'> = { findings: [], clashes: [] };

export function Findings() {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const chosen = useApp((app) => app.finding);
  const { balance, pending, reason } = useAnalysis(project);
  const { findings, clashes } = balance ?? NOTHING;
  const within = clashes.filter((clash) => clash.kind === 'radial');
  const [all, setAll] = useState(false);
  const shown = all ? findings : findings.slice(0, FIRST);
  const hung = project.wall.cells.some((cell) => cell !== null);
  return (
    <section aria-label={say('What clashes')} aria-busy={pending}>
      {reason === null ? null : (
        <p className="complaint" role="alert">
          {say('What clashes could not be worked out: {reason}. The quilt itself is as it was.', { reason })}
        </p>
      )}
      <h3>
        {balance === null
          ? say(pending ? 'Looking the quilt over …' : 'What clashes')
          : findings.length === 0
            ? say(hung ? 'Nothing clashes' : 'Nothing hangs yet')
            : say(findings.length === 1 ? 'One thing to look at' : '{count} things to look at', {
                count: findings.length,
              })}
        {pending && balance ? <small className="looking-again quiet"> {say('looking again …')}</small> : null}
      </h3>
      {balance && findings.length === 0 ? (
        <p className="quiet">
          {say(
            hung
              ? 'No fabric meets itself on a rim or across an edge, and no part of the top is lighter or darker than chance makes it. Step back and squint all the same.'
              : 'Make blocks, then hang them here.',
          )}
        </p>
      ) : null}
      {within.length > 0 ? (
        <p className="quiet" style={{ marginBottom: 8 }}>
          <Fractions
            text={say(
              within.length === 1
                ? 'Further in a fabric meets itself or its look-alike once, along {length}.'
                : 'Further in a fabric meets itself or its look-alike {count} times, {length} in all.',
              {
                count: within.length,
                length: { inches: within.reduce((sum, clash) => sum + clash.inches, 0) },
              },
            )}
          />
        </p>
      ) : null}
      <ul className="findings">
        {shown.map((finding) => (
          <FindingRow
            key={finding.id}
            finding={finding}
            balance={balance}
            open={finding.id === chosen}
            onOpen={() => {
              const app = store.getState();
              app.showPreview(null);
              app.showFinding(finding.id === chosen ? null : finding.id);
            }}
          />
        ))}
      </ul>
      {findings.length > FIRST ? (
        <button type="button" className="button" style={{ marginTop: 8 }} onClick={() => setAll(!all)}>
          {all ? say('Show the heaviest') : say('Show all {count}', { count: findings.length })}
        </button>
      ) : null}
    </section>
  );
}

function FindingRow(props: { finding: Finding; balance: Balance | null; open: boolean; onOpen: () => void }) {
  const { finding, balance, open, onOpen } = props;
  const say = useSay();
  return (
    <li className="finding">
      <button type="button" aria-expanded={open} onClick={onOpen}>
        <Weight weight={finding.weight} pool={finding.marks.some((mark) => mark.kind === 'pool')} />
        <span>
          <Fractions text={say(finding.words)} />
        </span>
      </button>
      {open && balance ? <Mends balance={balance} finding={finding} /> : null}
    </li>
  );
}

/** How heavy a finding is, as long as a seam mark; a pool as its chalk line. */
function Weight({ weight, pool }: { weight: number; pool: boolean }) {
  const reach = 6 + 34 * Math.min(1, Math.max(0, weight));
  return (
    <svg className="weight" width="44" height="16" viewBox="0 0 44 16" aria-hidden>
      {pool ? (
        <rect
          x="3"
          y="2"
          width={Math.max(12, reach - 4)}
          height="12"
          rx="5"
          fill="none"
          stroke="currentColor"
          strokeWidth="2"
          strokeLinecap="round"
          strokeDasharray="0.1 3.6"
        />
      ) : (
        <>
          <line x1="2" x2={2 + reach} y1="8" y2="8" stroke="currentColor" strokeWidth="7" />
          <line x1="3.5" x2={0.5 + reach} y1="8" y2="8" stroke="var(--paper)" strokeWidth="4.4" />
          <line
            x1="3.5"
            x2={0.5 + reach}
            y1="8"
            y2="8"
            stroke="currentColor"
            strokeWidth="1.6"
            strokeDasharray="4 3"
          />
        </>
      )}
    </svg>
  );
}
