// One strip set on the cutting table: its diagram, how many wedges it gives, are used and left. Opens for counting.
import { ChevronDown, ChevronUp } from 'lucide-react';
import { memo } from 'react';
import type { LedgerRow } from '../../../cutting/ledger';
import type { Fabric, FabricId, StripSetId, WedgePlan } from '../../../model/project';
import { Fractions } from '../../fields/Fractions';
import { useSay } from '../../words';
import { heightWords } from '../sets/heightWords';
import { SetCloth } from '../sets/SetCloth';
import { SET_PROGRESS_NAMES } from '../sets/setNames';
import { CuttingDiagram } from './CuttingDiagram';
import { OpenCuts } from './OpenCuts';

interface Props {
  row: LedgerRow;
  wedge: WedgePlan;
  fabrics: ReadonlyMap<FabricId, Fabric>;
  across: number;
  open: boolean;
  onOpen: (id: StripSetId | null) => void;
}

export const SetCuts = memo(function SetCuts({ row, wedge, fabrics, across, open, onOpen }: Props) {
  const say = useSay();
  const { set, height, available, left } = row;
  const short = height < wedge.cutHeight - 1e-9;
  const counts = say('Up {up}, {upLeft} left · down {down}, {downLeft} left', {
    up: available.up,
    upLeft: left.up,
    down: available.down,
    downLeft: left.down,
  });
  return (
    <li className="set-item">
      <button
        type="button"
        className="set-row"
        aria-expanded={open}
        aria-label={say('Set {set}: {counts}', {
          set: set.label,
          counts: short ? heightWords(height, wedge.cutHeight) : counts,
        })}
        onClick={() => onOpen(open ? null : set.id)}
      >
        <span className="number set-letter">{set.label}</span>
        <SetCloth set={set} seam={wedge.seam} fabrics={fabrics} across={across}>
          {short ? null : <CuttingDiagram set={set} wedge={wedge} />}
        </SetCloth>
        <span className="set-line quiet">
          <span>
            <Fractions text={short ? say(heightWords(height, wedge.cutHeight)) : counts} />
            {` · ${say(SET_PROGRESS_NAMES[set.progress])}`}
          </span>
          {open ? <ChevronUp size={16} aria-hidden /> : <ChevronDown size={16} aria-hidden />}
        </span>
      </button>
      {open ? <OpenCuts row={row} /> : null}
    </li>
  );
});
