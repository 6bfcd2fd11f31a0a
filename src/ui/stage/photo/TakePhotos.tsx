// The buttons that choose photographs: camera and files. What is dropped or pasted is taken by usePhotoDrop.ts of the folder above.
import { Camera, Images } from 'lucide-react';
import { useRef } from 'react';
import { useSay } from '../../words';
import { useOpened } from '../useOpened';
import { useScreen } from '../useScreen';

interface Props {
  /** What the button that chooses files is called. */
  choose: string;
  /** What the field of files is called. */
  files?: string;
  many: boolean;
  /** Whether it is the main thing to do. */
  first: boolean;
  onTake: (files: readonly File[]) => void;
}

export function TakePhotos({ choose, files: label = 'Files of photographs', many, first, onTake }: Props) {
  const say = useSay();
  const button = useOpened<HTMLButtonElement>();
  const camera = useRef<HTMLInputElement>(null);
  const files = useRef<HTMLInputElement>(null);
  const touch = useScreen('(pointer: coarse)');
  const taken = (input: HTMLInputElement) => {
    const chosen = [...(input.files ?? [])];
    input.value = '';
    if (chosen.length > 0) onTake(chosen);
  };
  return (
    <>
      {touch ? (
        <button type="button" className="button" onClick={() => camera.current?.click()}>
          <Camera size={16} aria-hidden /> {say('Take a photograph')}
        </button>
      ) : null}
      <button
        ref={button}
        type="button"
        className={first ? 'button solid' : 'button'}
        onClick={() => files.current?.click()}
      >
        <Images size={16} aria-hidden /> {say(choose)}
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
        multiple={many}
        hidden
        aria-label={say(label)}
        onChange={(event) => taken(event.target)}
      />
    </>
  );
}
