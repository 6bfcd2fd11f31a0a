// Photographs of sewn blocks on the large area: chosen, their corners laid, what was read put right, and each put on the wall.
import { useEffect } from 'react';
import { useStore } from 'zustand';
import { counted } from '../../../model/phrase';
import type { Project } from '../../../model/project';
import { type BlockPhoto, blockPhotosOf, isInQuilt } from '../../../store/photo/blockPhotos';
import { useApp, useAppStore } from '../../app';
import { useEscape } from '../../useEscape';
import { useSay } from '../../words';
import { usePhotoDrop } from '../usePhotoDrop';
import { BlockInPhoto } from './BlockInPhoto';
import './photo.css';
import { TakePhotos } from './TakePhotos';
import { RefusedPhotos, Working } from './Working';

export default function BlockPhotosStage() {
  const say = useSay();
  const store = useAppStore();
  const work = blockPhotosOf(store);
  const { photos, current, waiting, working, refused } = useStore(work.state);
  const close = () => store.getState().lay({ photoBlocks: false });
  useEscape(close);
  useEffect(() => store.getState().enlargeWall(false), [store]);
  const inHand = photos.find(({ file }) => file.key === current) ?? null;
  const take = (files: readonly File[]) => void work.take(files);
  usePhotoDrop(take);
  return (
    <div className="pictures-stage wants-room">
      <header className="sheet-of-paper pictures-head">
        <h2>{say('Blocks from photographs')}</h2>
        <div className="row">
          <TakePhotos
            choose={photos.length === 0 ? 'Choose photographs' : 'More photographs'}
            many
            first={photos.length === 0}
            onTake={take}
          />
          <button type="button" className="button" data-always onClick={close}>
            {say('Close')}
          </button>
        </div>
        {photos.length === 0 && !working ? (
          <p>
            {say(
              'Choose, paste or drop photographs of single blocks. The corners are found, and you can move them.',
            )}
          </p>
        ) : null}
        {waiting > 1 ? (
          <p role="status">{say(counted(waiting, '1 file waits.', '{count} files wait.'))}</p>
        ) : null}
      </header>
      <RefusedPhotos refused={refused} className="sheet-of-paper" onDismiss={work.dismiss} />
      <Working working={working} onStop={() => work.stop()} />
      {photos.length > 1 ? (
        <PhotoList photos={photos} current={current} onShow={(key) => work.show(key)} />
      ) : null}
      {inHand ? <BlockInPhoto key={inHand.file.key} photo={inHand} work={work} /> : null}
    </div>
  );
}

interface ListProps {
  photos: readonly BlockPhoto[];
  current: number | null;
  onShow: (key: number) => void;
}

function PhotoList({ photos, current, onShow }: ListProps) {
  const say = useSay();
  const project = useApp((app) => app.project);
  return (
    <ul className="photo-list" aria-label={say('Photographs')}>
      {photos.map((photo, at) => {
        const state = say(stateOf(photo, project));
        return (
          <li key={photo.file.key}>
            <button
              type="button"
              aria-pressed={photo.file.key === current}
              aria-label={say('Photograph {number}, {name}: {state}', {
                number: at + 1,
                name: photo.name,
                state,
              })}
              onClick={() => onShow(photo.file.key)}
            >
              <img src={photo.read?.href ?? photo.href} alt="" />
              <span>{state}</span>
            </button>
          </li>
        );
      })}
    </ul>
  );
}

function stateOf(photo: BlockPhoto, project: Project): string {
  if (isInQuilt(photo, project)) return 'done';
  const { problems, read } = photo;
  if (problems.length > 0) return 'not read';
  return read ? 'read' : 'waits';
}
