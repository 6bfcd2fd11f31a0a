// Step 3, wedges: the template, what it makes, the test block, and the set that is open. The sets and their wedges lie on the
// large area (stage/wedges).
import { useMemo } from 'react';
import { wedgeLedger } from '../../cutting/wedges/ledger';
import { finishedBlock } from '../../geometry/wedge';
import { useApp } from '../app';
import { Fractions } from '../fields/Fractions';
import { useSay } from '../words';
import { Caution } from './Caution';
import './sets/sets.css';
import { StepFoot } from './StepFoot';
import { StepHeading } from './StepHeading';
import { CutNext } from './wedges/CutNext';
import { FirstBlock } from './wedges/FirstBlock';
import { OpenCuts } from './wedges/OpenCuts';
import { SettingPiece } from './wedges/SettingPiece';
import { WedgePicture } from './wedges/WedgePicture';
import { WedgePlanFields } from './wedges/WedgePlanFields';
import './wedges/wedges.css';
import { WhatItMakes } from './wedges/WhatItMakes';

export function WedgesStep() {
  const say = useSay();
  const project = useApp((app) => app.project);
  const open = useApp((app) => app.laid.set);
  const { wedge } = project;
  const ledger = useMemo(() => wedgeLedger(project), [project]);
  const row = ledger.find(({ set }) => set.id === open);
  const { width, height } = finishedBlock(wedge);
  return (
    <>
      <StepHeading title="Wedges" line="Cut across the strip sets, tip up and tip down in turn." />
      <StepFoot>
        <CutNext ledger={ledger} open={row ?? null} />
      </StepFoot>
      {row ? <OpenCuts key={row.set.id} row={row} /> : null}
      <section aria-label={say('The wedge')}>
        <h3>{say('The wedge')}</h3>
        <WedgePlanFields />
      </section>
      <details className="wdg-fold">
        <summary>
          <Fractions
            text={
              Math.abs(width - height) < 1e-9
                ? say('It makes a block {width} square', { width: { inches: width } })
                : say('It makes a block {width} × {height}', {
                    width: { inches: width },
                    height: { inches: height },
                  })
            }
          />
        </summary>
        <div className="stack">
          <div className="wdg-makes">
            <WedgePicture wedge={wedge} />
          </div>
          <WhatItMakes wedge={wedge} />
          {wedge.perBlock === 8 ? null : <SettingPiece wedge={wedge} />}
        </div>
      </details>
      <details className="wdg-fold">
        <summary>{say('Check against your test block')}</summary>
        <FirstBlock />
      </details>
      <Caution about={['cutting']} />
    </>
  );
}
