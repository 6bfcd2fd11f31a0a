// The fields of the wedge: wedges to the block, and the three seams; its height has a file of its own.
import { useState } from 'react';
import { changeWedge } from '../../../editing/commands/stripSets';
import { WEDGE_COUNTS, type WedgePlan } from '../../../model/project';
import { useApp, useAppStore } from '../../app';
import { Choice } from '../../fields/Choice';
import { Complaint, useRun } from '../../fields/Complaint';
import { LengthField } from '../../fields/LengthField';
import { useSay } from '../../words';
import { OtherCount } from './OtherCount';
import { WedgeHeight } from './WedgeHeight';

const LEAST_SEAM = 0.0625;
const MOST_SEAM = 1;

export function WedgePlanFields() {
  const say = useSay();
  const store = useAppStore();
  const wedge = useApp((app) => app.project.wedge);
  const [run, problems, clear] = useRun();
  const [refused, setRefused] = useState<WedgePlan['perBlock'] | null>(null);
  const changeCount = (typed: string) => {
    const perBlock = WEDGE_COUNTS.find((one) => String(one) === typed)!;
    setRefused(run(changeWedge({ perBlock })) ? null : perBlock);
  };
  const change = (to: Partial<WedgePlan>) => store.getState().run(changeWedge(to), 'here');
  const seams = [
    { key: 'seam', label: 'In strip sets', of: 'and on the template' },
    { key: 'assemblySeam', label: 'Between wedges', of: 'joins the wedges' },
    { key: 'outerSeam', label: 'Around the block', of: 'joins blocks and borders' },
  ] as const;
  return (
    <div className="stack">
      <div>
        <Choice
          label="Wedges per block"
          value={String(wedge.perBlock)}
          options={WEDGE_COUNTS.map((count) => ({ value: String(count), label: String(count) }))}
          onChange={changeCount}
        />
      </div>
      <Complaint problems={problems} />
      {refused === null ? null : (
        <OtherCount
          perBlock={refused}
          onDone={() => {
            setRefused(null);
            clear();
          }}
        />
      )}
      <WedgeHeight />
      <fieldset className="wdg-seams">
        <legend className="quiet">{say('Seam allowances')}</legend>
        {seams.map(({ key, label, of }) => (
          <div key={key}>
            <LengthField
              label={label}
              value={wedge[key]}
              least={LEAST_SEAM}
              most={MOST_SEAM}
              onCommit={(seam) => change({ [key]: seam })}
            />
            <p className="quiet">{say(of)}</p>
          </div>
        ))}
      </fieldset>
    </div>
  );
}
