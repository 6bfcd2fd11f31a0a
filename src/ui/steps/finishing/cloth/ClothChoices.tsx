// The choices for the cutting list: width of the cloth, unit of sale, shrinkage, and how some pieces are cut.
import { useState } from 'react';
import { fatQuarterWords } from '../../../../cutting/yardage/fatQuarter';
import { changeBuying, pricesMatched } from '../../../../editing/commands/buying';
import { changePreferences } from '../../../../editing/commands/setting';
import { type SellingUnit, sellingUnit } from '../../../../model/buying';
import type { Phrase } from '../../../../model/phrase';
import { useApp, useAppStore } from '../../../app';
import { Choice } from '../../../fields/Choice';
import { Complaint, useRun } from '../../../fields/Complaint';
import { Fractions } from '../../../fields/Fractions';
import { LengthField } from '../../../fields/LengthField';
import { useSay } from '../../../words';
import { AmountField } from './AmountField';

export function ClothChoices() {
  const say = useSay();
  const store = useAppStore();
  const { run } = store.getState();
  const project = useApp((app) => app.project);
  const { buying, preferences } = project;
  return (
    <details className="fold no-print cloth-choices">
      <summary>{say('Yardage settings')}</summary>
      <div className="stack">
        <div className="pair">
          <LengthField
            label="Usable width of fabric, washed"
            value={preferences.usableWidth}
            least={10}
            most={120}
            onCommit={(usableWidth) => run(changePreferences({ usableWidth }))}
          />
          <LengthField
            label="To straighten the edge"
            value={buying.straighten}
            most={12}
            onCommit={(straighten) => run(changeBuying({ straighten }))}
          />
          <AmountField
            label="Length lost in the wash"
            unit="%"
            value={buying.shrinkage}
            most={15}
            onCommit={(shrinkage) => run(changeBuying({ shrinkage: shrinkage ?? 0 }))}
          />
          <LengthField
            label="Extra binding"
            value={buying.bindingExtra}
            most={60}
            onCommit={(bindingExtra) => run(changeBuying({ bindingExtra }))}
          />
        </div>
        <p className="quiet">
          {say('Measure the usable width after washing: what the wash takes is added to the length only.')}
        </p>
        <SoldBy />
        <Choice
          label="Squares for corner triangles"
          value={buying.corners}
          options={[
            { value: 'comfortable', label: 'Oversized, trim after sewing' },
            { value: 'fits', label: 'Exact size' },
          ]}
          onChange={(corners) => run(changeBuying({ corners }))}
        />
        <Choice
          label="Pieces longer than the fabric is wide"
          value={buying.longPieces}
          options={[
            { value: 'joined', label: 'Joined strips' },
            { value: 'whole', label: 'Along the fabric' },
          ]}
          onChange={(longPieces) => run(changeBuying({ longPieces }))}
        />
        <label className="check">
          <input
            type="checkbox"
            checked={buying.fatQuarters}
            onChange={() => run(changeBuying({ fatQuarters: !buying.fatQuarters }))}
          />
          {say('Fat quarters where they are cheaper')}
        </label>
        <p className="quiet">
          <Fractions text={say(fatQuarterWords(project))} />
        </p>
      </div>
    </details>
  );
}

/** By what cloth is sold. Prices go with it, which is told until the next change. */
function SoldBy() {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const revision = useApp((app) => app.revision);
  const [chosen, problems] = useRun();
  const [told, setTold] = useState<{ words: Phrase | null; at: number } | null>(null);
  const choose = (soldBy: SellingUnit) => {
    const words = pricesMatched(project, soldBy);
    if (chosen(changeBuying({ soldBy }))) setTold({ words, at: store.getState().revision });
  };
  return (
    <div className="stack tight">
      <Choice
        label="Sold by the"
        value={sellingUnit(project)}
        options={[
          { value: 'yard', label: 'Yard, in eighths' },
          { value: 'metre', label: 'Metre, in 10 cm' },
        ]}
        onChange={choose}
      />
      <Complaint problems={problems} />
      <p className="quiet" role="status">
        {told?.words && told.at === revision ? say(told.words) : null}
      </p>
    </div>
  );
}
