// Skip links for keyboards: at the start of the page past the bar and the list of steps, and in the foot of a step past its choices.
import { goOn } from '../parts';
import { useSay } from '../words';

/** The links at the start of the page. Each goes to the first element that exists. */
const PLACES = [
  { name: 'Skip to the step', place: '.panel h2' },
  { name: 'Skip to the wall', place: '.wall-area :is([tabindex="0"], button:not(:disabled))' },
] as const;

export function SkipLinks() {
  const say = useSay();
  return (
    <nav className="skip-links" aria-label={say('Skip')}>
      {PLACES.map(({ name, place }) => (
        <button key={name} type="button" onClick={() => document.querySelector<HTMLElement>(place)?.focus()}>
          {say(name)}
        </button>
      ))}
    </nav>
  );
}

/** Goes past the choices of the step to what lies on the large area. */
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
