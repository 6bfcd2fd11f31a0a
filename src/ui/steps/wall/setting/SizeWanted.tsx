// A size wanted, the other way round: type about how large, see several ways to come close, take one up.
import { useMemo, useState } from 'react';
import { type SizeOffer, sizeOffers } from '../../../../cutting/sizeOffers';
import { apply } from '../../../../editing/apply';
import { takeOffer } from '../../../../editing/takeOffer';
import { layOut } from '../../../../geometry/setting';
import { type Phrase, phrase } from '../../../../model/phrase';
import type { Project } from '../../../../model/project';
import { useApp } from '../../../app';
import { Complaint, useRun } from '../../../fields/Complaint';
import { Fractions } from '../../../fields/Fractions';
import { LengthField } from '../../../fields/LengthField';
import { SmallTop } from '../../../wall/SmallTop';
import { useSay } from '../../../words';

const LEAST = 6;
const MOST = 160;

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

/** The quilt as the offer would make it; as it is where that is refused, which taking it up then explains. */
function withOffer(project: Project, offer: SizeOffer): Project {
  const outcome = apply(project, takeOffer(offer));
  return outcome.ok ? outcome.project : project;
}

function sizeWords(offer: SizeOffer): Phrase {
  return phrase('{width} × {height}', {
    width: { inches: offer.width },
    height: { inches: offer.height },
  });
}

function rowWords(offer: SizeOffer): Phrase {
  return phrase('{rows} rows of {columns}', { rows: offer.rows, columns: offer.columns });
}

function frameWords({ sashing, borders }: SizeOffer): Phrase {
  const sashed = sashing.where === 'none' ? null : { width: { inches: sashing.width } };
  const bordered = borders.length === 0 ? null : { inches: borders.reduce((sum, one) => sum + one, 0) };
  if (sashed && bordered) {
    return phrase(
      sashing.where === 'around'
        ? 'sashing {width} all round, borders {border}'
        : 'sashing {width} between, borders {border}',
      { ...sashed, border: bordered },
    );
  }
  if (sashed) {
    return phrase(
      sashing.where === 'around' ? 'sashing {width} all round' : 'sashing {width} between',
      sashed,
    );
  }
  return bordered
    ? phrase('no sashing, borders {border}', { border: bordered })
    : phrase('no sashing, no border');
}

function blockWords(offer: SizeOffer, have: number): Phrase {
  const more = offer.blocks - have;
  if (more <= 0) return phrase('{blocks} blocks; you have {have}', { blocks: offer.blocks, have });
  return phrase('{blocks} blocks, {more} more than you have', { blocks: offer.blocks, more });
}
