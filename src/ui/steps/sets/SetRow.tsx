// One strip set in the list: its letter, its cloth to scale, its height and wedges in one line. Opens in place.
import { ChevronDown, ChevronUp, Lock, TriangleAlert } from 'lucide-react';
import { memo } from 'react';
import type { LedgerRow } from '../../../cutting/ledger';
import type { Fabric, FabricId, StripSetId, WedgePlan } from '../../../model/project';
import { Fractions } from '../../fields/Fractions';
import { useSay } from '../../words';
import { heightWords } from './heightWords';
import { OpenSet } from './OpenSet';
import { SetCloth } from './SetCloth';
import { SewingArrows } from './SewingArrows';
import { SET_PROGRESS_NAMES } from './setNames';

interface Props {
  row: LedgerRow;
  wedge: WedgePlan;
  fabrics: ReadonlyMap<FabricId, Fabric>;
  across: number;
  open: boolean;
  onOpen: (id: StripSetId | null) => void;
}

export const SetRow = memo(function SetRow({ row, wedge, fabrics, across, open, onOpen }: Props) {
  const say = useSay();
  const { set, height, available } = row;
  const short = height < wedge.cutHeight - 1e-9;
  const values = { set: set.label, count: set.strips.length };
  return (
    <li className="set-item">
      <button
        type="button"
        className="set-row"
        aria-expanded={open}
        aria-label={say('Set {set}: {height}; {progress}', {
          ...values,
          height: set.strips.length === 0 ? say('no strips yet') : heightWords(height, wedge.cutHeight),
          progress: say(SET_PROGRESS_NAMES[set.progress]),
        })}
        onClick={() => onOpen(open ? null : set.id)}
      >
        <span className="number set-letter">{set.label}</span>
        <SetCloth set={set} seam={wedge.seam} fabrics={fabrics} across={across}>
          {open ? <SewingArrows set={set} seam={wedge.seam} /> : null}
        </SetCloth>
        <span className="set-line quiet">
          {short ? <TriangleAlert size={14} aria-hidden /> : null}
          {set.locked ? <Lock size={13} aria-hidden /> : null}
          <span>
            <Fractions
              text={
                set.strips.length === 0 ? say('No strips yet') : say(heightWords(height, wedge.cutHeight))
              }
            />
            {short ? '' : ` · ${say('{up} up, {down} down', { up: available.up, down: available.down })}`}
            {` · ${say(SET_PROGRESS_NAMES[set.progress])}`}
          </span>
          {open ? <ChevronUp size={16} aria-hidden /> : <ChevronDown size={16} aria-hidden />}
        </span>
      </button>
      {open ? <OpenSet set={set} /> : null}
    </li>
  );
});
