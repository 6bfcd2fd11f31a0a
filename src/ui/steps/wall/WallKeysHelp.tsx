// Help on the gestures and keys of the wall.
import { WALL_KEYS } from '../../keys';
import { useSay } from '../../words';

const GESTURES = [
  { shown: 'Drag', does: 'carry a block to another cell; the two swap' },
  { shown: 'Round handle, or two fingers on the block', does: 'turn the picked block' },
  {
    shown: 'Wheel or two fingers',
    does: 'zoom in and out (with Ctrl where the page scrolls); drag the background to move',
  },
  { shown: 'One finger, zoomed in', does: 'move the wall; carry only the block you picked' },
];

export function WallKeysHelp() {
  const say = useSay();
  return (
    <section>
      <details>
        <summary>{say('Gestures and shortcuts')}</summary>
        <dl className="keys">
          {[...GESTURES, ...WALL_KEYS].map(({ shown, does }) => (
            <div key={shown}>
              <dt>{say(shown)}</dt>
              <dd>{say(does)}</dd>
            </div>
          ))}
        </dl>
      </details>
    </section>
  );
}
