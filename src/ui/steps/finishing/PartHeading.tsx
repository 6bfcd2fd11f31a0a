// The heading of a part of finishing, with the way back to the list of parts.
import { ArrowUp } from 'lucide-react';
import { useSay } from '../../words';
import { FIRST_ENTRY, goToPlace, PARTS, type PartId } from './parts';

export function PartHeading({ id }: { id: PartId }) {
  const say = useSay();
  const { title } = PARTS.find((part) => part.id === id)!;
  return (
    <div className="spread part-heading">
      <h3 id={id} tabIndex={-1}>
        {say(title)}
      </h3>
      <button
        type="button"
        className="button bare no-print"
        aria-label={say('From {part} back to the parts', { part: say(title) })}
        title={say('Back to the parts')}
        onClick={() => goToPlace(FIRST_ENTRY)}
      >
        <ArrowUp size={16} aria-hidden />
      </button>
    </div>
  );
}
