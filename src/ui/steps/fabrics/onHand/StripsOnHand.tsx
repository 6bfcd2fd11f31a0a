// The list of strips on hand by fabric and width, with the numbers that the sets use and that are left.
import { Plus } from 'lucide-react';
import { useMemo, useState } from 'react';
import { type StripBalance, stripKey, stripsUnused } from '../../../../cutting/sets/stripsUnused';
import { counted } from '../../../../model/phrase';
import type { Fabric, StripOnHand } from '../../../../model/project';
import { useApp } from '../../../app';
import { Fractions } from '../../../fields/Fractions';
import { Swatch } from '../../../fields/Swatch';
import { useSay } from '../../../words';
import { useReturnFocus } from '../../useReturnFocus';
import { useDraft } from '../useDraft';
import { AddStrips, firstStrips } from './AddStrips';
import { StripsRow } from './StripsRow';

export function StripsOnHand() {
  const say = useSay();
  const fabrics = useApp((app) => app.project.fabrics);
  const onHand = useApp((app) => app.project.stripsOnHand);
  const sets = useApp((app) => app.project.stripSets);
  const [open, setOpen] = useState<string | null>(null);
  const usable = useApp((app) => app.project.preferences.usableWidth);
  const draft = useDraft('strips', () => firstStrips(usable));
  const opener = useReturnFocus(draft.open);
  const balance = useMemo(
    () => stripsUnused({ fabrics, stripsOnHand: onHand, stripSets: sets }),
    [fabrics, onHand, sets],
  );
  const there = onHand.reduce((sum, row) => sum + row.count, 0);
  const groups = fabrics.filter((fabric) => balance.some((row) => row.fabric === fabric.id));
  return (
    <section aria-label={say('Strips on hand')}>
      <div className="spread">
        <h3>{say('Strips on hand')}</h3>
        {there > 0 ? <span className="quiet">{say(counted(there, '1 strip', '{count} strips'))}</span> : null}
      </div>
      {groups.length === 0 && !draft.open ? (
        <p className="quiet fab-hint">
          <Fractions
            text={say(
              'Write down what is cut: fabric, width, length and how many. Usual cut widths are {narrow}, {middle} and {wide}, about 2 : 2 : 1 of them. Sets are made from these strips.',
              { narrow: { inches: 1 }, middle: { inches: 1.5 }, wide: { inches: 2 } },
            )}
          />
        </p>
      ) : null}
      {groups.length > 0 ? (
        <table className="fab-strips">
          <thead>
            <tr>
              <th scope="col">{say('Cut')}</th>
              <th scope="col">{say('Long')}</th>
              <th scope="col">{say('Strips')}</th>
              <th scope="col">{say('In sets')}</th>
              <th scope="col">{say('Left')}</th>
              <th>
                <span className="hidden-text">{say('Change')}</span>
              </th>
            </tr>
          </thead>
          {groups.map((fabric) => (
            <FabricStrips
              key={fabric.id}
              fabric={fabric}
              rows={onHand.filter((row) => row.fabric === fabric.id)}
              balance={balance.filter((row) => row.fabric === fabric.id)}
              open={open}
              onOpen={setOpen}
            />
          ))}
        </table>
      ) : null}
      {draft.open ? (
        <AddStrips draft={draft} />
      ) : (
        <button ref={opener} type="button" className="button fab-add" onClick={() => draft.setOpen(true)}>
          <Plus size={16} aria-hidden /> {say('Add strips')}
        </button>
      )}
    </section>
  );
}

interface GroupProps {
  fabric: Fabric;
  rows: readonly StripOnHand[];
  balance: readonly StripBalance[];
  open: string | null;
  onOpen: (row: string | null) => void;
}

/** The rows of one fabric: one for each width and length on hand, and one for each width that is in sets but not on the list. */
function FabricStrips({ fabric, rows, balance, open, onOpen }: GroupProps) {
  const say = useSay();
  return (
    <tbody>
      <tr className="fab-strips-of">
        <th scope="rowgroup" colSpan={6}>
          <span>
            <Swatch fabric={fabric} size={18} inches={1.6} />
            <bdi className="one-line">{fabric.name}</bdi>
          </span>
        </th>
      </tr>
      {balance.map((width) => {
        const key = stripKey(width.fabric, width.width);
        const alike = rows.filter((row) => stripKey(row.fabric, row.width) === key);
        if (alike.length === 0) {
          return (
            <tr key={key}>
              <td>
                <Fractions text={say('{width}', { width: { inches: width.width } })} />
              </td>
              <td>–</td>
              <td>0</td>
              <td>{width.used}</td>
              <td>
                <Left left={width.left} />
              </td>
              <td />
            </tr>
          );
        }
        return alike.map((row, index) => (
          <StripsRow
            key={row.id}
            row={row}
            open={open === row.id}
            onOpen={(opened) => onOpen(opened ? row.id : null)}
            rest={
              index === 0 ? (
                <>
                  <td rowSpan={open === null ? alike.length : 1}>{width.used}</td>
                  <td rowSpan={open === null ? alike.length : 1}>
                    <Left left={width.left} />
                  </td>
                </>
              ) : open === null ? null : (
                <td colSpan={2} />
              )
            }
          />
        ));
      })}
    </tbody>
  );
}

function Left({ left }: { left: number }) {
  const say = useSay();
  if (left >= 0) return <>{left}</>;
  return <strong className="fab-missing">{say('{count} missing', { count: -left })}</strong>;
}
