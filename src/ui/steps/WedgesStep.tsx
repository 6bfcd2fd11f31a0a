// Step 3, wedges: the template and its block, the measure of the first sewn block, and where wedges are cut on each set.
import { useMemo } from 'react';
import { wedgeLedger } from '../../cutting/wedges/ledger';
import type { StripSetId } from '../../model/project';
import { useApp, useAppStore } from '../app';
import { useSay } from '../words';
import { Caution } from './Caution';
import { SetList } from './sets/SetList';
import './sets/sets.css';
import { StepFoot } from './StepFoot';
import { StepHeading } from './StepHeading';
import { FirstBlock } from './wedges/FirstBlock';
import { SetCuts } from './wedges/SetCuts';
import { SettingPiece } from './wedges/SettingPiece';
import { WasteHatch } from './wedges/WasteHatch';
import { WedgePicture } from './wedges/WedgePicture';
import { WedgePlanFields } from './wedges/WedgePlanFields';
import './wedges/wedges.css';
import { WhatItMakes } from './wedges/WhatItMakes';

export function WedgesStep() {
  const say = useSay();
  const wedge = useApp((app) => app.project.wedge);
  return (
    <>
      <StepHeading title="Wedges" line="Cut across the strip sets, tip up and tip down in turn." />
      <section aria-label={say('The wedge')}>
        <h3>{say('The wedge')}</h3>
        <div className="stack">
          <WedgePlanFields />
          <div className="wdg-makes">
            <WedgePicture wedge={wedge} />
          </div>
          <WhatItMakes wedge={wedge} />
          {wedge.perBlock === 8 ? null : <SettingPiece wedge={wedge} />}
        </div>
      </section>
      <CuttingTable />
      <FirstBlock />
      <Caution about={['cutting']} />
      <StepFoot />
    </>
  );
}

function CuttingTable() {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const open = useApp((app) => app.laid.set);
  const setOpen = (set: StripSetId | null) => store.getState().lay({ set });
  const ledger = useMemo(() => wedgeLedger(project), [project]);
  const left = ledger.reduce((sum, row) => ({ up: sum.up + row.left.up, down: sum.down + row.left.down }), {
    up: 0,
    down: 0,
  });
  return (
    <section aria-label={say('On the cutting table')}>
      <h3>{say('On the cutting table')}</h3>
      {ledger.length === 0 ? (
        <div className="stack">
          <p>{say('Wedges are cut from strip sets, and there are none yet.')}</p>
          <div>
            <button type="button" className="button solid" onClick={() => store.getState().goTo('sets')}>
              {say('Make strip sets')}
            </button>
          </div>
        </div>
      ) : (
        <>
          <p className="quiet">
            {say(
              'Wedges no block uses yet: {up} tip up, {down} tip down. What is hatched is left over.',
              left,
            )}
          </p>
          <WasteHatch />
          <SetList ledger={ledger} open={open} onOpen={setOpen} Row={SetCuts} />
        </>
      )}
    </section>
  );
}
