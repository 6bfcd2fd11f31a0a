// How many kits, how they are cut, the length of a bolt, and prices.
import { INCHES_IN, sellingUnit } from '../../../../cutting/yardage/clothLength';
import { changeBacking, changeBuying, changeKits } from '../../../../editing/buying';
import { useApp, useAppStore } from '../../../app';
import { Choice } from '../../../fields/Choice';
import { CountField } from '../../../fields/CountField';
import { TextField } from '../../../fields/TextField';
import { useSay } from '../../../words';
import { AmountField } from './AmountField';

export function KitChoices({ backingApart }: { backingApart: boolean }) {
  const say = useSay();
  const store = useAppStore();
  const { run } = store.getState();
  const project = useApp((app) => app.project);
  const { buying } = project;
  const unit = sellingUnit(project);
  const letters = unit === 'yard' ? 'yd' : 'm';
  const priceUnit = `${buying.currency === '' ? '' : `${buying.currency} `}/ ${letters}`;
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
          label="Cloth on a bolt"
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
          { value: 'lengths', label: 'Lengths of cloth' },
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
      <div className="pair">
        <AmountField
          label="Price of cloth"
          unit={priceUnit}
          value={buying.price}
          most={100_000}
          money
          optional
          onCommit={(price) => run(changeBuying({ price }))}
        />
        <TextField
          label="Currency"
          value={buying.currency}
          longest={6}
          required={false}
          onCommit={(currency) => run(changeBuying({ currency }))}
        />
        {buying.kits.cutAs === 'lengths' ? (
          <AmountField
            label="Price of a fat quarter"
            value={buying.fatQuarterPrice}
            most={100_000}
            money
            optional
            onCommit={(fatQuarterPrice) => run(changeBuying({ fatQuarterPrice }))}
          />
        ) : null}
        {backingApart ? (
          <AmountField
            label="Price of backing"
            unit={priceUnit}
            value={buying.backing.price}
            most={100_000}
            money
            optional
            onCommit={(price) => run(changeBacking({ price }))}
          />
        ) : null}
        <AmountField
          label="Beside the cloth, a kit"
          value={buying.kits.extra}
          most={100_000}
          money
          onCommit={(extra) => run(changeKits({ extra: extra ?? 0 }))}
        />
      </div>
    </div>
  );
}
