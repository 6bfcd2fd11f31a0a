// Step 1, fabrics: the form of the fabric picked on the large area, new fabrics, strips and cloth on hand, planning.
import { Camera, Plus, Table2 } from 'lucide-react';
import { useApp, useAppStore } from '../app';
import { openPhotos } from '../stage/fabrics/photo/useTakePhotos';
import { useSay } from '../words';
import { AddFabric, firstFabric } from './fabrics/AddFabric';
import { ClothOnHand } from './fabrics/onHand/ClothOnHand';
import './fabrics/fabrics.css';
import { OpenFabric } from './fabrics/OpenFabric';
import { StripsOnHand } from './fabrics/onHand/StripsOnHand';
import { PlanBackwards } from './fabrics/plan/PlanBackwards';
import { PlanStrips } from './fabrics/plan/PlanStrips';
import { useDraft } from './fabrics/useDraft';
import { LayOutQuilt } from './LayOutQuilt';
import { StepFoot } from './StepFoot';
import { StepHeading } from './StepHeading';
import { useReturnFocus } from './useReturnFocus';

/** With fewer fabrics a set would have one fabric beside itself; the list warns of it. */
const FEW_FABRICS = 4;

export function FabricsStep() {
  const say = useSay();
  const store = useAppStore();
  const fabrics = useApp((app) => app.project.fabrics);
  const noStrips = useApp((app) => app.project.stripsOnHand.length === 0);
  const strips = useApp((app) => app.laid.strips);
  const photos = useApp((app) => app.laid.photos);
  const opened = useApp((app) => app.project.fabrics.find((fabric) => fabric.id === app.laid.fabric));
  const draft = useDraft('fabric', () => firstFabric(fabrics));
  const opener = useReturnFocus(draft.open);
  const cloths = fabrics.filter((fabric) => !fabric.background).length;
  // One fabric makes no set, so the foot asks for another before its strips.
  const few = cloths < 2;
  const entering = noStrips && !few;
  return (
    <>
      <StepHeading title="Fabrics" line="The fabrics you have, and the strips cut from them." />
      <StepFoot>
        {few && !draft.open ? (
          <button
            ref={opener}
            type="button"
            className="button solid"
            onClick={() => {
              store.getState().lay({ strips: false });
              draft.setOpen(true);
            }}
          >
            <Plus size={16} aria-hidden /> {say(cloths === 0 ? 'Add fabrics' : 'Add a fabric')}
          </button>
        ) : entering && !strips ? (
          <button
            type="button"
            data-strips-opener
            className="button solid"
            onClick={() => store.getState().lay({ strips: true })}
          >
            <Table2 size={16} aria-hidden /> {say('Enter strips')}
          </button>
        ) : null}
        {cloths > 0 ? <LayOutQuilt solid={!entering} /> : null}
      </StepFoot>
      {opened ? <OpenFabric key={opened.id} fabric={opened} /> : null}
      <section aria-label={say('Add fabrics')}>
        {cloths < FEW_FABRICS ? (
          <p className="fab-hint">
            {say(
              cloths === 0
                ? 'Start here: add the fabrics you want to sew with. A scrappy top wants eight or more, from light to dark.'
                : 'A few more fabrics, from light to dark, keep the wedges from meeting their own fabric.',
            )}
          </p>
        ) : null}
        {draft.open ? <AddFabric draft={draft} /> : null}
        <div className="row">
          {draft.open || few ? null : (
            <button ref={opener} type="button" className="button" onClick={() => draft.setOpen(true)}>
              <Plus size={16} aria-hidden /> {say('Add a fabric')}
            </button>
          )}
          <button
            type="button"
            data-photo-opener
            className="button"
            aria-pressed={photos}
            onClick={() => (photos ? store.getState().lay({ photos: false }) : openPhotos(store))}
          >
            <Camera size={16} aria-hidden /> {say('From a photograph')}
          </button>
        </div>
      </section>
      <StripsOnHand atFoot={entering} />
      <PlanStrips />
      <ClothOnHand />
      <PlanBackwards />
    </>
  );
}
