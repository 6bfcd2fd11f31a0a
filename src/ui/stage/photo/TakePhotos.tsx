// The ways in for photographs of blocks and walls: camera, files, paste and drop.
import { Camera, Images } from 'lucide-react';
import { type DragEvent, type ReactNode, useEffect, useEffectEvent, useRef } from 'react';
import { useSay } from '../../words';
import { useScreen } from '../useScreen';

interface Props {
  /** What the buttons are called; the choice of files takes its words from it too. */
  choose: string;
  many: boolean;
  /** Whether it is the main thing to do. */
  first: boolean;
  onTake: (files: readonly File[]) => void;
}

export function TakePhotos({ choose, many, first, onTake }: Props) {
  const say = useSay();
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
        aria-label={say('Files of photographs')}
        onChange={(event) => taken(event.target)}
      />
    </>
  );
}

/** An area onto which photographs are dropped; a pasted picture is taken too while it is on show. */
export function PhotoDrop(props: {
  className: string;
  onTake: (files: readonly File[]) => void;
  children: ReactNode;
}) {
  const { className, onTake, children } = props;
  const pasted = useEffectEvent((event: ClipboardEvent) => {
    const files = [...(event.clipboardData?.files ?? [])];
    if (files.length === 0) return;
    event.preventDefault();
    onTake(files);
  });
  useEffect(() => {
    const paste = (event: ClipboardEvent) => pasted(event);
    document.addEventListener('paste', paste);
    return () => document.removeEventListener('paste', paste);
  }, []);
  const holdsFiles = (event: DragEvent) => event.dataTransfer.types.includes('Files');
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: files are dropped here; the buttons choose them without dragging
    <div
      className={className}
      onDragOver={(event) => {
        if (holdsFiles(event)) event.preventDefault();
      }}
      onDrop={(event) => {
        if (!holdsFiles(event)) return;
        event.preventDefault();
        onTake([...event.dataTransfer.files]);
      }}
    >
      {children}
    </div>
  );
}
