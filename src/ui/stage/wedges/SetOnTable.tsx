// One strip set on the cutting table: its cutting diagram at the scale of all sets, and its wedges, used and left.
import { ChevronRight } from 'lucide-react';
import { memo } from 'react';
import type { LedgerRow } from '../../../cutting/wedges/ledger';
import { cutsInUse, notDrawnWords, type WedgeUses } from '../../../cutting/wedges/uses';
import { heightShort } from '../../../geometry/stripSet';
import type { Fabric, FabricId, StripSetId, WedgePlan } from '../../../model/project';
import { Fractions } from '../../fields/Fractions';
import { heightWords } from '../../steps/sets/heightWords';
import { SET_PROGRESS_NAMES } from '../../steps/sets/setNames';
import { useSay } from '../../words';
import { CuttingDiagram } from './CuttingDiagram';
import { Pool } from './Pool';
import { SetCloth } from './SetCloth';

interface Props {
  row: LedgerRow;
  wedge: WedgePlan;
  fabrics: ReadonlyMap<FabricId, Fabric>;
  uses: WedgeUses;
  /** Length of the longest set, inches; all sets are drawn to its scale. */
  longest: number;
  open: boolean;
  onOpen: (set: StripSetId) => void;
}

export const SetOnTable = memo(function SetOnTable({
  row,
  wedge,
  fabrics,
  uses,
  longest,
  open,
  onOpen,
}: Props) {
  const say = useSay();
  const { set, height, available, left } = row;
  const short = heightShort(height, wedge) > 0;
  const notDrawn = notDrawnWords(set, wedge);
  const counts = short
    ? say(set.strips.length === 0 ? 'no strips yet' : heightWords(height, wedge))
    : say('Up {up}, {upLeft} left · down {down}, {downLeft} left', {
        up: available.up,
        upLeft: left.up,
        down: available.down,
        downLeft: left.down,
      });
  return (
    <li className={open ? 'cut-set open' : 'cut-set'} data-cut-set={set.id}>
      <button
        type="button"
        className="cut-name"
        aria-expanded={open}
        aria-label={say('Set {set}: {counts}', { set: set.label, counts })}
        onClick={() => onOpen(set.id)}
      >
        <bdi className="number">{set.label}</bdi>
        <span>
          <Fractions text={counts} />
          {` · ${say(SET_PROGRESS_NAMES[set.progress])}`}
          {set.cut ? ` · ${say('counted by hand')}` : null}
        </span>
        <ChevronRight size={16} aria-hidden />
      </button>
      <div className="cut-cloth" style={{ '--part': set.length / longest, '--long': set.length } as React.CSSProperties}>
        <SetCloth set={set} seam={wedge.seam} fabrics={fabrics} fullLength={Math.max(1, set.length)}>
          {short ? null : <CuttingDiagram set={set} wedge={wedge} cuts={cutsInUse(set, wedge, uses)} />}
        </SetCloth>
      </div>
      {notDrawn ? <p>{say(notDrawn)}</p> : null}
      {available.up + available.down > 0 ? (
        <div className="cut-pool">
          <Pool row={row} tip="up" uses={uses} />
          <Pool row={row} tip="down" uses={uses} />
        </div>
      ) : null}
    </li>
  ); // biome-ignore format: short
});
