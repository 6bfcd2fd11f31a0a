// Step 1, fabrics: the list of fabrics, and cloth and strips on hand.
import { Plus } from 'lucide-react';
import { useMemo, useState } from 'react';
import { clothValue } from '../../drawing/shares';
import type { Fabric, FabricId } from '../../model/project';
import { useApp } from '../app';
import { Choice } from '../fields/Choice';
import { useSay } from '../words';
import { AddFabric, firstFabric } from './fabrics/AddFabric';
import { FabricRow } from './fabrics/FabricRow';
import { ClothOnHand } from './fabrics/onHand/ClothOnHand';
import './fabrics/fabrics.css';
import { StripsOnHand } from './fabrics/onHand/StripsOnHand';
import { PlanBackwards } from './fabrics/plan/PlanBackwards';
import { PlanStrips } from './fabrics/plan/PlanStrips';
import { useDraft } from './fabrics/useDraft';
import { usesInWords } from './fabrics/uses';
import { LayOutQuilt } from './LayOutQuilt';
import { StepFoot } from './StepFoot';
import { StepHeading } from './StepHeading';
import { useReturnFocus } from './useReturnFocus';

type Order = 'added' | 'value' | 'name';

/** With fewer fabrics a set would have one fabric beside itself; the list warns of it. */
const FEW_FABRICS = 4;

export function FabricsStep() {
  const say = useSay();
  const project = useApp((app) => app.project);
  const [order, setOrder] = useState<Order>('added');
  const [open, setOpen] = useState<FabricId | null>(null);
  const draft = useDraft('fabric', () => firstFabric(project.fabrics.length));
  const opener = useReturnFocus(draft.open);
  const shown = useMemo(() => sorted(project.fabrics, order), [project.fabrics, order]);
  const uses = useMemo(() => usesInWords(project), [project]);
  const cloths = project.fabrics.filter((fabric) => !fabric.background).length;
  return (
    <>
      <StepHeading title="Fabrics" line="The cloth you have, and the strips cut from it." />
      <section aria-label={say('Fabrics')}>
        {cloths < FEW_FABRICS ? (
          <p className="fab-hint">
            {say(
              cloths === 0
                ? 'Start here: add the fabrics you want to sew with. A scrappy top wants eight or more, from light to dark.'
                : 'A few more fabrics, from light to dark, keep the wedges from meeting their own cloth.',
            )}
          </p>
        ) : null}
        {project.fabrics.length > 2 ? (
          <Choice
            label="In order"
            hideLabel
            value={order}
            options={[
              { value: 'added', label: 'as added' },
              { value: 'value', label: 'light to dark' },
              { value: 'name', label: 'by name' },
            ]}
            onChange={setOrder}
          />
        ) : null}
        <ul className="fab-list">
          {shown.map((fabric) => (
            <FabricRow
              key={fabric.id}
              fabric={fabric}
              uses={uses.get(fabric.id) ?? []}
              open={open === fabric.id}
              onOpen={setOpen}
            />
          ))}
        </ul>
        {draft.open ? (
          <AddFabric draft={draft} />
        ) : (
          <button
            ref={opener}
            type="button"
            className={cloths === 0 ? 'button solid fab-add' : 'button fab-add'}
            onClick={() => {
              setOpen(null);
              draft.setOpen(true);
            }}
          >
            <Plus size={16} aria-hidden /> {say('Add a fabric')}
          </button>
        )}
      </section>
      <StripsOnHand />
      <PlanStrips />
      <ClothOnHand />
      <PlanBackwards />
      <StepFoot>
        <LayOutQuilt solid />
      </StepFoot>
    </>
  );
}

function sorted(fabrics: readonly Fabric[], order: Order): readonly Fabric[] {
  switch (order) {
    case 'added':
      return fabrics;
    case 'value':
      return fabrics.toSorted((one, other) => clothValue(other) - clothValue(one));
    case 'name':
      return fabrics.toSorted((one, other) => one.name.localeCompare(other.name));
    default:
      return order satisfies never;
  }
}
