// Cloth joins the list; each kind begins with the size it usually has.
import { useEffect, useRef, useState } from 'react';
import { addCloth } from '../../../editing/clothOnHand';
import { phrase } from '../../../model/phrase';
import type { FabricId } from '../../../model/project';
import type { Problem } from '../../../model/result';
import { useApp, useAppStore } from '../../app';
import { Complaint } from '../../fields/Complaint';
import { FabricPicker } from '../../fields/FabricPicker';
import { useSay } from '../../words';
import { ClothFields } from './ClothFields';
import { type ClothKind, usualSize } from './clothWords';

export function AddCloth({ onClose }: { onClose: () => void }) {
  const say = useSay();
  const store = useAppStore();
  const usable = useApp((app) => app.project.preferences.usableWidth);
  const box = useRef<HTMLFieldSetElement>(null);
  const [fabric, setFabric] = useState<FabricId | null>(null);
  const [cloth, setCloth] = useState({
    kind: 'yardage' as ClothKind,
    ...usualSize('yardage', usable),
    count: 1,
  });
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  useEffect(() => box.current?.querySelector('button')?.focus(), []);
  const add = () => {
    if (fabric === null) {
      const message = phrase('Choose the fabric this cloth is of.');
      setProblems([{ code: 'no-fabric', path: 'fabric', message }]);
      return;
    }
    const { project, run } = store.getState();
    setProblems(run(addCloth(project, { fabric, ...cloth })));
  };
  return (
    <fieldset ref={box} className="stack fab-open fab-new">
      <legend className="hidden-text">{say('Add cloth')}</legend>
      <FabricPicker
        label="Fabric"
        value={fabric}
        onChange={(chosen) => {
          setFabric(chosen);
          setProblems([]);
        }}
      />
      <ClothFields
        cloth={cloth}
        onChange={(to) => {
          setCloth({ ...cloth, ...to });
          return [];
        }}
        onKind={(kind) => setCloth({ ...cloth, kind, ...usualSize(kind, usable) })}
      />
      <Complaint problems={problems} />
      <div className="row">
        <button type="button" className="button solid" onClick={add}>
          {say('Add this cloth')}
        </button>
        <button type="button" className="button" onClick={onClose}>
          {say('Done')}
        </button>
      </div>
    </fieldset>
  );
}
