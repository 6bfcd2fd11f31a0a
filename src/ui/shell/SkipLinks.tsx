// Skip links for keyboards at the start of the page, past the bar and the list of steps.
import { useSay } from '../words';

/** Each goes to the first element that exists. */
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
