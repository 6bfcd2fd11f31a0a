// The photograph of a design wall on the large area: its grid laid, its blocks read, doubtful ones put right, and all hung as in the picture.
import { useEffect } from 'react';
import { useStore } from 'zustand';
import { phrase } from '../../../model/phrase';
import type { Problem } from '../../../model/result';
import { type WallPhoto, type WallPhotos, wallPhotoOf } from '../../../store/photo/wallPhoto';
import { useAppStore } from '../../app';
import { Complaint } from '../../fields/Complaint';
import { useEscape } from '../../useEscape';
import { useSay } from '../../words';
import { usePhotoDrop } from '../usePhotoDrop';
import { GridOnPhoto } from './GridOnPhoto';
import { HangWall } from './HangWall';
import './photo.css';
import { TakePhotos } from './TakePhotos';
import { WallCells } from './WallCells';
import { Working } from './Working';

const NONE: readonly Problem[] = [];

export default function WallPhotoStage() {
  const say = useSay();
  const store = useAppStore();
  const work = wallPhotoOf(store);
  const { photo, working, problems } = useStore(work.state);
  const close = () => store.getState().lay({ photoWall: false });
  useEscape(close);
  useEffect(() => store.getState().enlargeWall(false), [store]);
  const take = (files: readonly File[]) => {
    const { name } = files[0]!;
    if (files.length > 1)
      store.getState().announce(phrase('One photograph of the wall at a time: {name} is taken.', { name }));
    void work.take(name, files[0]!);
  };
  usePhotoDrop(take);
  return (
    <div className="pictures-stage wants-room">
      <header className="sheet-of-paper pictures-head">
        <h2>{say('The wall from a photograph')}</h2>
        <div className="row">
          <TakePhotos
            choose={photo ? 'Another photograph' : 'Choose a photograph'}
            many={false}
            first={!photo}
            onTake={take}
          />
          <button type="button" className="button" data-always onClick={close}>
            {say('Close')}
          </button>
        </div>
        {photo || working ? null : (
          <p>
            {say(
              'Choose, paste or drop one photograph of the wall, taken from the front with all of it in the picture. Rows and columns are found, and you can move them.',
            )}
          </p>
        )}
        <Complaint problems={photo ? NONE : problems} />
      </header>
      <Working working={working} onStop={() => work.stop()} />
      {photo ? <WallInPhoto photo={photo} work={work} problems={problems} busy={working !== null} /> : null}
    </div>
  );
}

interface Props {
  photo: WallPhoto;
  work: WallPhotos;
  problems: readonly Problem[];
  busy: boolean;
}

function WallInPhoto({ photo, work, problems, busy }: Props) {
  const say = useSay();
  const read = photo.cells.some((cell) => cell.read !== null);
  return (
    <>
      <div className="sheet-of-paper">
        <GridOnPhoto photo={photo} work={work} />
        <Complaint problems={problems} />
        <div className="row">
          <button
            type="button"
            className={read ? 'button' : 'button solid'}
            disabled={photo.cells.every((cell) => cell.empty)}
            aria-disabled={busy}
            onClick={() => {
              if (!busy) void work.read();
            }}
          >
            {say(read ? 'Read the blocks again' : 'Read the blocks')}
          </button>
        </div>
      </div>
      {photo.cells.length > 0 ? <WallCells key={photo.file.key} photo={photo} work={work} /> : null}
      {read ? <HangWall photo={photo} work={work} /> : null}
    </>
  );
}
