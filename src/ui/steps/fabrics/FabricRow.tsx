// One fabric in the list: its cloth, its value as a grey, and its uses. It opens in place to be changed.
import { ChevronDown, ChevronUp, Eye, Trash2 } from 'lucide-react';
import { memo, useState } from 'react';
import { clothValue } from '../../../drawing/shares';
import { changeFabric, removeFabric, replaceFabric } from '../../../editing/commands/fabrics';
import type { Phrase } from '../../../model/phrase';
import type { Fabric, FabricId } from '../../../model/project';
import { useApp, useAppStore } from '../../app';
import { Complaint, useRun } from '../../fields/Complaint';
import { FabricPicker } from '../../fields/FabricPicker';
import { Swatch } from '../../fields/Swatch';
import { useSay } from '../../words';
import { FabricForm } from './FabricForm';
import { greyOf } from './greyOf';

interface Props {
  fabric: Fabric;
  uses: readonly Phrase[];
  open: boolean;
  onOpen: (id: FabricId | null) => void;
}

export const FabricRow = memo(function FabricRow({ fabric, uses, open, onOpen }: Props) {
  const say = useSay();
  const value = clothValue(fabric);
  const used = uses.map((use) => say(use)).join(' · ');
  return (
    <li className="fab-item">
      <button
        type="button"
        className="fab-row"
        aria-expanded={open}
        onClick={() => onOpen(open ? null : fabric.id)}
      >
        <Swatch fabric={fabric} size={44} inches={3} />
        <span className="fab-value" style={{ background: greyOf(value) }} aria-hidden />
        <span className="fab-words">
          <bdi className="one-line">{fabric.name}</bdi>
          <span className="quiet">
            {say('Value {value}', { value: Math.round(value) })}
            {fabric.background ? ` · ${say('background')}` : ''}
            {used ? ` · ${used}` : ` · ${say('not used yet')}`}
          </span>
        </span>
        {open ? <ChevronUp size={16} aria-hidden /> : <ChevronDown size={16} aria-hidden />}
      </button>
      {open ? <OpenFabric fabric={fabric} /> : null}
    </li>
  );
});

function OpenFabric({ fabric }: { fabric: Fabric }) {
  const say = useSay();
  const store = useAppStore();
  const lit = useApp((app) => app.lit === fabric.id);
  const [run, problems] = useRun();
  return (
    <div className="stack fab-open">
      <FabricForm
        fabric={fabric}
        onCommit={(to) => store.getState().run(changeFabric(store.getState().project, fabric.id, to))}
      />
      <InItsPlace fabric={fabric} />
      <div className="spread">
        <button
          type="button"
          className="button"
          aria-pressed={lit}
          onClick={() => store.getState().light(lit ? null : fabric.id)}
        >
          <Eye size={16} aria-hidden /> {say('Show it on the wall')}
        </button>
        <button
          type="button"
          className="button"
          onClick={() => run(removeFabric(store.getState().project, fabric.id))}
        >
          <Trash2 size={16} aria-hidden /> {say('Remove')}
        </button>
      </div>
      <Complaint problems={problems} />
    </div>
  );
}

/** Replaces the fabric by another one wherever the quilt uses it. */
function InItsPlace({ fabric }: { fabric: Fabric }) {
  const say = useSay();
  const store = useAppStore();
  const several = useApp((app) => app.project.fabrics.length > 1);
  const [other, setOther] = useState<FabricId | null>(null);
  const [run, problems] = useRun();
  if (!several) return null;
  return (
    <div>
      <div className="fab-swap">
        <FabricPicker label="Put another in its place" value={other} onChange={setOther} />
        <button
          type="button"
          className="button"
          disabled={other === null || other === fabric.id}
          onClick={() => {
            if (other !== null && run(replaceFabric(store.getState().project, fabric.id, other)))
              setOther(null);
          }}
        >
          {say('Swap it everywhere')}
        </button>
      </div>
      <Complaint problems={problems} />
    </div>
  );
}
