// The wedges that no block uses, as pictures by set and tip. One is carried to a place, or pressed to go into the chosen place.
import { memo, type PointerEvent, type RefObject, useRef } from 'react';
import { wedgeLedger } from '../../../cutting/wedges/ledger';
import { counted } from '../../../model/phrase';
import type { Place } from '../../../model/project';
import { useApp } from '../../app';
import { wedgeTitle } from '../../steps/blocks/blockWords';
import { WedgePicture } from '../../steps/blocks/WedgePicture';
import { spot } from '../../steps/blocks/workshop/Offer';
import type { Spare } from '../../steps/blocks/workshop/trade';
import { SLIP } from '../../wall/hands/hands';
import { useSay } from '../../words';

interface Props {
  onTake: (wedge: Place) => void;
  onTry: (wedge: Place | null) => void;
  onPress: (event: PointerEvent, from: Spare) => void;
  /** Whether a hand is over it. */
  over: boolean;
}

export function WedgeTray({ onTake, onTry, onPress, over }: Props) {
  const say = useSay();
  const project = useApp((app) => app.project);
  const restsAt = useRef('');
  const left = wedgeLedger(project).flatMap(({ set, left: there }) =>
    (['up', 'down'] as const).flatMap((tip) =>
      there[tip] > 0 ? [{ wedge: { set: set.id, tip }, label: set.label, count: there[tip] }] : [],
    ),
  );
  const total = left.reduce((sum, one) => sum + one.count, 0);
  return (
    <section
      className={over ? 'wedge-tray sheet-of-paper over' : 'wedge-tray sheet-of-paper'}
      aria-labelledby="tray-title"
      data-wedge-tray
    >
      <h3 id="tray-title">{say(counted(total, '1 wedge left', '{count} wedges left'))}</h3>
      <p className="quiet">
        {total > 0
          ? say(
              'Drag one to a place, or press it to put it in the chosen place. Drag a wedge here to take it out.',
            )
          : say('Drag a wedge here to take it out of the block.')}
      </p>
      <ul className="tray-wedges">
        {left.map((one) => (
          <li key={`${one.wedge.set} ${one.wedge.tip}`}>
            <TrayWedge
              set={one.wedge.set}
              tip={one.wedge.tip}
              label={one.label}
              count={one.count}
              name={say('{wedge}: {count} left', {
                wedge: say(wedgeTitle(project, one.wedge)),
                count: one.count,
              })}
              onTake={onTake}
              onTry={onTry}
              onPress={onPress}
              restsAt={restsAt}
            />
          </li>
        ))}
      </ul>
    </section>
  );
}

interface TrayProps extends Place, Omit<Props, 'over'> {
  label: string;
  count: number;
  name: string;
  /** Position of the pointer when it last took a wedge. */
  restsAt: RefObject<string>;
}

const TrayWedge = memo(function TrayWedge({
  set,
  tip,
  label,
  count,
  name,
  restsAt,
  onTake,
  onTry,
  onPress,
}: TrayProps) {
  const wedge = { set, tip };
  const down = useRef({ x: 0, y: 0 });
  // After a wedge is taken, another one may lie under the pointer; it is not shown before the pointer has moved.
  const tries = (event: PointerEvent) => {
    if (event.pointerType !== 'mouse' || event.buttons !== 0 || restsAt.current === spot(event)) return;
    restsAt.current = '';
    onTry(wedge);
  };
  return (
    <button
      type="button"
      className="tray-wedge"
      aria-label={name}
      title={name}
      onClick={(event) => {
        // Carried and put back on itself, it is no press.
        const slipped = Math.hypot(event.clientX - down.current.x, event.clientY - down.current.y);
        if (event.detail > 0 && slipped >= SLIP) return;
        restsAt.current = spot(event);
        onTake(wedge);
      }}
      onPointerDown={(event) => {
        down.current = { x: event.clientX, y: event.clientY };
        onPress(event, { spare: wedge });
      }}
      onPointerEnter={tries}
      onPointerMove={tries}
      onPointerLeave={() => onTry(null)}
      onFocus={(event) => event.target.matches(':focus-visible') && onTry(wedge)}
      onBlur={() => onTry(null)}
    >
      <WedgePicture wedge={wedge} height={84} />
      <span aria-hidden>
        <b>
          {label}
          {tip === 'up' ? '↑' : '↓'}
        </b>{' '}
        {count}
      </span>
    </button>
  );
});
