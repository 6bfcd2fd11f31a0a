// Strips of one fabric, width and length: shown in a line, changed in place.
import { Pencil, Trash2 } from 'lucide-react';
import type { ReactNode } from 'react';
import { changeStrips, removeStrips } from '../../../editing/fabrics';
import type { StripOnHand } from '../../../model/project';
import { useApp, useAppStore } from '../../app';
import { CountField } from '../../fields/CountField';
import { Fractions } from '../../fields/Fractions';
import { LengthField } from '../../fields/LengthField';
import { useSay } from '../../words';
import { useReturnFocus } from '../useReturnFocus';
import { SplitStrips } from './SplitStrips';

interface Props {
  row: StripOnHand;
  open: boolean;
  onOpen: (open: boolean) => void;
  /** The cells for "in sets" and "left", shared by all lengths of one width. */
  rest: ReactNode;
}

export const MOST_STRIPS = 10_000;

export function StripsRow({ row, open, onOpen, rest }: Props) {
  const say = useSay();
  const fabric = useApp((app) => app.project.fabrics.find((one) => one.id === row.fabric)?.name ?? '');
  const opener = useReturnFocus(open);
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
          <button
            type="button"
            className="button bare"
            ref={opener}
            aria-expanded={open}
            aria-label={say('Change the strips of {name} cut {width} wide, {length} long', values)}
            onClick={() => onOpen(!open)}
          >
            <Pencil size={15} aria-hidden />
          </button>
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
  const say = useSay();
  const store = useAppStore();
  const change = (to: Partial<Omit<StripOnHand, 'id'>>) => store.getState().run(changeStrips(row.id, to));
  return (
    <div className="stack">
      <div className="fab-three">
        <LengthField
          label="Cut width"
          value={row.width}
          least={0.25}
          most={60}
          onCommit={(width) => change({ width })}
        />
        <LengthField
          label="Length"
          value={row.length}
          least={1}
          most={4000}
          onCommit={(length) => change({ length })}
        />
        <CountField
          label="Strips"
          value={row.count}
          least={0}
          most={MOST_STRIPS}
          onCommit={(count) => change({ count })}
        />
      </div>
      {row.count > 0 ? <SplitStrips key={`${row.id} ${row.width}`} row={row} /> : null}
      <div className="spread">
        <button type="button" className="button" onClick={onClose}>
          {say('Done')}
        </button>
        <button
          type="button"
          className="button"
          onClick={() => {
            onClose();
            store.getState().run(removeStrips(row.id));
          }}
        >
          <Trash2 size={16} aria-hidden /> {say('Remove these strips')}
        </button>
      </div>
    </div>
  );
}
