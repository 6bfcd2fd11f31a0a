// Tops of about a wanted size side by side, each as it would look, with what changes ringed; one is used by a press.
import { useEffect, useMemo } from 'react';
import { type SizeOffer, sizeOffers } from '../../../cutting/top/sizeOffers';
import { takeOffer } from '../../../editing/commands/takeOffer';
import type { Project } from '../../../model/project';
import type { Inches } from '../../../model/units';
import { rowWords } from '../../../model/words/rowWords';
import { useApp, useAppStore } from '../../app';
import { Complaint, useRun } from '../../fields/Complaint';
import { Fractions } from '../../fields/Fractions';
import { blockWords, frameWords, sizeWords, withOffer } from '../../steps/wall/setting/offerWords';
import { useEscape } from '../../useEscape';
import { SmallTop } from '../../wall/SmallTop';
import { useSay } from '../../words';
import { ChoiceButtons } from './ChoiceButtons';
import { sizeMarks } from './sizeMarks';

export function SizesToChoose({ wanted }: { wanted: { readonly width: Inches; readonly height: Inches } }) {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const [run, problems] = useRun();
  const offers = useMemo(
    () => sizeOffers(project, wanted).map((offer) => ({ offer, shown: withOffer(project, offer) })),
    [project, wanted],
  );
  useEffect(() => store.getState().enlargeWall(false), [store]);
  const close = () => store.getState().lay({ sizes: null });
  useEscape(close);
  return (
    <div className="to-choose">
      <header>
        <h2>
          <Fractions
            text={say('About {width} × {height}', {
              width: { inches: wanted.width },
              height: { inches: wanted.height },
            })}
          />
        </h2>
        <p>
          {offers.length === 0
            ? say('These blocks make no top within half a block of that size.')
            : say('Tops that come close with these blocks, the closest first.')}
        </p>
        <Complaint problems={problems} />
      </header>
      <ul>
        {offers.map(({ offer, shown }) => (
          <SizeCard
            key={`${offer.rows} ${offer.columns} ${offer.sashing.where}`}
            offer={offer}
            shown={shown}
            now={project}
            onUse={() => {
              if (run(takeOffer(offer))) close();
            }}
            onCancel={close}
          />
        ))}
      </ul>
    </div>
  );
}

interface CardProps {
  offer: SizeOffer;
  shown: Project;
  now: Project;
  onUse: () => void;
  onCancel: () => void;
}

function SizeCard({ offer, shown, now, onUse, onCancel }: CardProps) {
  const say = useSay();
  const size = say(sizeWords(offer));
  const marks = useMemo(() => sizeMarks(now, shown), [now, shown]);
  // An offer that is refused shows the top as it is; Use says why.
  const changes = shown === now ? [] : marks.words;
  return (
    <li aria-label={size}>
      <div className="size-pictures">
        <div className="choice-picture">
          <SmallTop project={shown} label={size} ringedCells={marks.newCells} />
        </div>
        {marks.down.size > 0 ? (
          <figure className="as-now">
            <div className="choice-picture">
              <SmallTop project={now} label={say('The top as it is now')} ringed={marks.down} />
            </div>
            <figcaption className="quiet">{say('Now')}</figcaption>
          </figure>
        ) : null}
      </div>
      <p>
        <strong className="size">
          <Fractions text={size} />
        </strong>
        : <Fractions text={`${say(rowWords(offer))}; ${say(frameWords(offer))}`} />.{' '}
        <span className="quiet">
          {say(blockWords(offer, now.blocks.length))}. {changes.map((one) => say(one)).join(' ')}
        </span>
      </p>
      <ChoiceButtons
        of={say('{size}, {rows}, {frame}', {
          size: sizeWords(offer),
          rows: rowWords(offer),
          frame: frameWords(offer),
        })}
        onUse={onUse}
        onCancel={onCancel}
      />
    </li>
  );
}
