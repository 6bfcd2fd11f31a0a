// Strips that have been cut join the list; the usual widths are one press away.
import { useEffect, useRef, useState } from 'react';
import { addStrips } from '../../../editing/fabrics';
import { phrase } from '../../../model/phrase';
import type { FabricId } from '../../../model/project';
import type { Problem } from '../../../model/result';
import { useApp, useAppStore } from '../../app';
import { Complaint } from '../../fields/Complaint';
import { CountField } from '../../fields/CountField';
import { FabricPicker } from '../../fields/FabricPicker';
import { Fractions } from '../../fields/Fractions';
import { LengthField } from '../../fields/LengthField';
import { useSay } from '../../words';
import { MOST_STRIPS } from './StripsRow';

const USUAL_WIDTHS = [1, 1.5, 2, 2.5] as const;

export function AddStrips({ onClose }: { onClose: () => void }) {
  const say = useSay();
  const store = useAppStore();
  const usable = useApp((app) => app.project.preferences.usableWidth);
  const box = useRef<HTMLFieldSetElement>(null);
  const [fabric, setFabric] = useState<FabricId | null>(null);
  const [width, setWidth] = useState(1.5);
  const [length, setLength] = useState(usable);
  const [count, setCount] = useState(2);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  useEffect(() => box.current?.querySelector('button')?.focus(), []);
  const taken =
    <T,>(set: (value: T) => void) =>
    (value: T) => {
      set(value);
      setProblems([]);
      return [];
    };
  const add = () => {
    if (fabric === null) {
      const message = phrase('Choose the fabric these strips are of.');
      setProblems([{ code: 'no-fabric', path: 'fabric', message }]);
      return;
    }
    const { project, run } = store.getState();
    setProblems(run(addStrips(project, { fabric, width, length, count })));
  };
  return (
    <fieldset ref={box} className="stack fab-open fab-new">
      <legend className="hidden-text">{say('Add strips')}</legend>
      <FabricPicker label="Fabric" value={fabric} onChange={taken(setFabric)} />
      <div className="fab-three">
        <LengthField label="Cut width" value={width} least={0.25} most={60} onCommit={taken(setWidth)} />
        <LengthField label="Length" value={length} least={1} most={4000} onCommit={taken(setLength)} />
        <CountField label="Strips" value={count} least={1} most={MOST_STRIPS} onCommit={taken(setCount)} />
      </div>
      <div className="row fab-usual" role="toolbar" aria-label={say('Usual cut widths')}>
        {USUAL_WIDTHS.map((usual) => (
          <button
            key={usual}
            type="button"
            className="button"
            aria-pressed={Math.abs(usual - width) < 1e-9}
            onClick={() => setWidth(usual)}
          >
            <span>
              <Fractions text={say('{width}', { width: { inches: usual } })} />
            </span>
          </button>
        ))}
      </div>
      <p className="quiet">
        {say('Precut strips: add them at {width} and split them lengthwise in the list.', {
          width: { inches: 2.5 },
        })}
      </p>
      <Complaint problems={problems} />
      <div className="row">
        <button type="button" className="button solid" onClick={add}>
          {say('Add these strips')}
        </button>
        <button type="button" className="button" onClick={onClose}>
          {say('Done')}
        </button>
      </div>
    </fieldset>
  );
}
