// The prices of the cloth in a kit, folded once the price of a yard or metre is known.
import { useState } from 'react';
import { fatQuarterWords } from '../../../../cutting/yardage/fatQuarter';
import { priceText } from '../../../../cutting/yardage/money';
import { changeBacking, changeBuying, changeKits } from '../../../../editing/commands/buying';
import { sellingUnit } from '../../../../model/buying';
import type { Fabric } from '../../../../model/project';
import { useApp, useAppStore } from '../../../app';
import { Fractions } from '../../../fields/Fractions';
import { TextField } from '../../../fields/TextField';
import { useSay } from '../../../words';
import { AmountField } from './AmountField';
import { OwnPrice } from './OwnPrice';

interface Props {
  backingApart: boolean;
  /** The fabrics of the kits. */
  fabrics: readonly Fabric[];
}

export function KitPrices({ backingApart, fabrics }: Props) {
  const say = useSay();
  const store = useAppStore();
  const { run } = store.getState();
  const project = useApp((app) => app.project);
  const { buying } = project;
  const letters = sellingUnit(project) === 'yard' ? 'yd' : 'm';
  const priceUnit = `${buying.currency === '' ? '' : `${buying.currency} `}/ ${letters}`;
  // Open to begin with where no price is known; after that it is the person's to fold.
  const [begunOpen] = useState(buying.price === null);
  return (
    <details className="fold kit-prices" open={begunOpen}>
      <summary>
        {say('Prices')}
        <span className="quiet">
          {' '}
          {buying.price === null
            ? say('none yet')
            : say('{price} / {unit}', { price: priceText(buying.price, project), unit: letters })}
        </span>
      </summary>
      <div className="stack">
        <div className="pair">
          <AmountField
            label="Price of fabric"
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
            label="Other costs per kit"
            value={buying.kits.extra}
            most={100_000}
            money
            onCommit={(extra) => run(changeKits({ extra: extra ?? 0 }))}
          />
        </div>
        {buying.kits.cutAs === 'lengths' ? (
          <p className="quiet">
            <Fractions text={say(fatQuarterWords(project))} />
          </p>
        ) : null}
        {fabrics.length > 0 ? <OwnPrice fabrics={fabrics} unit={priceUnit} /> : null}
      </div>
    </details>
  );
}
