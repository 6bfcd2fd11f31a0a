// How far the reading of photographs is, with Stop; and the files that were refused.
import { Square } from 'lucide-react';
import type { Problem } from '../../../model/result';
import type { PhotoProgress } from '../../../store/photo/sentPhoto';
import { ProgressBar } from '../../fields/ProgressBar';
import { useSay } from '../../words';

export function Working({ working, onStop }: { working: PhotoProgress | null; onStop: () => void }) {
  const say = useSay();
  const doing = working ? say(working.doing) : '';
  return (
    <div className={working ? 'pictures-working sheet-of-paper' : 'pictures-working'}>
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

export function RefusedPhotos(props: {
  refused: readonly { readonly name: string; readonly problem: Problem }[];
}) {
  const say = useSay();
  return (
    <div role="alert">
      {props.refused.length > 0 ? (
        <ul className="sheet-of-paper">
          {props.refused.map(({ name, problem }, at) => (
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
