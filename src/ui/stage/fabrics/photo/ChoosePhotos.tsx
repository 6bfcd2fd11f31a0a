// The ways in: camera, files, paste, drop; and which files were refused, each with its sentence.
import { Camera, Images } from 'lucide-react';
import { useEffect, useRef } from 'react';
import type { RefusedFile } from '../../../../store/photo/sitting';
import { useSay } from '../../../words';
import { useScreen } from '../../useScreen';
import { useTakePhotos } from './useTakePhotos';

export function ChoosePhotos({ first }: { first: boolean }) {
  const say = useSay();
  const take = useTakePhotos();
  const camera = useRef<HTMLInputElement>(null);
  const files = useRef<HTMLInputElement>(null);
  const choose = useRef<HTMLButtonElement>(null);
  const touch = useScreen('(pointer: coarse)');
  useEffect(() => {
    if (first) choose.current?.focus();
  }, [first]);
  const taken = (input: HTMLInputElement) => {
    const chosen = [...(input.files ?? [])];
    input.value = '';
    take(chosen);
  };
  return (
    <div className="row">
      {touch ? (
        <button type="button" className="button" onClick={() => camera.current?.click()}>
          <Camera size={16} aria-hidden /> {say('Take a photograph')}
        </button>
      ) : null}
      <button
        ref={choose}
        type="button"
        className={first ? 'button solid' : 'button'}
        onClick={() => files.current?.click()}
      >
        <Images size={16} aria-hidden /> {say(first ? 'Choose photographs' : 'More photographs')}
      </button>
      <input
        ref={camera}
        type="file"
        accept="image/*"
        capture="environment"
        hidden
        aria-label={say('Photograph from the camera')}
        onChange={(event) => taken(event.target)}
      />
      <input
        ref={files}
        type="file"
        accept="image/*,.heic,.heif"
        multiple
        hidden
        aria-label={say('Photographs of fabrics')}
        onChange={(event) => taken(event.target)}
      />
    </div>
  );
}

export function RefusedFiles({ refused }: { refused: readonly RefusedFile[] }) {
  const say = useSay();
  return (
    <div role="alert">
      {refused.length > 0 ? (
        <ul className="photo-refused">
          {refused.map(({ name, problem }, at) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: two files may have the same name
            <li key={at} className="complaint">
              <bdi>{name}</bdi>: {say(problem.message)}
            </li>
          ))}
        </ul>
      ) : null}
    </div>
  );
}
