// The colourways of the quilt: how to make one, and the choices of the one that is open. They lie side by side on the large area.
import { useState } from 'react';
import { swapsByValue, turnedColourway, type ValueOrder } from '../../../../cloth/colourway';
import { addColourway } from '../../../../editing/commands/colourways';
import { fabricsInUse } from '../../../../model/colourway';
import type { Fabric } from '../../../../model/project';
import { useApp } from '../../../app';
import { Choice } from '../../../fields/Choice';
import { Complaint, useRun } from '../../../fields/Complaint';
import { useSay, useWrite } from '../../../words';
import { Part } from '../Part';
import { OpenColourway } from './OpenColourway';
import { PicturesStay } from './PicturesStay';
import './colourways.css';

type From = 'spare' | 'hues' | 'same';

export function ColourwaysSection() {
  const project = useApp((app) => app.project);
  const opened = useApp((app) => app.laid.colourway);
  const colourway = project.colourways.find((one) => one.id === opened);
  return colourway ? <OpenColourway key={colourway.id} colourway={colourway} /> : <MakeColourway />;
}

function MakeColourway() {
  const say = useSay();
  const write = useWrite();
  const [run, problems] = useRun();
  const project = useApp((app) => app.project);
  const [from, setFrom] = useState<From>('hues');
  const [order, setOrder] = useState<ValueOrder>('kept');
  const [degrees, setDegrees] = useState(120);
  const inUse = fabricsInUse(project);
  const spare = spareCloth(project.fabrics, inUse);
  const make = () => {
    const name = freshName(write('Colourway {letter}', { letter: '' }).trim(), project.colourways);
    if (from === 'hues') {
      const { swaps, cloth } = turnedColourway(project, name, degrees, order, write);
      return run(addColourway(name, swaps, cloth));
    }
    return run(addColourway(name, swapsByValue(inUse, from === 'same' ? inUse : spare, order)));
  };
  const tooFew = from === 'spare' && spare.length === 0;
  const foot = (
    <>
      <button type="button" className="button solid" disabled={tooFew || inUse.length === 0} onClick={make}>
        {say('Make a colourway')}
      </button>
      <Complaint problems={problems} />
    </>
  );
  return (
    <Part id="colourways" foot={foot}>
      <div className="stack">
        <p className="quiet">
          {say('The same blocks and sewing in other fabrics. The quilt on the wall stays as it is.')}
        </p>
        <PicturesStay />
        <Choice
          label="Make one from"
          value={from}
          options={[
            { value: 'hues', label: 'Shift colours' },
            { value: 'spare', label: 'Other fabrics' },
            { value: 'same', label: 'Reuse these' },
          ]}
          onChange={setFrom}
        />
        {from === 'hues' ? (
          <label className="field">
            <span className="label">
              {say('Shift every colour by {degrees}°; the background stays', { degrees })}
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
        {from === 'hues' && inUse.some(({ background, cloth }) => cloth.kind === 'photo' && !background) ? (
          <p className="quiet">
            {say('Photographed fabrics become plain fabrics of their shifted mean colour.')}
          </p>
        ) : null}
        <Choice
          label="Lights and darks"
          value={order}
          options={[
            { value: 'kept', label: 'As they are' },
            { value: 'turnedOver', label: 'Inverted' },
          ]}
          onChange={setOrder}
        />
        {tooFew ? (
          <p className="quiet">
            {say('Every fabric in the list is used already. Add fabrics first, or shift the colours.')}
          </p>
        ) : null}
        {from === 'spare' && spare.length > 0 && spare.length < inUse.length ? (
          <p className="quiet">
            {say('{spare} other fabrics for {used}: some serve twice, so more will meet themselves.', {
              spare: spare.length,
              used: inUse.length,
            })}
          </p>
        ) : null}
      </div>
    </Part>
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
