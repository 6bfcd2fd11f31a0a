// Fabrics from photographs on the large area: the photograph in hand, what is done on it, how the fabric reads and looks, and the new ones.
import { useState } from 'react';
import type { Point } from '../../../../geometry/point';
import { phrase } from '../../../../model/phrase';
import type { Problem } from '../../../../model/result';
import { type Patch, type PhotoAtWork, patchInHand } from '../../../../store/photo/patches';
import type { PhotoProgress } from '../../../../store/photo/sentPhoto';
import { useApp, useAppStore } from '../../../app';
import { Apart } from '../../../fields/Apart';
import { Choice } from '../../../fields/Choice';
import { Complaint } from '../../../fields/Complaint';
import { useEscape } from '../../../useEscape';
import { useSay } from '../../../words';
import { TakePhotos } from '../../photo/TakePhotos';
import { RefusedPhotos, Working } from '../../photo/Working';
import { closePhotos } from './closePhotos';
import { FramePart } from './FramePart';
import { LightPart } from './LightPart';
import { NewFabrics } from './NewFabrics';
import './photo.css';
import { DOINGS, type Doing, PhotoPicture } from './picture/PhotoPicture';
import { ReadingPart } from './ReadingPart';
import { Sample } from './Sample';
import { SizePart } from './SizePart';
import { useSitting, useSittingState } from './sitting';
import { useTakePhotos } from './useTakePhotos';

const DOING_NAMES: Readonly<Record<Doing, string>> = {
  frame: 'Frame',
  size: 'True size',
  light: 'Light',
  several: 'Several fabrics',
};

export function PhotoStage() {
  const say = useSay();
  const store = useAppStore();
  const sitting = useSitting();
  const take = useTakePhotos();
  const { photos, current, refused, working, waiting, replacing } = useSittingState((state) => state);
  const replaced = useApp((app) => app.project.fabrics.find(({ id }) => id === replacing));
  useEscape(() => closePhotos(store, sitting));
  const photo = photos.find(({ file }) => file.key === current) ?? null;
  const doing = working ?? (waiting > 0 ? OPENING : null);
  return (
    <section className="photo-stage" aria-label={say('Fabrics from photographs')}>
      <div className="photo-head">
        <h2>
          {replaced
            ? say('A photograph of {name}', { name: replaced.name })
            : say('Fabrics from photographs')}
        </h2>
        <div className="row">
          <TakePhotos
            choose={photos.length === 0 ? 'Choose photographs' : 'More photographs'}
            files="Photographs of fabrics"
            many
            first={photos.length === 0}
            onTake={take}
          />
        </div>
        <button data-always type="button" className="button" onClick={() => closePhotos(store, sitting)}>
          {say('Done')}
          <Apart of={say('Fabrics from photographs')} />
        </button>
      </div>
      <RefusedPhotos refused={refused} className="photo-refused" onDismiss={sitting.dismiss} />
      <Working working={doing} onStop={() => sitting.stop()} />
      {photos.length > 1 ? <Thumbs photos={photos} current={current} /> : null}
      {photo ? (
        <Work key={photo.file.key} photo={photo} />
      ) : waiting > 0 ? null : (
        <p className="photo-invite">
          {say('Choose photographs of your fabrics, or drop or paste them here. Nothing leaves this device.')}
        </p>
      )}
      {photos.length > 0 ? <NewFabrics /> : null}
    </section>
  );
}

const OPENING: PhotoProgress = { doing: phrase('Opening the photograph'), share: null };

function Thumbs({ photos, current }: { photos: readonly PhotoAtWork[]; current: number | null }) {
  const say = useSay();
  const sitting = useSitting();
  return (
    <ul className="photo-thumbs" aria-label={say('Photographs')}>
      {photos.map(({ file, name, href }) => (
        <li key={file.key}>
          <button
            type="button"
            aria-pressed={file.key === current}
            aria-label={say('Photograph {name}', { name })}
            title={name}
            onClick={() => sitting.show(file.key)}
          >
            <img src={href} alt="" />
          </button>
        </li>
      ))}
    </ul>
  );
}

function Work({ photo }: { photo: PhotoAtWork }) {
  const say = useSay();
  const sitting = useSitting();
  const replacing = useSittingState((state) => state.replacing !== null);
  const [doing, setDoing] = useState<Doing>('frame');
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const patch = patchInHand(photo);
  const tap = async (at: Point) => {
    if (doing === 'several') setProblems(await sitting.split(photo.file.key, at.x, at.y));
    else setProblems(await sitting.takeLight(photo.file.key, spotAt(photo, at), photo.neutral));
  };
  if (!patch) return null;
  const choices = DOINGS.filter((one) => one !== 'several' || !replacing);
  return (
    <div className="photo-work">
      <PhotoPicture photo={photo} doing={doing} onTap={(at) => void tap(at)} />
      <div className="photo-side stack">
        <Choice
          label="Adjust"
          value={doing}
          options={choices.map((value) => ({ value, label: DOING_NAMES[value] }))}
          onChange={(next) => {
            setDoing(next);
            setProblems([]);
          }}
        />
        <Part doing={doing} photo={photo} patch={patch} problems={problems} onProblems={setProblems} />
      </div>
      {patch.read ? (
        <div className="photo-result">
          <Sample read={patch.read} />
          <ReadingPart found={patch.read.found} />
        </div>
      ) : (
        <p className="photo-result">
          {say(patch.problems[0]?.message ?? phrase('The fabric is being read.'))}
        </p>
      )}
    </div>
  );
}

interface PartProps {
  doing: Doing;
  photo: PhotoAtWork;
  patch: Patch;
  problems: readonly Problem[];
  onProblems: (problems: readonly Problem[]) => void;
}

function Part({ doing, photo, patch, problems, onProblems }: PartProps) {
  const say = useSay();
  switch (doing) {
    case 'frame':
      return <FramePart photo={photo} patch={patch} />;
    case 'size':
      return <SizePart photo={photo} patch={patch} />;
    case 'light':
      return <LightPart photo={photo} patch={patch} problems={problems} onProblems={onProblems} />;
    case 'several':
      return (
        <div className="stack">
          <p className="quiet">
            {say(
              'For a shelf or a fan of folded fabrics: tap each one. Every tap lays a frame and adds a row to the new fabrics.',
            )}
          </p>
          <Complaint problems={problems} />
        </div>
      );
    default:
      return doing satisfies never;
  }
}

/** The square round a tap that is looked at as white: this share of the shorter side each way. */
const REACH = 0.015;

function spotAt({ opened: { width, height } }: PhotoAtWork, { x, y }: Point) {
  const reach = Math.max(4, REACH * Math.min(width, height));
  const inside = (at: number, side: number) => Math.max(reach, Math.min(side - reach, at));
  return { x: inside(x, width), y: inside(y, height), width: 2 * reach, height: 2 * reach, angle: 0 };
}
