// How far the reading of photographs is, with Stop; and the files that were refused.
import { Square } from 'lucide-react';
import type { PhotoProgress } from '../../../store/photo/sentPhoto';
import type { RefusedFile } from '../../../store/photo/takingFiles';
import { ProgressBar } from '../../fields/ProgressBar';
import { useSay } from '../../words';
import './photo.css';

interface Props {
  working: PhotoProgress | null;
  onStop: () => void;
}

/** Lies over the foot of the work, so that nothing moves under a hand when reading begins and ends. */
export function Working({ working, onStop }: Props) {
  const say = useSay();
  const doing = working ? say(working.doing) : '';
  return (
    <div className={working ? 'photo-working busy' : 'photo-working'}>
      <p role="status">{doing}</p>
      {working ? (
        <>
          <ProgressBar label={doing} share={working.share} />
          <button type="button" className="button" onClick={onStop}>
            <Square size={14} aria-hidden /> {say('Stop')}
          </button>
        </>
      ) : null}
    </div>
  );
}

export function RefusedPhotos({
  refused,
  className,
}: {
  refused: readonly RefusedFile[];
  className: string;
}) {
  const say = useSay();
  return (
    <div role="alert">
      {refused.length > 0 ? (
        <ul className={className}>
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
