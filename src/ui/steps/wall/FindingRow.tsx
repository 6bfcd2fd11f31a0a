// One finding or clash: its words and its measure, and when open the ways to mend it. A mark shows its weight.
import type { ReactNode } from 'react';
import type { Finding } from '../../../balance/finding';
import type { Balance } from '../../../store/analysis/analysis';
import { Fractions } from '../../fields/Fractions';
import { useEscape } from '../../useEscape';
import { useSay } from '../../words';
import { Mends } from './Mends';

interface Props {
  finding: Finding;
  balance: Balance | null;
  open: boolean;
  /** Opens it, or closes it again. */
  onOpen: () => void;
  /** Content below the ways to mend it. */
  children?: ReactNode;
}

export function FindingRow({ finding, balance, open, onOpen, children }: Props) {
  const say = useSay();
  useEscape(onOpen, open);
  return (
    <li className="finding">
      <button type="button" aria-expanded={open} onClick={onOpen}>
        <Weight weight={finding.weight} form={formOf(finding)} />
        <span>
          <Fractions text={say(finding.words)} />{' '}
          <span className="measure quiet">
            <Fractions text={say(finding.measured)} />
          </span>
        </span>
      </button>
      {open && balance ? <Mends balance={balance} finding={finding} /> : null}
      {open ? children : null}
    </li>
  );
}

function formOf({ marks }: Finding): 'seam' | 'pool' {
  return marks.some((mark) => mark.kind === 'pool') ? 'pool' : 'seam';
}

/** The weight of a finding, as the length of a seam mark or, for a pool, of a chalk line. */
function Weight({ weight, form }: { weight: number; form: 'seam' | 'pool' }) {
  const reach = 6 + 34 * Math.min(1, Math.max(0, weight));
  return (
    <svg className="weight" width="44" height="16" viewBox="0 0 44 16" aria-hidden>
      {form === 'pool' ? (
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
