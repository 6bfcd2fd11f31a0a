// One row of strips of one fabric, width and length; it opens to be changed.
import type { ReactNode } from 'react';
import { changeStrips, removeStrips } from '../../../../editing/commands/fabrics';
import type { StripOnHand } from '../../../../model/project';
import { useApp, useAppStore } from '../../../app';
import { Fractions } from '../../../fields/Fractions';
import { useSay } from '../../../words';
import { RowFoot, RowPencil } from './RowInHand';
import { SplitStrips } from './SplitStrips';
import { StripFields } from './StripFields';

interface Props {
  row: StripOnHand;
  open: boolean;
  onOpen: (open: boolean) => void;
  /** The cells for "in sets" and "left", shared by all lengths of one width. */
  rest: ReactNode;
}

export function StripsRow({ row, open, onOpen, rest }: Props) {
  const say = useSay();
  const fabric = useApp((app) => app.project.fabrics.find((one) => one.id === row.fabric)?.name ?? '');
  const values = { name: fabric, width: { inches: row.width }, length: { inches: row.length } };
  return (
    <>
      <tr>
        <td>
          <Fractions text={say('{width}', values)} />
        </td>
        <td>
          <Fractions text={say('{length}', values)} />
        </td>
        <td>{row.count}</td>
        {rest}
        <td className="fab-act">
          <RowPencil
            name={say('Change the strips of {name} cut {width} wide, {length} long', values)}
            open={open}
            onOpen={onOpen}
          />
        </td>
      </tr>
      {open ? (
        <tr>
          <td colSpan={6} className="fab-strips-open">
            <OpenStrips row={row} onClose={() => onOpen(false)} />
          </td>
        </tr>
      ) : null}
    </>
  );
}

function OpenStrips({ row, onClose }: { row: StripOnHand; onClose: () => void }) {
  const store = useAppStore();
  const change = (to: Partial<Omit<StripOnHand, 'id'>>) => store.getState().run(changeStrips(row.id, to));
  return (
    <div className="stack">
      <StripFields strips={row} fewest={0} onChange={change} />
      {row.count > 0 ? <SplitStrips key={`${row.id} ${row.width}`} row={row} /> : null}
      <RowFoot
        removes="Remove these strips"
        onClose={onClose}
        onRemove={() => store.getState().run(removeStrips(row.id))}
      />
    </div>
  );
}
