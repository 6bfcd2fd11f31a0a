// The list of the parts of finishing at the top of the panel: each entry goes to its part and moves the focus there.
import { useSay } from '../../words';
import { FIRST_ENTRY, goToPlace, PARTS } from './parts';

export function PartsList() {
  const say = useSay();
  return (
    <nav aria-label={say('Parts of finishing')}>
      <ul className="parts">
        {PARTS.map(({ id, title }, index) => (
          <li key={id}>
            <button type="button" id={index === 0 ? FIRST_ENTRY : undefined} onClick={() => goToPlace(id)}>
              {say(title)}
            </button>
          </li>
        ))}
      </ul>
    </nav>
  );
}
