// Step 2, strip sets: sets made at random or by hand, and their height compared with the height that the wedge needs.
import { Plus } from 'lucide-react';
import { useMemo } from 'react';
import { wedgeLedger } from '../../cutting/wedges/ledger';
import { addSet } from '../../editing/commands/stripSets';
import type { StripSetId } from '../../model/project';
import { useApp, useAppStore } from '../app';
import { Complaint, useRun } from '../fields/Complaint';
import { useSay } from '../words';
import { LayOutQuilt } from './LayOutQuilt';
import { MakeSets } from './sets/MakeSets';
import { MarkAll } from './sets/MarkAll';
import { SetList } from './sets/SetList';
import { SetRow } from './sets/SetRow';
import { SewingAids } from './sets/SewingAids';
import './sets/sets.css';
import { StepFoot } from './StepFoot';
import { StepHeading } from './StepHeading';

export function SetsStep() {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const open = useApp((app) => app.laid.set);
  const setOpen = (set: StripSetId | null) => store.getState().lay({ set });
  const [run, problems] = useRun();
  const ledger = useMemo(() => wedgeLedger(project), [project]);
  const noStrips = project.stripsOnHand.every((row) => row.count === 0);
  const addByHand = () => {
    if (!run(addSet())) return;
    setOpen(store.getState().project.stripSets.at(-1)?.id ?? null);
  };
  return (
    <>
      <StepHeading title="Strip sets" line="Strips sewn side by side; wedges are cut across them." />
      {noStrips ? (
        <section>
          <p className="fab-hint">
            {say('Sets are made from the strips on hand, and none are written down yet.')}
          </p>
          <button type="button" className="button solid" onClick={() => store.getState().goTo('fabrics')}>
            {say('Write down strips')}
          </button>
        </section>
      ) : (
        <MakeSets />
      )}
      <section aria-label={say('The sets')}>
        <h3>{say('The sets')}</h3>
        {ledger.length === 0 ? (
          <p className="fab-hint">
            {say(
              noStrips
                ? 'No sets yet. A set that is sewn already can be laid down strip by strip.'
                : 'No sets yet. Make them at random above, or lay the strips in the order they were sewn.',
            )}
          </p>
        ) : (
          <SetList ledger={ledger} open={open} onOpen={setOpen} Row={SetRow} />
        )}
        <div className="stack set-foot">
          <button data-once type="button" className="button set-by-hand" onClick={addByHand}>
            <Plus size={16} aria-hidden /> {say('Add a set by hand')}
          </button>
          <Complaint problems={problems} />
          <MarkAll />
        </div>
      </section>
      <SewingAids />
      <StepFoot>
        <LayOutQuilt />
      </StepFoot>
    </>
  );
}
