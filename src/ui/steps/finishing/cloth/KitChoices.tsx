// The choices for kits: their number, how they are cut, and the length of a bolt.

import { INCHES_IN } from '../../../../cutting/yardage/clothLength';
import { changeKits } from '../../../../editing/commands/buying';
import { sellingUnit } from '../../../../model/buying';
import type { Fabric } from '../../../../model/project';
import { useApp, useAppStore } from '../../../app';
import { Choice } from '../../../fields/Choice';
import { CountField } from '../../../fields/CountField';
import { useSay } from '../../../words';
import { AmountField } from './AmountField';
import { KitPrices } from './KitPrices';

interface Props {
  backingApart: boolean;
  /** The fabrics of the kits. */
  fabrics: readonly Fabric[];
}

export function KitChoices({ backingApart, fabrics }: Props) {
  const say = useSay();
  const store = useAppStore();
  const { run } = store.getState();
  const project = useApp((app) => app.project);
  const { buying } = project;
  const unit = sellingUnit(project);
  const letters = unit === 'yard' ? 'yd' : 'm';
  return (
    <div className="stack no-print">
      <div className="pair">
        <CountField
          label="Kits"
          value={buying.kits.count}
          least={1}
          most={1000}
          onCommit={(count) => run(changeKits({ count }))}
        />
        <AmountField
          label="Fabric on a bolt"
          unit={letters}
          value={buying.kits.bolt / INCHES_IN[unit]}
          least={1}
          most={100}
          onCommit={(bolt) => run(changeKits({ bolt: (bolt ?? 1) * INCHES_IN[unit] }))}
        />
      </div>
      <Choice
        label="A kit holds"
        value={buying.kits.cutAs}
        options={[
          { value: 'strips', label: 'Strips, labelled' },
          { value: 'lengths', label: 'Lengths of fabric' },
        ]}
        onChange={(cutAs) => run(changeKits({ cutAs }))}
      />
      <label className="check">
        <input
          type="checkbox"
          checked={buying.kits.backing}
          onChange={() => run(changeKits({ backing: !buying.kits.backing }))}
        />
        {say('Backing in the kit')}
      </label>
      <KitPrices backingApart={backingApart} fabrics={fabrics} />
    </div>
  );
}
