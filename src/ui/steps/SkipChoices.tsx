// The skip link for keyboards in the foot of a step, past its choices to what lies on the large area.
import { goOn } from '../parts';
import { useSay } from '../words';

export function SkipChoices() {
  const say = useSay();
  return (
    <span className="skip-links">
      <button type="button" data-always onClick={() => goOn(document, 1)}>
        {say('Skip the choices of this step')}
      </button>
    </span>
  );
}
