// The colourways of the quilt side by side, each with its figures.
import { useState } from 'react';
import { swapsByValue, turnedColourway, type ValueOrder } from '../../../../cloth/colourway';
import { addColourway } from '../../../../editing/commands/colourways';
import { fabricsInUse } from '../../../../model/colourway';
import type { Fabric } from '../../../../model/project';
import { useApp } from '../../../app';
import { Choice } from '../../../fields/Choice';
import { Complaint, useRun } from '../../../fields/Complaint';
import { useSay } from '../../../words';
import { PartHeading } from '../PartHeading';
import { ColourwayCard } from './ColourwayCard';
import { QuiltCard } from './QuiltCard';
import './colourways.css';

type From = 'spare' | 'hues' | 'same';

export function ColourwaysSection() {
  const say = useSay();
  const project = useApp((app) => app.project);
  const [open, setOpen] = useState<string | null>(null);
  return (
    <section aria-labelledby="colourways-title">
      <PartHeading id="colourways-title" />
      <p className="quiet">
        {say('The same blocks, the same sewing, other cloth. The quilt on the wall stays as it is.')}
      </p>
      <ul className="colourways">
        {project.colourways.length > 0 ? <QuiltCard /> : null}
        {project.colourways.map((colourway) => (
          <ColourwayCard
            key={colourway.id}
            colourway={colourway}
            open={open === colourway.id}
            onOpen={() => setOpen(open === colourway.id ? null : colourway.id)}
          />
        ))}
      </ul>
      <MakeColourway />
    </section>
  );
}

function MakeColourway() {
  const say = useSay();
  const [run, problems] = useRun();
  const project = useApp((app) => app.project);
  const [from, setFrom] = useState<From>('hues');
  const [order, setOrder] = useState<ValueOrder>('kept');
  const [degrees, setDegrees] = useState(120);
  const inUse = fabricsInUse(project);
  const spare = spareCloth(project.fabrics, inUse);
  const make = () => {
    const name = freshName(say('Colourway {letter}', { letter: '' }).trim(), project.colourways);
    if (from === 'hues') {
      const { swaps, cloth } = turnedColourway(project, name, degrees, order);
      return run(addColourway(name, swaps, cloth));
    }
    return run(addColourway(name, swapsByValue(inUse, from === 'same' ? inUse : spare, order)));
  };
  const tooFew = from === 'spare' && spare.length === 0;
  return (
    <div className="stack make-colourway">
      <Choice
        label="Make one from"
        value={from}
        options={[
          { value: 'hues', label: 'Turned hues' },
          { value: 'spare', label: 'Unused cloth' },
          { value: 'same', label: 'Same cloth' },
        ]}
        onChange={setFrom}
      />
      {from === 'hues' ? (
        <label className="field">
          <span className="label">
            {say('Turn every hue by {degrees}°; the background stays', { degrees })}
          </span>
          <input
            type="range"
            min={15}
            max={345}
            step={15}
            value={degrees}
            style={{ accentColor: 'var(--solid)', padding: 0 }}
            onChange={(event) => setDegrees(Number(event.target.value))}
          />
        </label>
      ) : null}
      <Choice
        label="Lights and darks"
        value={order}
        options={[
          { value: 'kept', label: 'As they are' },
          { value: 'turnedOver', label: 'Turned over' },
        ]}
        onChange={setOrder}
      />
      {tooFew ? (
        <p className="quiet">{say('No cloth in the list is unused. Add fabrics first, or turn the hues.')}</p>
      ) : null}
      {from === 'spare' && spare.length > 0 && spare.length < inUse.length ? (
        <p className="quiet">
          {say('{spare} unused cloths for {used}: some serve twice, so more will meet themselves.', {
            spare: spare.length,
            used: inUse.length,
          })}
        </p>
      ) : null}
      <div>
        <button type="button" className="button" disabled={tooFew || inUse.length === 0} onClick={make}>
          {say('Make a colourway')}
        </button>
      </div>
      <Complaint problems={problems} />
    </div>
  );
}

function spareCloth(fabrics: readonly Fabric[], inUse: readonly Fabric[]): Fabric[] {
  const used = new Set(inUse.map((fabric) => fabric.id));
  return fabrics.filter((fabric) => !used.has(fabric.id));
}

function freshName(stem: string, taken: readonly { readonly name: string }[]): string {
  const names = new Set(taken.map((one) => one.name));
  let number = taken.length + 1;
  while (names.has(`${stem} ${number}`)) number += 1;
  return `${stem} ${number}`;
}
