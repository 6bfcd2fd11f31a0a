// The wedges that no block uses, as pictures by set and tip. One is carried to a place, or pressed to go into the chosen place.
import { memo, type PointerEvent } from 'react';
import { wedgeLedger } from '../../../cutting/wedges/ledger';
import { counted } from '../../../model/phrase';
import type { Place } from '../../../model/project';
import { useApp } from '../../app';
import { wedgeTitle } from '../../steps/blocks/blockWords';
import { WedgePicture } from '../../steps/blocks/WedgePicture';
import type { Spare } from '../../steps/blocks/workshop/trade';
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
          ? say('Carry one to a place, or press it for the chosen place. Carry a wedge here to take it out.')
          : say('Carry a wedge here to take it out of the block.')}
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
}

const TrayWedge = memo(function TrayWedge({
  set,
  tip,
  label,
  count,
  name,
  onTake,
  onTry,
  onPress,
}: TrayProps) {
  const wedge = { set, tip };
  return (
    <button
      type="button"
      className="tray-wedge"
      aria-label={name}
      title={name}
      onClick={() => onTake(wedge)}
      onPointerDown={(event) => onPress(event, { spare: wedge })}
      onPointerEnter={(event) => event.pointerType === 'mouse' && onTry(wedge)}
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
