// Help on the gestures and keys of the wall.
import { useSay } from '../../words';

const KEYS = [
  ['Drag', 'carry a block to another cell; the two swap'],
  ['Round handle, or two fingers on the block', 'turn the picked block'],
  ['Wheel or two fingers', 'closer and farther; drag the flannel to move'],
  ['Arrows', 'from block to block'],
  ['Enter', 'pick a block'],
  ['R, Shift R', 'turn it a quarter'],
  ['[ and ]', 'turn it by one wedge while its corners are not on'],
  ['Space', 'lift it; arrows carry it, Space puts it down'],
  ['P', 'pin it, or take the pin out'],
  ['Delete', 'take it down to the side table'],
  ['Ctrl Z, Ctrl Y', 'undo, redo'],
] as const;

export function WallKeysHelp() {
  const say = useSay();
  return (
    <section>
      <details>
        <summary>{say('Gestures and shortcuts')}</summary>
        <dl className="keys">
          {KEYS.map(([key, does]) => (
            <div key={key}>
              <dt>{say(key)}</dt>
              <dd>{say(does)}</dd>
            </div>
          ))}
        </dl>
      </details>
    </section>
  );
}
