// How far the reading of photographs is, with Stop; and the files that were refused.
import { Square, X } from 'lucide-react';
import type { MouseEvent } from 'react';
import type { PhotoProgress } from '../../../store/photo/sentPhoto';
import type { RefusedFile } from '../../../store/photo/takingFiles';
import { Hint } from '../../fields/Hint';
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

interface Refused {
  refused: readonly RefusedFile[];
  className: string;
  onDismiss: (file: RefusedFile) => void;
}

export function RefusedPhotos({ refused, className, onDismiss }: Refused) {
  const say = useSay();
  return (
    <div role="alert">
      {refused.length > 0 ? (
        <ul className={className}>
          {refused.map((file, at) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: two files may have the same name
            <li key={at} className="complaint spread">
              <span>
                <bdi>{file.name}</bdi>: {say(file.problem.message)}
              </span>
              <Hint words={say('Close this line')}>
                <button
                  type="button"
                  className="button bare"
                  aria-label={say('Close this line: {name}', { name: file.name })}
                  onClick={(event) => {
                    focusBeside(event);
                    onDismiss(file);
                  }}
                >
                  <X size={16} aria-hidden />
                </button>
              </Hint>
            </li>
          ))}
        </ul>
      ) : null}
    </div>
  );
}

/** The last line goes with its button: the focus goes to the line before it, or to the first button of the stage. */
function focusBeside({ currentTarget }: MouseEvent<HTMLButtonElement>): void {
  const line = currentTarget.closest('li')!;
  if (line.nextElementSibling) return;
  const beside = line.previousElementSibling ?? line.closest('.photo-stage, .pictures-stage');
  beside?.querySelector('button')?.focus();
}
