// The list of all strip sets at one scale; `Row` is the component of the step that shows them.
import { type ComponentType, useMemo } from 'react';
import type { LedgerRow } from '../../../cutting/wedges/ledger';
import type { StripSetId } from '../../../model/project';
import { useApp } from '../../app';
import type { SetItemProps } from './SetItem';

interface Props {
  ledger: readonly LedgerRow[];
  open: StripSetId | null;
  onOpen: (id: StripSetId | null) => void;
  Row: ComponentType<SetItemProps>;
}

export function SetList({ ledger, open, onOpen, Row }: Props) {
  const cloths = useApp((app) => app.project.fabrics);
  const wedge = useApp((app) => app.project.wedge);
  const fabrics = useMemo(() => new Map(cloths.map((fabric) => [fabric.id, fabric])), [cloths]);
  const longest = Math.max(1, ...ledger.map((row) => row.set.length));
  return (
    <ul className="set-list">
      {ledger.map((row) => (
        <Row
          key={row.set.id}
          row={row}
          wedge={wedge}
          fabrics={fabrics}
          longest={longest}
          open={open === row.set.id}
          onOpen={onOpen}
        />
      ))}
    </ul>
  );
}
