// The cutting table: the cutting diagram of every set at one scale, and the pool of wedges, tip up and tip down, used and left.
import { useCallback, useEffect, useMemo } from 'react';
import { wedgeLedger } from '../../../cutting/wedges/ledger';
import { wedgeUses } from '../../../cutting/wedges/uses';
import type { StripSetId } from '../../../model/project';
import { useApp, useAppStore } from '../../app';
import '../../steps/wedges/wedges.css';
import { useFabrics } from '../../steps/blocks/useFabrics';
import { useSay } from '../../words';
import { showsWedges } from './lightWedges';
import { SetOnTable } from './SetOnTable';
import { WasteHatch } from './WasteHatch';
import './wedgesStage.css';

export function WedgesStage() {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const open = useApp((app) => app.laid.set);
  const fabrics = useFabrics();
  const ledger = useMemo(() => wedgeLedger(project), [project]);
  const uses = useMemo(() => wedgeUses(project), [project]);
  const longest = Math.max(1, ...ledger.map((row) => row.set.length));
  const onOpen = useCallback(
    (set: StripSetId) => store.getState().lay({ set: store.getState().laid.set === set ? null : set }),
    [store],
  );
  useEffect(
    () => () => {
      if (showsWedges(store.getState().spot)) store.getState().showSpot(null);
    },
    [store],
  );
  return (
    <section className="cut-table" aria-label={say('On the cutting table')}>
      {ledger.length === 0 ? (
        <p>{say('Wedges are cut from strip sets, and there are none yet.')}</p>
      ) : (
        <>
          <Legend />
          <WasteHatch />
          <ul>
            {ledger.map((row) => (
              <SetOnTable
                key={row.set.id}
                row={row}
                wedge={project.wedge}
                fabrics={fabrics}
                uses={uses}
                longest={longest}
                open={open === row.set.id}
                onOpen={onOpen}
              />
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

/** How many wedges there are, and the signs of the diagrams. */
function Legend() {
  const say = useSay();
  const project = useApp((app) => app.project);
  const sum = { up: 0, down: 0, leftUp: 0, leftDown: 0 };
  for (const { available, left } of wedgeLedger(project)) {
    sum.up += available.up;
    sum.down += available.down;
    sum.leftUp += left.up;
    sum.leftDown += left.down;
  }
  return (
    <div className="cut-legend">
      <p>
        {say('{up} wedges tip up, {leftUp} of them left; {down} tip down, {leftDown} of them left.', sum)}
      </p>
      <p>
        {say('Octagon with a number: used in that block. No octagon: left. Hatched: waste or lost.')}{' '}
        {say('Press a row of wedges to see them on the wall.')}
      </p>
    </div>
  );
}
