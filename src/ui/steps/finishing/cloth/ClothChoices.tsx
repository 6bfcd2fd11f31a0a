// The choices for the cutting list: width of the cloth, unit of sale, shrinkage, and how some pieces are cut.

import { fatQuarterWords } from '../../../../cutting/yardage/fatQuarter';
import { changeBuying } from '../../../../editing/commands/buying';
import { changePreferences } from '../../../../editing/commands/setting';
import { sellingUnit } from '../../../../model/buying';
import { useApp, useAppStore } from '../../../app';
import { Choice } from '../../../fields/Choice';
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
        <Choice
          label="Sold by the"
          value={sellingUnit(project)}
          options={[
            { value: 'yard', label: 'Yard, in eighths' },
            { value: 'metre', label: 'Metre, in 10 cm' },
          ]}
          onChange={(soldBy) => run(changeBuying({ soldBy }))}
        />
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
