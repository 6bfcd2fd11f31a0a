// One wedge on offer: its cloth, where it comes from, and its clashes. Pointing at it shows it in the block.
import type { PointerEvent, RefObject } from 'react';
import type { Phrase } from '../../../../model/phrase';
import type { Place } from '../../../../model/project';
import { useApp } from '../../../app';
import { Fractions } from '../../../fields/Fractions';
import { useSay } from '../../../words';
import { wedgeTitle } from '../blockWords';
import { WedgePicture } from '../WedgePicture';

interface Props {
  wedge: Place;
  aside: Phrase;
  words: readonly Phrase[];
  clean: boolean;
  take: () => void;
  onTry: (wedge: Place | null) => void;
  /** Position of the pointer when it last took a wedge. */
  restsAt: RefObject<string>;
}

export function Offer({ wedge, aside, words, clean, take, onTry, restsAt }: Props) {
  const say = useSay();
  const project = useApp((app) => app.project);
  // After a wedge is taken, another one lies under the pointer; it is not shown before the pointer has moved.
  const moves = (event: PointerEvent) => {
    if (event.pointerType !== 'mouse' || restsAt.current === spot(event)) return;
    restsAt.current = '';
    onTry(wedge);
  };
  return (
    <button
      type="button"
      className="offer"
      onClick={(event) => {
        restsAt.current = spot(event);
        onTry(null);
        take();
      }}
      onPointerEnter={moves}
      onPointerMove={moves}
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
        {clean ? <span className="line quiet">{say('Meets none of its own fabric.')}</span> : null}
      </span>
    </button>
  );
}

/** Where the pointer is, in whole pixels: a click tells no parts of a pixel, a move does. */
export function spot({ clientX, clientY }: { clientX: number; clientY: number }): string {
  return `${Math.floor(clientX)} ${Math.floor(clientY)}`;
}
