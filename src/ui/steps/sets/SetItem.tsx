// One strip set in the list of the sets step or the wedges step: its letter, its cloth to scale with a drawing over it, and one
// line of words. It opens in place.
import { ChevronDown, ChevronUp } from 'lucide-react';
import type { ReactNode } from 'react';
import type { LedgerRow } from '../../../cutting/wedges/ledger';
import type { Fabric, FabricId, StripSetId, WedgePlan } from '../../../model/project';
import { Fractions } from '../../fields/Fractions';
import { useSay } from '../../words';
import { SetCloth } from './SetCloth';
import { SET_PROGRESS_NAMES } from './setNames';

/** The props that every list of sets passes to its rows. */
export interface SetItemProps {
  row: LedgerRow;
  wedge: WedgePlan;
  fabrics: ReadonlyMap<FabricId, Fabric>;
  /** Length of the longest set, inches; all sets are drawn to its scale. */
  longest: number;
  open: boolean;
  onOpen: (id: StripSetId | null) => void;
}

interface Props extends SetItemProps {
  /** Name of the row for screen readers. */
  name: string;
  /** Words beside the cloth; the progress of the set follows them. */
  line: string;
  signs?: ReactNode;
  over: ReactNode;
  /** Content of the open row. */
  children: ReactNode;
}

export function SetItem({ row, wedge, fabrics, longest, open, onOpen, name, line, ...props }: Props) {
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
        <SetCloth set={set} seam={wedge.seam} fabrics={fabrics} fullLength={longest}>
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
