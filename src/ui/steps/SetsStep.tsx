// Step 2, strip sets: what to make, and the set that is open. The sets themselves lie on the large area (stage/sets).
import { useState } from 'react';
import { findSet } from '../../model/find';
import { useApp } from '../app';
import { useSay } from '../words';
import { FootSlot } from './FootAction';
import { LayOutQuilt } from './LayOutQuilt';
import { MakeSets } from './sets/MakeSets';
import { MarkAll } from './sets/MarkAll';
import { OpenSet } from './sets/OpenSet';
import { SewingAids } from './sets/SewingAids';
import './sets/sets.css';
import { meaningOf } from '../../model/words/glossary';
import { StepFoot } from './StepFoot';
import { StepHeading } from './StepHeading';
import './fabrics/fabrics.css';

export function SetsStep() {
  const say = useSay();
  const project = useApp((app) => app.project);
  const open = useApp((app) => app.laid.set);
  const [foot, setFoot] = useState<HTMLElement | null>(null);
  const noStrips = project.stripsOnHand.every((row) => row.count === 0);
  const set = open === null ? undefined : findSet(project, open);
  return (
    <FootSlot value={foot}>
      <StepHeading title="Strip sets" line={meaningOf('strip set')} />
      <StepFoot>
        <span className="foot-slot" ref={setFoot} />
        <LayOutQuilt />
      </StepFoot>
      {set ? <OpenSet key={set.id} set={set} /> : null}
      {noStrips ? (
        <section>
          <p className="fab-hint">
            {say('Sets are made from the strips on hand, and there are none yet.')}{' '}
            {say('A set that is sewn already can be laid down strip by strip.')}
          </p>
        </section>
      ) : (
        <MakeSets />
      )}
      <MarkAll />
      <SewingAids />
    </FootSlot>
  );
}
