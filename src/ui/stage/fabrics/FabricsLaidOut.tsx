// All fabrics as pieces of cloth at true scale, in the chosen order; one is found by its name where there are many.
import { Search } from 'lucide-react';
import { useDeferredValue, useId, useMemo, useState } from 'react';
import { drawProject } from '../../../drawing/drawProject';
import { type FabricOrder, fabricAmounts, inOrder } from '../../../drawing/fabricOrder';
import { counted } from '../../../model/phrase';
import { useApp, useAppStore } from '../../app';
import { Choice } from '../../fields/Choice';
import { Fractions } from '../../fields/Fractions';
import { useSay } from '../../words';
import { useScreen } from '../useScreen';
import { PieceOfCloth } from './PieceOfCloth';
import './fabrics.css';

/** With more fabrics than this there is a field to find one by its name; with twice as many the pieces are smaller. */
const A_DOZEN = 12;
/** CSS pixels to the inch (CSS Values 4, section 6.2: 1in is 96px), and half of it on a phone. */
const TRUE_SCALE = 96;

const ORDERS: readonly { readonly value: FabricOrder; readonly label: string }[] = [
  { value: 'value', label: 'Value' },
  { value: 'hue', label: 'Hue' },
  { value: 'amount', label: 'Amount' },
  { value: 'name', label: 'Name' },
];

export function FabricsLaidOut() {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const order = useApp((app) => app.laid.order);
  const picked = useApp((app) => app.laid.fabric);
  const phone = useScreen('(max-width: 720px)');
  const tablet = useScreen('(max-width: 1100px)');
  const [wanted, setWanted] = useState('');
  const shown = useDeferredValue(project);
  const amounts = useMemo(() => fabricAmounts(shown, drawProject(shown)), [shown]);
  const laid = useMemo(() => inOrder(project.fabrics, order, amounts), [project.fabrics, order, amounts]);
  const many = laid.length > A_DOZEN;
  const sought = many ? wanted.trim().toLowerCase() : '';
  const found = laid.filter((fabric) => fabric.name.toLowerCase().includes(sought));
  const scale = phone ? TRUE_SCALE / 2 : TRUE_SCALE;
  const inches = pieceOf(phone ? 'phone' : tablet ? 'tablet' : laid.length > 2 * A_DOZEN ? 'many' : 'few');
  return (
    <div className="laid-fabrics">
      <div className="laid-head">
        {laid.length > 2 ? (
          <Choice
            label="Sort by"
            value={order}
            options={ORDERS}
            onChange={(next) => store.getState().lay({ order: next })}
          />
        ) : null}
        {many ? <Find wanted={wanted} onChange={setWanted} phone={phone} /> : null}
        <p className="laid-scale">
          <Fractions
            text={say(
              phone
                ? 'Half true size: each piece is {width} × {height}.'
                : 'True size: each piece is {width} × {height}.',
              { width: { inches: inches.width }, height: { inches: inches.height } },
            )}
          />{' '}
          {say('Pick one to change it; the wall shows where it is used.')}
        </p>
      </div>
      <ul
        className="laid-pieces"
        style={{ gridTemplateColumns: `repeat(auto-fill, ${inches.width * scale}px)` }}
        onPointerLeave={() => store.getState().light(null)}
      >
        {found.map((fabric) => (
          <PieceOfCloth
            key={fabric.id}
            fabric={fabric}
            amount={amounts.get(fabric.id)}
            picked={picked === fabric.id}
            width={inches.width}
            height={inches.height}
            scale={scale}
          />
        ))}
      </ul>
      {sought === '' ? null : (
        <p role="status">
          {found.length === 0
            ? say('No fabric has “{text}” in its name.', { text: wanted.trim() })
            : say(counted(found.length, '1 fabric found', '{count} fabrics found'))}
        </p>
      )}
    </div>
  );
}

/** A piece that fits several times beside itself on such a screen, inches. */
function pieceOf(screen: 'phone' | 'tablet' | 'many' | 'few') {
  switch (screen) {
    case 'phone':
    case 'few':
      return { width: 1.75, height: 1.25 };
    case 'tablet':
      return { width: 1.5, height: 1.125 };
    case 'many':
      return { width: 1.375, height: 1 };
    default:
      return screen satisfies never;
  }
}

interface FindProps {
  wanted: string;
  onChange: (wanted: string) => void;
  phone: boolean;
}

function Find({ wanted, onChange, phone }: FindProps) {
  const say = useSay();
  const id = useId();
  return (
    <div className="field laid-find">
      <label htmlFor={id}>{say('Find by name')}</label>
      <span>
        <Search size={16} aria-hidden />
        <input
          id={id}
          type="search"
          dir="auto"
          autoComplete="off"
          placeholder={phone ? say('Find by name') : undefined}
          value={wanted}
          onChange={(event) => onChange(event.target.value)}
        />
      </span>
    </div>
  );
}
