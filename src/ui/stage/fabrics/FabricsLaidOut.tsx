// All fabrics as pieces of cloth at true scale, in the chosen order, by value in light, medium and dark; one is found by its name where
// there are many.
import { Search } from 'lucide-react';
import { useDeferredValue, useId, useMemo, useState } from 'react';
import { TONES, type Tone, toneOf } from '../../../colour/tone';
import { drawProject } from '../../../drawing/drawProject';
import { type FabricOrder, fabricAmounts, foundByName, inOrder } from '../../../drawing/fabricOrder';
import { type QuiltTones, quiltTones } from '../../../drawing/fabricTones';
import { clothValue } from '../../../drawing/shares';
import { counted } from '../../../model/phrase';
import type { Fabric } from '../../../model/project';
import { useApp, useAppStore } from '../../app';
import { Choice } from '../../fields/Choice';
import { Fractions } from '../../fields/Fractions';
import { ToneLegend } from '../../seeing/ToneLegend';
import { useSay } from '../../words';
import { useScreen } from '../useScreen';
import { Lookalikes } from './Lookalikes';
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
  const sought = many ? wanted.trim() : '';
  const found = useMemo(() => foundByName(laid, sought), [laid, sought]);
  const tones = useMemo(
    () => (laid.length > 2 ? quiltTones(shown.fabrics, amounts) : null),
    [laid.length, shown.fabrics, amounts],
  );
  const groups = useMemo(() => grouped(found, tones, order), [found, tones, order]);
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
      {order === 'value' && tones ? <ToneLegend tones={tones} /> : null}
      <Lookalikes />
      {groups.map(({ tone, fabrics }) => (
        <section
          key={tone ?? ''}
          className="laid-group"
          aria-label={tone ? say(TONE_NAMES[tone]) : undefined}
        >
          {tone ? <h3>{say(TONE_NAMES[tone])}</h3> : null}
          <ul
            className="laid-pieces"
            style={{ gridTemplateColumns: `repeat(auto-fill, ${inches.width * scale}px)` }}
            onPointerLeave={() => store.getState().light(null)}
          >
            {fabrics.map((fabric) => (
              <PieceOfCloth
                key={fabric.id}
                fabric={fabric}
                amount={amounts.get(fabric.id)}
                tone={tones && toneOf(clothValue(fabric), tones.limits)}
                picked={picked === fabric.id}
                width={inches.width}
                height={inches.height}
                scale={scale}
              />
            ))}
          </ul>
        </section>
      ))}
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

const TONE_NAMES: Readonly<Record<Tone, string>> = { light: 'Light', medium: 'Medium', dark: 'Dark' };

/** The fabrics as they lie: by value in groups of a tone, else all together. */
function grouped(
  fabrics: readonly Fabric[],
  tones: QuiltTones | null,
  order: FabricOrder,
): readonly { readonly tone: Tone | null; readonly fabrics: readonly Fabric[] }[] {
  if (order !== 'value' || !tones) return [{ tone: null, fabrics }];
  return TONES.toReversed()
    .map((tone) => ({
      tone,
      fabrics: fabrics.filter((fabric) => toneOf(clothValue(fabric), tones.limits) === tone),
    }))
    .filter((group) => group.fabrics.length > 0);
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
