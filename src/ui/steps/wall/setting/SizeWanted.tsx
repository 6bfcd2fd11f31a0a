// Finds tops for a wanted size: the person types a size, compares several tops near it, and takes one.
import { useMemo, useState } from 'react';
import { sizeOffers } from '../../../../cutting/top/sizeOffers';
import { takeOffer } from '../../../../editing/commands/takeOffer';
import { layOut } from '../../../../geometry/setting';
import { useApp } from '../../../app';
import { Complaint, useRun } from '../../../fields/Complaint';
import { Fractions } from '../../../fields/Fractions';
import { LengthField } from '../../../fields/LengthField';
import { SmallTop } from '../../../wall/SmallTop';
import { useSay } from '../../../words';
import { blockWords, frameWords, rowWords, sizeWords, withOffer } from './offerWords';

const LEAST = 6;
/** The greatest size, inches: forty blocks of sixteen inches. */
const MOST = 640;

export function SizeWanted() {
  const say = useSay();
  const [open, setOpen] = useState(false);
  return (
    <section aria-label={say('Make it about')}>
      <details className="fold alone" onToggle={(event) => setOpen(event.currentTarget.open)}>
        <summary>
          <span className="name">{say('Make it about …')}</span>
          <span className="quiet now">{say('ways to a size you want')}</span>
        </summary>
        {open ? <Offers /> : null}
      </details>
    </section>
  );
}

function Offers() {
  const say = useSay();
  const project = useApp((app) => app.project);
  const [run, problems] = useRun();
  const [wanted, setWanted] = useState(() => {
    const { width, height } = layOut(project);
    return { width: Math.round(width), height: Math.round(height) };
  });
  const offers = useMemo(
    () => sizeOffers(project, wanted).map((offer) => ({ offer, shown: withOffer(project, offer) })),
    [project, wanted],
  );
  const take = (change: Partial<typeof wanted>) => {
    setWanted({ ...wanted, ...change });
    return [];
  };
  return (
    <div className="stack">
      <div className="wanted">
        <LengthField
          label="Width"
          value={wanted.width}
          least={LEAST}
          most={MOST}
          onCommit={(width) => take({ width })}
        />
        <LengthField
          label="Height"
          value={wanted.height}
          least={LEAST}
          most={MOST}
          onCommit={(height) => take({ height })}
        />
      </div>
      {offers.length === 0 ? (
        <p className="quiet">{say('These blocks make no top within half a block of that size.')}</p>
      ) : null}
      <ul className="size-offers">
        {offers.map(({ offer, shown }) => (
          <li key={`${offer.rows} ${offer.columns} ${offer.sashing.where}`}>
            <SmallTop project={shown} label={say(sizeWords(offer))} />
            <div>
              <p className="size">
                <Fractions text={say(sizeWords(offer))} />
              </p>
              <p className="quiet">
                <Fractions text={`${say(rowWords(offer))}; ${say(frameWords(offer))}`} />
              </p>
              <p className="quiet">{say(blockWords(offer, project.blocks.length))}</p>
              <button type="button" className="button" onClick={() => run(takeOffer(offer))}>
                {say('Make it so')}
              </button>
            </div>
          </li>
        ))}
      </ul>
      <Complaint problems={problems} />
    </div>
  );
}
