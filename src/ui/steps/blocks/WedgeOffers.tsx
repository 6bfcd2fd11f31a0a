// The wedges that are left for a place, the best first, each with what it would do. Only what is there is offered.
import { useMemo, useState } from 'react';
import { putWedge } from '../../../editing/blocks';
import { phrase } from '../../../model/phrase';
import type { Block, Place } from '../../../model/project';
import { type WedgeOffer, wedgeOffers } from '../../../store/wedgeOffers';
import { useApp, useAppStore } from '../../app';
import { Complaint, useRun } from '../../fields/Complaint';
import { Fractions } from '../../fields/Fractions';
import { useAnalysis } from '../../useAnalysis';
import { useSay } from '../../words';
import { meetingWords, wedgeTitle } from './blockWords';
import { WedgePicture } from './WedgePicture';

const FEW = 6;

interface Props {
  block: Block;
  place: number;
  onTry: (wedge: Place | null) => void;
}

export function WedgeOffers({ block, place, onTry }: Props) {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const { model } = useAnalysis(project);
  const [run, problems] = useRun();
  const [all, setAll] = useState(false);
  const offers = useMemo(() => {
    // While a large wall is still being worked out, the model may be of sets that have changed since.
    if (model.kindBands.length !== 2 * project.stripSets.length) return [];
    return wedgeOffers(project, model, block, place);
  }, [project, model, block, place]);
  const put = (wedge: Place) => {
    onTry(null);
    run(putWedge(store.getState().project, block.id, place, wedge));
  };
  const shown = all ? offers : offers.slice(0, FEW);
  if (offers.length === 0) {
    return (
      <p className="quiet">
        {say('No other wedge is left. Cut more, take one out of another block, or trade two.')}
      </p>
    );
  }
  return (
    <div>
      <h4>{say('Wedges left for it')}</h4>
      <ul className="offers">
        {shown.map((offer) => (
          <li key={`${offer.wedge.set} ${offer.wedge.tip}`}>
            <button
              type="button"
              className="offer"
              onClick={() => put(offer.wedge)}
              onPointerEnter={(event) => event.pointerType === 'mouse' && onTry(offer.wedge)}
              onPointerLeave={() => onTry(null)}
              onFocus={(event) => event.target.matches(':focus-visible') && onTry(offer.wedge)}
              onBlur={() => onTry(null)}
            >
              <WedgePicture wedge={offer.wedge} height={52} />
              <OfferWords offer={offer} />
            </button>
          </li>
        ))}
      </ul>
      {offers.length > FEW ? (
        <button type="button" className="button" aria-expanded={all} onClick={() => setAll(!all)}>
          {all ? say('Show fewer') : say('Show all {count}', { count: offers.length })}
        </button>
      ) : null}
      <Complaint problems={problems} />
    </div>
  );
}

function OfferWords({ offer }: { offer: WedgeOffer }) {
  const say = useSay();
  const project = useApp((app) => app.project);
  const meetings = meetingWords(project, offer.meetings);
  const nest = nestWords(offer);
  return (
    <span className="offer-words">
      <strong>{say(wedgeTitle(project, offer.wedge))}</strong>{' '}
      <span className="quiet">{say('{count} left', { count: offer.left })}</span>
      {nest ? <span className="line">{say(nest)}</span> : null}
      {meetings.map((one) => (
        <span key={one.say + String(one.with?.place)} className="line">
          <Fractions text={say(one)} />
        </span>
      ))}
      {meetings.length === 0 ? (
        <span className="line quiet">{say('Meets none of its own cloth.')}</span>
      ) : null}
    </span>
  );
}

function nestWords(offer: WedgeOffer) {
  if (!offer.rightTip)
    return phrase(
      offer.wedge.tip === 'up' ? 'A tip-down wedge belongs here.' : 'A tip-up wedge belongs here.',
    );
  return offer.nests ? null : phrase('Its seams are pressed like a neighbour’s and do not nest.');
}
