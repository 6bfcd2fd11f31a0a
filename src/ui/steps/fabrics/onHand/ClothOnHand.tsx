// The list of cloth that is not cut into strips yet; its rows can be added, changed and removed.
import { Plus } from 'lucide-react';
import { useState } from 'react';
import { changeCloth, removeCloth } from '../../../../editing/commands/clothOnHand';
import { counted } from '../../../../model/phrase';
import type { ClothOnHand as Cloth, Fabric } from '../../../../model/project';
import { useApp, useAppStore } from '../../../app';
import { Complaint, useRun } from '../../../fields/Complaint';
import { Fractions } from '../../../fields/Fractions';
import { Swatch } from '../../../fields/Swatch';
import { useSay } from '../../../words';
import { useReturnFocus } from '../../useReturnFocus';
import { AddCloth, firstCloth } from './AddCloth';
import '../cloth.css';
import { useDraft } from '../useDraft';
import { ClothFields } from './ClothFields';
import { CLOTH_KINDS } from './clothWords';
import { RowFoot, RowPencil } from './RowInHand';

export function ClothOnHand() {
  const say = useSay();
  const fabrics = useApp((app) => app.project.fabrics);
  const cloth = useApp((app) => app.project.clothOnHand);
  const [open, setOpen] = useState<string | null>(null);
  const store = useAppStore();
  const draft = useDraft('cloth', () => firstCloth(store.getState().project));
  const opener = useReturnFocus(draft.open);
  const pieces = cloth.reduce((sum, row) => sum + row.count, 0);
  const known = new Map(fabrics.map((fabric) => [fabric.id, fabric]));
  return (
    <section aria-label={say('Fabric on hand')}>
      <div className="spread">
        <h3>{say('Fabric on hand')}</h3>
        {pieces > 0 ? (
          <span className="quiet">{say(counted(pieces, '1 piece', '{count} pieces'))}</span>
        ) : null}
      </div>
      {cloth.length === 0 && !draft.open ? (
        <p className="quiet fab-hint">
          {say('Add what is not cut into strips yet, and see how large a top it makes.')}
        </p>
      ) : null}
      <ul className="onhand-list">
        {cloth.map((row) => (
          <ClothRow
            key={row.id}
            row={row}
            fabric={known.get(row.fabric)}
            open={open === row.id}
            onOpen={(opened) => setOpen(opened ? row.id : null)}
          />
        ))}
      </ul>
      {draft.open ? (
        <AddCloth draft={draft} />
      ) : (
        <button
          ref={opener}
          type="button"
          className="button fab-add"
          onClick={() => {
            setOpen(null);
            draft.setOpen(true);
          }}
        >
          <Plus size={16} aria-hidden /> {say('Add fabric on hand')}
        </button>
      )}
    </section>
  );
}

interface RowProps {
  row: Cloth;
  fabric: Fabric | undefined;
  open: boolean;
  onOpen: (open: boolean) => void;
}

function ClothRow({ row, fabric, open, onOpen }: RowProps) {
  const say = useSay();
  const store = useAppStore();
  const [run, problems] = useRun();
  const values = {
    name: fabric?.name ?? '',
    kind: say(CLOTH_KINDS[row.kind].one),
    depth: { inches: row.depth },
    length: { inches: row.stripLength },
    count: row.count,
  };
  const change = (to: Partial<Cloth>) => changeCloth(store.getState().project, row.id, to);
  return (
    <li>
      <div className="onhand-row">
        {fabric ? <Swatch fabric={fabric} size={26} inches={2} /> : null}
        <span className="grow onhand-name">
          <bdi className="one-line">{values.name}</bdi>
          <span className="quiet">
            <Fractions
              text={say(
                row.count === 1 ? '{kind}, {depth} × {length}' : '{count} times: {kind}, {depth} × {length}',
                values,
              )}
            />
          </span>
        </span>
        <RowPencil
          name={say('Change the {name} on hand, {kind}, {depth} by {length}', values)}
          open={open}
          onOpen={onOpen}
        />
      </div>
      {open ? (
        <div className="stack onhand-open">
          <ClothFields
            cloth={row}
            onChange={(to) => store.getState().run(change(to), 'here')}
            onKind={(kind) => run(change({ kind }))}
          />
          <Complaint problems={problems} />
          <RowFoot
            name={say('{name}, {kind}, {depth} × {length}', values)}
            removes="Remove this piece"
            onClose={() => onOpen(false)}
            onRemove={() => run(removeCloth(store.getState().project, row.id))}
          />
        </div>
      ) : null}
    </li>
  );
}
