// One wedge on offer: its cloth, where it comes from, what it would meet. Resting on it shows it in the block.
import type { Phrase } from '../../../model/phrase';
import type { Place } from '../../../model/project';
import type { Meeting } from '../../../store/wedgeOffers';
import { useApp } from '../../app';
import { Fractions } from '../../fields/Fractions';
import { useSay } from '../../words';
import { meetingWords, wedgeTitle } from './blockWords';
import { WedgePicture } from './WedgePicture';

interface Props {
  wedge: Place;
  aside: Phrase;
  notes: readonly Phrase[];
  meetings: readonly Meeting[];
  take: () => void;
  onTry: (wedge: Place | null) => void;
}

export function Offer({ wedge, aside, notes, meetings, take, onTry }: Props) {
  const say = useSay();
  const project = useApp((app) => app.project);
  const words = [...notes, ...meetingWords(project, meetings)];
  return (
    <button
      type="button"
      className="offer"
      onClick={() => {
        onTry(null);
        take();
      }}
      onPointerEnter={(event) => event.pointerType === 'mouse' && onTry(wedge)}
      onPointerLeave={() => onTry(null)}
      onFocus={(event) => event.target.matches(':focus-visible') && onTry(wedge)}
      onBlur={() => onTry(null)}
    >
      <WedgePicture wedge={wedge} height={52} />
      <span className="offer-words">
        <strong>{say(wedgeTitle(project, wedge))}</strong> <span className="quiet">{say(aside)}</span>
        {words.map((one) => (
          <span key={say(one)} className="line">
            <Fractions text={say(one)} />
          </span>
        ))}
        {meetings.length === 0 ? (
          <span className="line quiet">{say('Meets none of its own cloth.')}</span>
        ) : null}
      </span>
    </button>
  );
}
