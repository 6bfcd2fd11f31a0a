// One strip set in a list, on the sewing table or the cutting table: its letter, its cloth to scale with what is drawn over
// it, one line of words. Opens in place.
import { ChevronDown, ChevronUp } from 'lucide-react';
import type { ReactNode } from 'react';
import type { LedgerRow } from '../../../cutting/wedges/ledger';
import type { Fabric, FabricId, StripSetId, WedgePlan } from '../../../model/project';
import { Fractions } from '../../fields/Fractions';
import { useSay } from '../../words';
import { SetCloth } from './SetCloth';
import { SET_PROGRESS_NAMES } from './setNames';

/** What every list of sets hands to its rows. */
export interface SetItemProps {
  row: LedgerRow;
  wedge: WedgePlan;
  fabrics: ReadonlyMap<FabricId, Fabric>;
  /** The length of the longest set in inches; all are drawn to its scale. */
  across: number;
  open: boolean;
  onOpen: (id: StripSetId | null) => void;
}

interface Props extends SetItemProps {
  /** For screen readers. */
  name: string;
  /** Beside the cloth; how far the set is follows. */
  line: string;
  signs?: ReactNode;
  over: ReactNode;
  /** What opens. */
  children: ReactNode;
}

export function SetItem({ row, wedge, fabrics, across, open, onOpen, name, line, ...props }: Props) {
  const say = useSay();
  const { set } = row;
  return (
    <li className="set-item">
      <button
        type="button"
        className="set-row"
        aria-expanded={open}
        aria-label={name}
        onClick={() => onOpen(open ? null : set.id)}
      >
        <bdi className="number set-letter">{set.label}</bdi>
        <SetCloth set={set} seam={wedge.seam} fabrics={fabrics} across={across}>
          {props.over}
        </SetCloth>
        <span className="set-line quiet">
          {props.signs}
          <span>
            <Fractions text={line} />
            {` · ${say(SET_PROGRESS_NAMES[set.progress])}`}
          </span>
          {open ? <ChevronUp size={16} aria-hidden /> : <ChevronDown size={16} aria-hidden />}
        </span>
      </button>
      {open ? props.children : null}
    </li>
  );
}
