// The wedges that could lie in a place: those left over and those of other blocks in trade, the best first, each with what
// it would do. Only what is there is offered.
import { useDeferredValue, useMemo, useState } from 'react';
import { putWedge, tradeWedges } from '../../../editing/blocks';
import { findBlock } from '../../../model/find';
import { type Phrase, phrase } from '../../../model/phrase';
import type { Block, Place, Project } from '../../../model/project';
import { type InTrade, type LeftOver, type Meeting, wedgeOffers } from '../../../store/wedgeOffers';
import { useApp, useAppStore } from '../../app';
import { Complaint, useRun } from '../../fields/Complaint';
import { useAnalysis } from '../../useAnalysis';
import { useSay } from '../../words';
import { Offer } from './Offer';

const FEW = 5;

interface Props {
  block: Block;
  place: number;
  onTry: (wedge: Place | null) => void;
}

interface Shown {
  readonly id: string;
  readonly wedge: Place;
  readonly aside: Phrase;
  readonly notes: readonly Phrase[];
  readonly meetings: readonly Meeting[];
  readonly take: () => void;
}

export function WedgeOffers({ block, place, onTry }: Props) {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const { model } = useAnalysis(project);
  const [run, problems] = useRun();
  // On a large wall ranking takes a moment; the choice of a place does not wait for it.
  const asked = useDeferredValue(useMemo(() => ({ project, block, place }), [project, block, place]));
  const { leftOver, inTrade } = useMemo(() => {
    // While a large wall is still being worked out, the model may be of sets that have changed since.
    const sound = model.kindBands.length === 2 * asked.project.stripSets.length;
    if (!sound) return { leftOver: [], inTrade: [] };
    return wedgeOffers(asked.project, model, asked.block, asked.place);
  }, [asked, model]);
  const stale = asked.place !== place || asked.block !== block;
  const left = leftOver.map((offer) => ({
    ...shownLeft(offer),
    take: () => run(putWedge(store.getState().project, block.id, place, offer.wedge)),
  }));
  const trades = inTrade.map((offer) => ({
    ...shownTrade(project, offer),
    take: () => run(tradeWedges(store.getState().project, { block: block.id, place }, offer.from)),
  }));
  return (
    <div className={stale ? 'stack stale' : 'stack'} aria-busy={stale} inert={stale}>
      <OfferList title={say('Wedges left for it')} offers={left} onTry={onTry}>
        <p className="quiet">{say('No other wedge is left over. Cut more, or trade.')}</p>
      </OfferList>
      {trades.length > 0 ? (
        <OfferList title={say('From other blocks, in trade')} offers={trades} onTry={onTry} />
      ) : null}
      <Complaint problems={problems} />
    </div>
  );
}

function OfferList(props: {
  title: string;
  offers: readonly Shown[];
  onTry: (wedge: Place | null) => void;
  children?: React.ReactNode;
}) {
  const say = useSay();
  const [all, setAll] = useState(false);
  const { offers } = props;
  const shown = all ? offers : offers.slice(0, FEW);
  return (
    <div>
      <h4>{props.title}</h4>
      {offers.length === 0 ? props.children : null}
      <ul className="offers">
        {shown.map((offer) => (
          <li key={offer.id}>
            <Offer {...offer} onTry={props.onTry} />
          </li>
        ))}
      </ul>
      {offers.length > FEW ? (
        <button type="button" className="button" aria-expanded={all} onClick={() => setAll(!all)}>
          {all ? say('Show fewer') : say('Show all {count}', { count: offers.length })}
        </button>
      ) : null}
    </div>
  );
}

function shownLeft(offer: LeftOver): Omit<Shown, 'take'> {
  const { wedge, rightTip, nests, left, meetings } = offer;
  const notes: Phrase[] = [];
  if (!rightTip)
    notes.push(
      phrase(wedge.tip === 'up' ? 'A tip-down wedge belongs here.' : 'A tip-up wedge belongs here.'),
    );
  else if (!nests) notes.push(phrase('Its seams are pressed like a neighbour’s and do not nest.'));
  return {
    id: `${wedge.set} ${wedge.tip}`,
    wedge,
    aside: phrase('{count} left', { count: left }),
    notes,
    meetings,
  };
}

function shownTrade(project: Project, offer: InTrade): Omit<Shown, 'take'> {
  const { wedge, from, meetings, rimsElsewhere } = offer;
  const block = findBlock(project, from.block)?.number ?? 0;
  const notes: Phrase[] = [];
  const values = { block, count: Math.abs(rimsElsewhere) };
  if (rimsElsewhere > 0) notes.push(phrase('In block {block}, {count} more on the rim would meet.', values));
  if (rimsElsewhere < 0) notes.push(phrase('In block {block}, {count} fewer on the rim would meet.', values));
  return {
    id: `${wedge.set} ${wedge.tip}`,
    wedge,
    aside: phrase('block {block}, place {place}', { block, place: from.place + 1 }),
    notes,
    meetings,
  };
}
