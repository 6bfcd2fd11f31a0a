// A price for one fabric: the person chooses the fabric, then types its price.
import { useState } from 'react';
import { priceFabric } from '../../../../editing/commands/buying';
import { findFabric } from '../../../../model/find';
import type { Fabric, FabricId } from '../../../../model/project';
import { useApp, useAppStore } from '../../../app';
import { FabricPicker } from '../../../fields/FabricPicker';
import { useSay } from '../../../words';
import { AmountField } from './AmountField';

interface Props {
  /** The fabrics to choose from: those of the kits. */
  fabrics: readonly Fabric[];
  unit: string;
}

export function OwnPrice({ fabrics, unit }: Props) {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const [chosen, setChosen] = useState<FabricId | null>(null);
  const fabric = chosen === null ? undefined : findFabric(project, chosen);
  const own = fabrics.filter((one) => typeof one.price === 'number');
  return (
    <div className="stack tight">
      <div className="pair">
        <FabricPicker
          label={say('Fabric with a price of its own')}
          value={fabric?.id ?? null}
          fabrics={fabrics}
          onChange={setChosen}
        />
        {fabric ? (
          <AmountField
            key={fabric.id}
            label="Price of this fabric"
            unit={unit}
            value={fabric.price ?? null}
            money
            most={100_000}
            optional
            onCommit={(price) => store.getState().run(priceFabric(project, fabric.id, price), 'here')}
          />
        ) : null}
      </div>
      {own.length > 0 ? (
        <p className="quiet">
          {say('With a price of their own: {names}.', { names: { list: own.map((one) => one.name) } })}
        </p>
      ) : null}
    </div>
  );
}
