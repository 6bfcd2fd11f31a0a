// First on the page for who goes by keyboard: past the bar and the order of work, to the step or to the wall.
import { useSay } from '../words';

/** Each goes to the first of these that there is. */
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
