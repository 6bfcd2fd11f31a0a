// Skip links at the start of the page, for keyboards: past the bar and the list of steps to the current step or the wall.
import { useSay } from '../words';

/** The links. Each goes to the first element that exists. */
const PLACES = [
  { name: 'To the step', place: '.panel h2' },
  { name: 'To the wall', place: '.wall-area :is([tabindex="0"], button:not(:disabled))' },
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
