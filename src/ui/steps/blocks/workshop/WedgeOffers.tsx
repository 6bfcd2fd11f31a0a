// The wedges that could lie in a place, best first, each with its effect: wedges that are left over, and wedges of other blocks in
// a trade. The list changes only while nobody can take from it, so that the offer that was read is the offer that is taken.
import { useEffect, useMemo, useRef, useState } from 'react';
import type { InTrade, LeftOver, WedgeOffers as Offers } from '../../../../arrange/mend/wedgeOffers';
import { putWedge, tradeWedges } from '../../../../editing/commands/blocks';
import { findBlock } from '../../../../model/find';
import { type Phrase, phrase } from '../../../../model/phrase';
import type { Block, Place, Project } from '../../../../model/project';
import type { Balance } from '../../../../store/analysis/analysis';
import { useApp, useAppStore } from '../../../app';
import { Complaint, useRun } from '../../../fields/Complaint';
import { useSession } from '../../../session';
import { useSay } from '../../../words';
import { outsideWords, topWords, wedgeClashWords } from '../blockWords';
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
  readonly words: readonly Phrase[];
  /** Whether it has no clash in the block or beyond. */
  readonly clean: boolean;
  readonly take: () => void;
}

interface Asked {
  readonly project: Project;
  readonly block: Block;
  readonly place: number;
}

const NONE: Offers = { leftOver: [], inTrade: [] };
const UNASKED = { asked: null, offers: NONE };

export function WedgeOffers({ block, place, onTry }: Props) {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const [run, problems] = useRun();
  // On a large wall the analysis and the ranking take a moment. Until they belong to the present block and place, the list is
  // disabled, because it could change between reading and taking.
  const now = useMemo(() => ({ project, block, place }), [project, block, place]);
  const { asked, offers } = useOffers(now);
  const { leftOver, inTrade } = offers;
  const stale = asked !== now;
  const take = (command: () => ReturnType<typeof putWedge>) => () => {
    if (asked && store.getState().project === asked.project) took.current = run(command());
  };
  // The taken offer disappears with the focus, so the focus goes to the wedge that lies in the place now.
  const took = useRef(false);
  // biome-ignore lint/correctness/useExhaustiveDependencies: when the list is new
  useEffect(() => {
    if (took.current && document.activeElement === document.body)
      document.getElementById('place-title')?.focus();
    took.current = false;
  }, [asked]);
  const left = leftOver.map((offer) => ({
    ...shownLeft(project, block.places[place] == null, offer),
    take: take(() => putWedge(project, block.id, place, offer.wedge)),
  }));
  const trades = inTrade.map((offer) => ({
    ...shownTrade(project, offer),
    take: take(() => tradeWedges(project, { block: block.id, place }, offer.from)),
  }));
  return (
    <div className={stale ? 'stack stale' : 'stack'} aria-busy={stale} inert={stale}>
      <p className="quiet">
        {say(
          'What fits beside its neighbours comes first, then what is best for the whole top. A random layout scores 100; lower is better.',
        )}
      </p>
      <OfferList title={say('Wedges left over')} offers={left} onTry={onTry}>
        <p className="quiet">
          {asked ? say('No other wedge is left over. Cut more, or trade.') : say('Looking for what fits …')}
        </p>
      </OfferList>
      {trades.length > 0 ? (
        <OfferList title={say('Trades with other blocks')} offers={trades} onTry={onTry} />
      ) : null}
      <Complaint problems={problems} />
    </div>
  );
}

/** The last question that is answered, with its answer from the worker. */
function useOffers(now: Asked): { asked: Asked | null; offers: Offers } {
  const { analysing } = useSession();
  const [answered, setAnswered] = useState<{ asked: Asked | null; offers: Offers }>(UNASKED);
  useEffect(() => {
    let wanted = true;
    void analysing.offers(now.project, now.block.id, now.place).then((offers) => {
      if (wanted) setAnswered({ asked: now, offers: offers ?? NONE });
    });
    return () => {
      wanted = false;
    };
  }, [analysing, now]);
  return answered;
}

/** The seams of a balance; null if its sets or fabrics have changed since. */
export function seamsOf(balance: Balance | null, project: Project): Balance['seams'] | null {
  const of = balance?.project;
  const same =
    of?.stripSets === project.stripSets && of.fabrics === project.fabrics && of.wedge === project.wedge;
  return balance && same ? balance.seams : null;
}

function OfferList(props: {
  title: string;
  offers: readonly Shown[];
  onTry: (wedge: Place | null) => void;
  children?: React.ReactNode;
}) {
  const say = useSay();
  const [all, setAll] = useState(false);
  const restsAt = useRef('');
  const { offers } = props;
  const shown = all ? offers : offers.slice(0, FEW);
  return (
    <div>
      <h4>{props.title}</h4>
      {offers.length === 0 ? props.children : null}
      <ul className="wedge-offers">
        {shown.map((offer) => (
          <li key={offer.id}>
            <Offer {...offer} onTry={props.onTry} restsAt={restsAt} />
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

function shownLeft(project: Project, empty: boolean, offer: LeftOver): Omit<Shown, 'take'> {
  const { wedge, rightTip, nests, left } = offer;
  const notes: Phrase[] = [];
  if (!rightTip)
    notes.push(
      phrase(wedge.tip === 'up' ? 'A tip-down wedge belongs here.' : 'A tip-up wedge belongs here.'),
    );
  else if (!nests) notes.push(phrase('Its seams are pressed like a neighbour’s and do not nest.'));
  return { ...shownBoth(project, empty, offer, notes), aside: phrase('{count} left', { count: left }) };
}

function shownTrade(project: Project, offer: InTrade): Omit<Shown, 'take'> {
  const { from, rimsElsewhere } = offer;
  const block = findBlock(project, from.block)?.number ?? 0;
  const notes: Phrase[] = [];
  const values = { block, count: Math.abs(rimsElsewhere) };
  if (rimsElsewhere > 0) notes.push(phrase('In block {block}, {count} more rims would clash.', values));
  if (rimsElsewhere < 0) notes.push(phrase('In block {block}, {count} fewer rims would clash.', values));
  return {
    ...shownBoth(project, false, offer, notes),
    aside: phrase('block {block}, place {place}', { block, place: from.place + 1 }),
  };
}

function shownBoth(project: Project, empty: boolean, offer: LeftOver | InTrade, notes: readonly Phrase[]) {
  const { wedge, inside, outside, top } = offer;
  return {
    id: `${wedge.set} ${wedge.tip}`,
    wedge,
    words: [
      ...notes,
      ...wedgeClashWords(project, inside),
      ...(outside ? [outsideWords(project, outside)] : []),
      ...(top ? [topWords(top, empty)] : []),
    ],
    clean: inside.length === 0 && outside === null,
  };
}
