// What was read of a block: its wedges clockwise from the top, the bands of each from the rim in, doubtful ones marked. A press on a band opens
// the fabrics for it. A wedge is one stop for Tab; arrows go along its bands.
import { CircleHelp } from 'lucide-react';
import { useRef, useState } from 'react';
import { findFabric } from '../../../model/find';
import type { FabricId, PicturedWedge } from '../../../model/project';
import type { ReadBand } from '../../../photo/block/readLook';
import { isDoubtful } from '../../../store/photo/corrected';
import { useApp } from '../../app';
import { Swatch } from '../../fields/Swatch';
import { Toolbar } from '../../fields/Toolbar';
import { useSay } from '../../words';
import { bandWords, percentSure, sureWords } from './bandWords';
import { FabricForBand } from './FabricForBand';
import type { ReadStrip } from './FabricOfStrip';

interface Props {
  shown: readonly PicturedWedge[];
  /** The same bands as they were read, with what is seen of each. */
  read: readonly (readonly ReadBand[])[];
  onTell: (place: number, band: number, fabric: FabricId | null) => void;
  /** Reads the fabric of a strip from the photograph. */
  onRead: (place: number, band: number) => ReturnType<ReadStrip>;
}

interface Open {
  readonly place: number;
  readonly band: number;
}

export function BandsRead({ shown, read, onTell, onRead }: Props) {
  const say = useSay();
  const project = useApp((app) => app.project);
  const [open, setOpen] = useState<Open | null>(null);
  const list = useRef<HTMLOListElement>(null);
  /** The focus goes back to the strip. */
  const close = ({ place, band }: Open) => {
    setOpen(null);
    list.current?.querySelector<HTMLElement>(`[data-band="${place} ${band}"]`)?.focus();
  };
  return (
    <ol ref={list} className="bands-read" aria-label={say('Wedges as read, clockwise from the top')}>
      {shown.map(({ bands }, place) => {
        const opened = open?.place === place ? open : null;
        const seen = opened && read[place]?.[opened.band];
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: a place is its index
          <li key={place}>
            <b aria-hidden>{place + 1}</b>
            <Toolbar className="bands-of" aria-label={say('Place {place}', { place: place + 1 })}>
              {bands.map((band, at) => (
                <BandButton
                  // biome-ignore lint/suspicious/noArrayIndexKey: a band is its index
                  key={at}
                  band={band}
                  place={place}
                  at={at}
                  open={opened?.band === at}
                  onPress={() => setOpen(opened?.band === at ? null : { place, band: at })}
                />
              ))}
              {bands.length === 0 ? <span className="quiet">{say('Nothing was read.')}</span> : null}
            </Toolbar>
            {opened && seen ? (
              <FabricForBand
                words={say(bandWords(project, place, opened.band, bands[opened.band]!))}
                seen={seen}
                onRead={() => onRead(place, opened.band)}
                chosen={bands[opened.band]!.fabric}
                onChoose={(fabric) => {
                  onTell(place, opened.band, fabric);
                  close(opened);
                }}
                onClose={() => close(opened)}
              />
            ) : null}
          </li>
        );
      })}
    </ol>
  );
}

interface BandProps {
  band: PicturedWedge['bands'][number];
  place: number;
  at: number;
  open: boolean;
  onPress: () => void;
}

function BandButton({ band, place, at, open, onPress }: BandProps) {
  const say = useSay();
  const project = useApp((app) => app.project);
  const fabric = band.fabric === null ? undefined : findFabric(project, band.fabric);
  const doubtful = isDoubtful(band);
  const sure = sureWords(band);
  return (
    <button
      type="button"
      className={doubtful ? 'band-read doubtful' : 'band-read'}
      aria-expanded={open}
      aria-label={say(bandWords(project, place, at, band))}
      data-band={`${place} ${at}`}
      onClick={onPress}
    >
      {fabric ? <Swatch fabric={fabric} size={22} /> : <span className="no-fabric" />}
      <span className="band-name">
        <bdi>{fabric?.name ?? say('not known')}</bdi>
        {sure ? (
          <em>
            {doubtful ? <CircleHelp size={14} aria-hidden /> : null}{' '}
            {doubtful ? say(sure) : say('{sure}%', { sure: percentSure(band.sure) })}
          </em>
        ) : null}
      </span>
    </button>
  );
}
