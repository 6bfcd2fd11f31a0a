// The form of a fabric, new or in the project: name, colour, print and background. The cloth shows every change at once.
import { useState } from 'react';
import type { Print } from '../../../model/project';
import type { Problem } from '../../../model/result';
import { meaningOf } from '../../../model/words/glossary';
import { Choice } from '../../fields/Choice';
import { TextField } from '../../fields/TextField';
import { useSay } from '../../words';
import { ClothSample, type NewFabric } from './ClothSample';
import { ColourField } from './ColourField';
import { FIRST_PRINT } from './motifNames';
import { PrintFields } from './PrintFields';

interface Props {
  fabric: NewFabric;
  onCommit: (to: Partial<NewFabric>) => readonly Problem[];
}

export function FabricForm({ fabric, onCommit }: Props) {
  const say = useSay();
  const [live, setLive] = useState<Partial<NewFabric>>({});
  // The last print, so that a change to plain cloth and back loses nothing.
  const [kept, setKept] = useState<Print>(fabric.cloth.kind === 'print' ? fabric.cloth.print : FIRST_PRINT);
  // The photograph too, which no field could bring back.
  const [photo] = useState(fabric.cloth.kind === 'photo' ? fabric.cloth : null);
  const commitPrint = (print: Print) => {
    setKept(print);
    return onCommit({ cloth: { kind: 'print', print } });
  };
  return (
    <div className="stack">
      <ClothSample className="fab-large" fabric={{ ...fabric, ...live }} pixelsPerInch={48} />
      <TextField label="Name" value={fabric.name} onCommit={(name) => onCommit({ name })} />
      <div className="fab-pair">
        <ColourField
          label="Colour"
          value={fabric.colour}
          onLive={(colour) => setLive(colour === null ? {} : { colour })}
          onCommit={(colour) => onCommit({ colour })}
        />
        <Choice
          label="Kind"
          value={fabric.cloth.kind}
          options={[
            { value: 'plain', label: 'plain' },
            { value: 'print', label: 'printed' },
            ...(photo ? [{ value: 'photo' as const, label: 'photographed' }] : []),
          ]}
          onChange={(kind) => {
            if (kind === 'print') commitPrint(kept);
            else onCommit({ cloth: kind === 'photo' && photo ? photo : { kind: 'plain' } });
          }}
        />
      </div>
      {fabric.cloth.kind === 'print' ? (
        <PrintFields
          fabric={fabric}
          print={fabric.cloth.print}
          onLive={(print) => setLive(print === null ? {} : { cloth: { kind: 'print', print } })}
          onCommit={commitPrint}
        />
      ) : null}
      <label className="check">
        <input
          type="checkbox"
          checked={fabric.background}
          onChange={(event) => onCommit({ background: event.target.checked })}
        />
        <span>
          {say('Background')} <span className="quiet">{say(meaningOf('background'))}</span>
        </span>
      </label>
    </div>
  );
}
