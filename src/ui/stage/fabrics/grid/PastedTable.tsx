// A pasted or opened table before it is entered: how many strips, which fabrics are new, how many numbers it overwrites; or why it
// is refused.
import { useEffect, useRef } from 'react';
import { counted } from '../../../../model/phrase';
import { Complaint } from '../../../fields/Complaint';
import { useEscape } from '../../../useEscape';
import { useSay } from '../../../words';
import type { usePaste } from './usePaste';

interface Props {
  paste: ReturnType<typeof usePaste>;
  /** Called once the table is entered or put aside. */
  onClose: () => void;
}

export function PastedTable({ paste, onClose }: Props) {
  const say = useSay();
  const { placed, problems } = paste;
  const close = (how: () => void) => {
    how();
    onClose();
  };
  const button = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    if (placed) button.current?.focus();
  }, [placed]);
  useEscape(() => close(() => paste.refuse([])), placed !== null);
  if (!placed) return <Complaint problems={problems} />;
  const { strips, fresh, overwritten } = placed;
  return (
    <section className="grid-pasted stack" aria-label={say('A table of strips')}>
      <p>{say(counted(strips, 'The table holds 1 strip.', 'The table holds {count} strips.'))}</p>
      {fresh.length > 0 ? (
        <div>
          <p>
            {say(
              counted(
                fresh.length,
                '1 fabric is new. It is added with a colour that you can change:',
                '{count} fabrics are new. They are added with colours that you can change:',
              ),
            )}
          </p>
          <ul className="grid-fresh">
            {fresh.map((name) => (
              <li key={name}>
                <bdi>{name}</bdi>
              </li>
            ))}
          </ul>
        </div>
      ) : null}
      {overwritten > 0 ? (
        <p>
          {say(
            counted(
              overwritten,
              '1 number in the grid is replaced by another.',
              '{count} numbers in the grid are replaced by others.',
            ),
          )}
        </p>
      ) : null}
      <div className="row">
        <button
          ref={button}
          data-once
          type="button"
          className="button solid"
          onClick={() => close(paste.accept)}
        >
          {say(counted(strips, 'Enter 1 strip', 'Enter {count} strips'))}
        </button>
        <button type="button" className="button" onClick={() => close(() => paste.refuse([]))}>
          {say('Cancel')}
        </button>
      </div>
    </section>
  );
}
