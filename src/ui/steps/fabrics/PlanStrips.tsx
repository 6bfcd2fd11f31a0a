// Planning forwards: what to cut for so many blocks, strips by fabric and width, in a proportion of narrow, middle and wide.
import { Scissors } from 'lucide-react';
import { useMemo, useState } from 'react';
import { planStrips } from '../../../cutting/planStrips';
import { changeWedge } from '../../../editing/stripSets';
import { writeDownStrips } from '../../../editing/stripsOnHand';
import { counted } from '../../../model/phrase';
import type { Fabric, FabricId } from '../../../model/project';
import { useApp, useAppStore } from '../../app';
import { Complaint, useRun } from '../../fields/Complaint';
import { CountField } from '../../fields/CountField';
import { Fractions } from '../../fields/Fractions';
import { LengthField } from '../../fields/LengthField';
import { useSay } from '../../words';
import { Caution } from '../Caution';
import { useReturnFocus } from '../useReturnFocus';
import { type Look, LookChoice, USUAL_LOOK, wantedWidths } from './LookChoice';
import { StripsTable } from './StripsTable';

const MOST_BLOCKS = 400;

export function PlanStrips() {
  const say = useSay();
  const store = useAppStore();
  const fabrics = useApp((app) => app.project.fabrics);
  const wedge = useApp((app) => app.project.wedge);
  const cells = useApp((app) => app.project.wall.cells.length);
  const [open, setOpen] = useState(false);
  const [blocks, setBlocks] = useState<number | null>(null);
  const [look, setLook] = useState<Look>(USUAL_LOOK);
  const [leftOut, setLeftOut] = useState<ReadonlySet<FabricId>>(new Set());
  const opener = useReturnFocus(open);
  const cloths = useMemo(() => fabrics.filter((fabric) => !fabric.background), [fabrics]);
  const chosen = useMemo(() => cloths.filter((fabric) => !leftOut.has(fabric.id)), [cloths, leftOut]);
  if (cloths.length === 0) return null;
  const wanted = Math.min(MOST_BLOCKS, blocks ?? cells);
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
      <div className="fab-three">
        <CountField
          label="For so many blocks"
          value={wanted}
          least={1}
          most={MOST_BLOCKS}
          onCommit={(next) => {
            setBlocks(next);
            return [];
          }}
        />
        <LengthField
          label="Cut height of the wedge"
          value={wedge.cutHeight}
          least={1}
          most={40}
          onCommit={(cutHeight) => store.getState().run(changeWedge({ cutHeight }))}
        />
      </div>
      <LookChoice look={look} onChange={setLook} />
      <Chosen cloths={cloths} leftOut={leftOut} onChange={setLeftOut} />
      <Planned blocks={wanted} look={look} cloths={chosen} onClose={() => setOpen(false)} />
    </section>
  );
}

interface ChosenProps {
  cloths: readonly Fabric[];
  leftOut: ReadonlySet<FabricId>;
  onChange: (leftOut: ReadonlySet<FabricId>) => void;
}

/** The fabrics the strips are shared out to. */
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

interface PlannedProps {
  blocks: number;
  look: Look;
  cloths: readonly Fabric[];
  onClose: () => void;
}

function Planned({ blocks, look, cloths, onClose }: PlannedProps) {
  const say = useSay();
  const wedge = useApp((app) => app.project.wedge);
  const length = useApp((app) => app.project.preferences.usableWidth);
  const [run, problems] = useRun();
  const plan = useMemo(
    () =>
      planStrips({
        blocks,
        wedge,
        widths: wantedWidths(look),
        fabrics: cloths.map((fabric) => fabric.id),
        length,
      }),
    [blocks, look, cloths, wedge, length],
  );
  if (cloths.length === 0) return <p>{say('Choose at least one fabric.')}</p>;
  if (!plan) {
    return <p>{say('No strip set of these widths and this length gives wedges as the wedge is planned.')}</p>;
  }
  const count = plan.strips.reduce((sum, row) => sum + row.count, 0);
  return (
    <>
      <StripsTable fabrics={cloths} strips={plan.strips} last="Cloth" lengths={plan.cloth} />
      <ul className="onhand-words">
        {plan.words.map((words) => (
          <li key={words.say} className="quiet">
            <Fractions text={say(words)} />
          </li>
        ))}
      </ul>
      <Complaint problems={problems} />
      <div className="row">
        <button
          type="button"
          className="button solid"
          onClick={() => {
            if (run(writeDownStrips(plan.strips.map((row) => ({ ...row, length }))))) onClose();
          }}
        >
          {say(counted(count, 'Cut: write down 1 strip', 'Cut: write down {count} strips'))}
        </button>
        <button type="button" className="button" onClick={onClose}>
          {say('Done')}
        </button>
      </div>
      <Caution about={['cutting']} />
    </>
  );
}
