// What to cut for so many blocks: strips by fabric and width, in a proportion of narrow, middle and wide.
import { Scissors } from 'lucide-react';
import { useMemo, useState } from 'react';
import { planStrips, type StripPlan, USUAL_WIDTHS } from '../../../cutting/planStrips';
import { writeDownStrips } from '../../../editing/stripsOnHand';
import { counted } from '../../../model/phrase';
import type { Fabric, WedgePlan } from '../../../model/project';
import { useApp } from '../../app';
import { Choice } from '../../fields/Choice';
import { Complaint, useRun } from '../../fields/Complaint';
import { CountField } from '../../fields/CountField';
import { Words } from '../../Words';
import { useSay } from '../../words';
import { Caution } from '../Caution';

type Look = 'usual' | 'even' | 'narrow';
/** Parts of narrow, middle and wide strips; 2 : 2 : 1 is usual (common practice, no source). */
const PARTS: Readonly<Record<Look, readonly [number, number, number]>> = {
  usual: [2, 2, 1],
  even: [1, 1, 1],
  narrow: [4, 2, 1],
};
const MOST_BLOCKS = 400;

export function PlanStrips() {
  const say = useSay();
  const fabrics = useApp((app) => app.project.fabrics);
  const wedge = useApp((app) => app.project.wedge);
  const cells = useApp((app) => app.project.wall.cells.length);
  const length = useApp((app) => app.project.preferences.usableWidth);
  const [open, setOpen] = useState(false);
  const [blocks, setBlocks] = useState<number | null>(null);
  const [look, setLook] = useState<Look>('usual');
  const cloths = useMemo(() => fabrics.filter((fabric) => !fabric.background), [fabrics]);
  if (cloths.length === 0) return null;
  const wanted = Math.min(MOST_BLOCKS, blocks ?? cells);
  if (!open) {
    return (
      <button type="button" className="button fab-add" onClick={() => setOpen(true)}>
        <Scissors size={16} aria-hidden /> {say('Work out what to cut')}
      </button>
    );
  }
  return (
    <section className="stack" aria-label={say('What to cut')}>
      <h3>{say('What to cut')}</h3>
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
      <Choice
        label="Narrow : middle : wide"
        value={look}
        options={[
          { value: 'usual', label: '2 : 2 : 1' },
          { value: 'even', label: '1 : 1 : 1' },
          { value: 'narrow', label: '4 : 2 : 1' },
        ]}
        onChange={setLook}
      />
      <Planned
        blocks={wanted}
        look={look}
        cloths={cloths}
        wedge={wedge}
        length={length}
        onClose={() => setOpen(false)}
      />
    </section>
  );
}

interface PlannedProps {
  blocks: number;
  look: Look;
  cloths: readonly Fabric[];
  wedge: WedgePlan;
  length: number;
  onClose: () => void;
}

function Planned({ blocks, look, cloths, wedge, length, onClose }: PlannedProps) {
  const say = useSay();
  const [run, problems] = useRun();
  const plan = useMemo(() => {
    const widths = USUAL_WIDTHS.map(({ width }, index) => ({ width, part: PARTS[look][index]! }));
    return planStrips({ blocks, wedge, widths, fabrics: cloths.map((fabric) => fabric.id), length });
  }, [blocks, look, cloths, wedge, length]);
  if (!plan) {
    return <p>{say('No strip set of these widths and this length gives wedges as the wedge is planned.')}</p>;
  }
  const count = plan.strips.reduce((sum, row) => sum + row.count, 0);
  return (
    <>
      <PlanTable plan={plan} cloths={cloths} />
      {plan.words.map((words) => (
        <p key={words.say} className="quiet">
          <Words text={say(words)} />
        </p>
      ))}
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

function PlanTable({ plan, cloths }: { plan: StripPlan; cloths: readonly Fabric[] }) {
  const say = useSay();
  const countOf = (fabric: string, width: number) =>
    plan.strips.find((row) => row.fabric === fabric && row.width === width)?.count ?? 0;
  return (
    <table className="fab-strips fab-plan">
      <thead>
        <tr>
          <th scope="col">{say('Fabric')}</th>
          {USUAL_WIDTHS.map(({ width }) => (
            <th key={width} scope="col">
              <Words text={say('{width}', { width: { inches: width } })} />
            </th>
          ))}
          <th scope="col">{say('Cloth')}</th>
        </tr>
      </thead>
      <tbody>
        {cloths.map((fabric) => (
          <tr key={fabric.id}>
            <th scope="row">
              <span className="one-line">{fabric.name}</span>
            </th>
            {USUAL_WIDTHS.map(({ width }) => (
              <td key={width}>{countOf(fabric.id, width)}</td>
            ))}
            <td>
              <Words
                text={say('{cloth}', {
                  cloth: { inches: plan.cloth.find((row) => row.fabric === fabric.id)?.inches ?? 0 },
                })}
              />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
