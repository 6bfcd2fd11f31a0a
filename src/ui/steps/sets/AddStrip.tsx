// A form that adds one strip to a set, on top of the others.
import { Plus } from 'lucide-react';
import { useState } from 'react';
import { USUAL } from '../../../model/lengths';
import { type FabricId, MOST_STRIPS, type Strip, type StripSet } from '../../../model/project';
import { FabricPicker } from '../../fields/FabricPicker';
import { LengthField } from '../../fields/LengthField';
import { useSay, useUnit } from '../../words';

export function AddStrip({ set, onAdd }: { set: StripSet; onAdd: (strip: Strip) => void }) {
  const say = useSay();
  const [fabric, setFabric] = useState<FabricId | null>(null);
  const [width, setWidth] = useState(USUAL[useUnit()].strips[1]);
  if (set.strips.length >= MOST_STRIPS) return null;
  return (
    <form
      className="set-strip-form set-strip-new"
      aria-label={say('Another strip for set {set}', { set: set.label })}
      onSubmit={(event) => {
        event.preventDefault();
        if (fabric !== null) onAdd({ fabric, width });
      }}
    >
      <FabricPicker label="Another strip of" value={fabric} onChange={setFabric} />
      <LengthField
        label="Cut width"
        value={width}
        least={0.25}
        most={60}
        onCommit={(next) => {
          setWidth(next);
          return [];
        }}
      />
      <button
        data-once
        type="submit"
        className="button"
        disabled={fabric === null}
        aria-label={say('Add the strip to set {set}', { set: set.label })}
      >
        <Plus size={16} aria-hidden />
      </button>
    </form>
  );
}
