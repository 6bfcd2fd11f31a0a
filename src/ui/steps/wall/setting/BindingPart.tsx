// The binding: its fabric and the cut width of its strips. The wall shows only its edge.
import { useState } from 'react';
import { setBinding } from '../../../../editing/commands/edges';
import { findFabric } from '../../../../model/find';
import { USUAL } from '../../../../model/lengths';
import { useApp } from '../../../app';
import { Choice } from '../../../fields/Choice';
import { Complaint, useRun } from '../../../fields/Complaint';
import { FabricPicker } from '../../../fields/FabricPicker';
import { LengthField } from '../../../fields/LengthField';
import { useSay, useUnit } from '../../../words';
import { Fold } from './Fold';

type Width = 'none' | 'narrow' | 'wide' | 'own';

export function BindingPart() {
  const say = useSay();
  const usual = USUAL[useUnit()].binding;
  const project = useApp((app) => app.project);
  const { binding, borders, sashing } = project.setting;
  const [run, problems] = useRun();
  // Whether the person asked for another width; then the field stays, whatever the width is.
  const [own, setOwn] = useState(false);
  const value: Width =
    binding === null
      ? 'none'
      : own
        ? 'own'
        : binding.cutWidth === usual.narrow
          ? 'narrow'
          : binding.cutWidth === usual.wide
            ? 'wide'
            : 'own';
  const fabric = binding?.fabric ?? borders.at(-1)?.fabric ?? sashing.fabric;
  const width = (inches: number) => say('{width}', { width: { inches } });
  const change = (next: Width) => {
    setOwn(next === 'own');
    if (next === 'none') return run(setBinding(null));
    if (next === 'own') return run(setBinding({ fabric, cutWidth: usual.other }));
    return run(setBinding({ fabric, cutWidth: usual[next] }));
  };
  const now = binding
    ? say('{width}, {name}', {
        width: { inches: binding.cutWidth },
        name: findFabric(project, binding.fabric)?.name ?? '',
      })
    : say('not chosen');
  return (
    <Fold title="Binding" now={now}>
      <Choice
        label="Strips cut"
        value={value}
        options={[
          { value: 'none', label: 'Not chosen' },
          { value: 'narrow', label: width(usual.narrow) },
          { value: 'wide', label: width(usual.wide) },
          { value: 'own', label: 'Other' },
        ]}
        onChange={change}
      />
      {binding && value === 'own' ? (
        <LengthField
          label="Cut width"
          value={binding.cutWidth}
          least={1}
          most={6}
          onCommit={(cutWidth) => {
            run(setBinding({ ...binding, cutWidth }));
            return [];
          }}
        />
      ) : null}
      {binding ? (
        <FabricPicker
          label="Fabric of the binding"
          value={binding.fabric}
          onChange={(next) => run(setBinding({ ...binding, fabric: next }))}
        />
      ) : null}
      <Complaint problems={problems} />
    </Fold>
  );
}
