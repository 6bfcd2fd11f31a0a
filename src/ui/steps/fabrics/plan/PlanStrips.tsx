// Planning forwards: the strips to cut for a number of blocks, by fabric and width, in proportions of narrow, middle and wide.
import { Scissors } from 'lucide-react';
import { useMemo, useState } from 'react';
import { changeWedge } from '../../../../editing/commands/stripSets';
import type { Fabric, FabricId } from '../../../../model/project';
import { useApp, useAppStore } from '../../../app';
import { LengthField } from '../../../fields/LengthField';
import { useEscape } from '../../../useEscape';
import { useSay } from '../../../words';
import { useReturnFocus } from '../../useReturnFocus';
import { LookChoice, useLook } from './LookChoice';
import { Planned } from './Planned';
import { type TopWish, WantedTop, wantedTop } from './WantedTop';

export function PlanStrips() {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const { fabrics, wedge } = project;
  const [open, setOpen] = useState(false);
  const [wish, setWish] = useState<TopWish>({ by: 'blocks', blocks: null });
  const wanted = useMemo(() => wantedTop(project, wish), [project, wish]);
  const [look, setLook] = useLook();
  const [leftOut, setLeftOut] = useState<ReadonlySet<FabricId>>(new Set());
  const opener = useReturnFocus(open);
  useEscape(() => setOpen(false), open);
  const cloths = useMemo(() => fabrics.filter((fabric) => !fabric.background), [fabrics]);
  const chosen = useMemo(() => cloths.filter((fabric) => !leftOut.has(fabric.id)), [cloths, leftOut]);
  if (cloths.length === 0) return null;
  if (!open) {
    return (
      <button ref={opener} type="button" className="button fab-add" onClick={() => setOpen(true)}>
        <Scissors size={16} aria-hidden /> {say('Work out what to cut')}
      </button>
    );
  }
  return (
    <section className="stack" aria-label={say('What to cut')}>
      <h3>{say('What to cut')}</h3>
      <WantedTop wish={wish} onChange={setWish} />
      <div className="fab-three">
        <LengthField
          label="Cut height of the wedge"
          value={wedge.cutHeight}
          least={1}
          most={40}
          onCommit={(cutHeight) => store.getState().run(changeWedge({ cutHeight }), 'here')}
        />
      </div>
      <LookChoice look={look} onChange={setLook} />
      <Chosen cloths={cloths} leftOut={leftOut} onChange={setLeftOut} />
      {wanted ? <Planned wanted={wanted} look={look} cloths={chosen} onClose={() => setOpen(false)} /> : null}
    </section>
  );
}

interface ChosenProps {
  cloths: readonly Fabric[];
  leftOut: ReadonlySet<FabricId>;
  onChange: (leftOut: ReadonlySet<FabricId>) => void;
}

/** The choice of fabrics to cut the strips from. */
function Chosen({ cloths, leftOut, onChange }: ChosenProps) {
  const say = useSay();
  const count = cloths.filter((fabric) => !leftOut.has(fabric.id)).length;
  return (
    <details>
      <summary>{say('From {count} of {all} fabrics', { count, all: cloths.length })}</summary>
      <ul className="onhand-chosen">
        {cloths.map((fabric) => (
          <li key={fabric.id}>
            <label className="check">
              <input
                type="checkbox"
                checked={!leftOut.has(fabric.id)}
                onChange={(event) => {
                  const next = new Set(leftOut);
                  if (event.target.checked) next.delete(fabric.id);
                  else next.add(fabric.id);
                  onChange(next);
                }}
              />
              <bdi className="one-line">{fabric.name}</bdi>
            </label>
          </li>
        ))}
      </ul>
    </details>
  );
}
