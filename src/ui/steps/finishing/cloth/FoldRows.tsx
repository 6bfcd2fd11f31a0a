// Rows of cloth, one line each until they are opened, one by one or all at once.
import { type ReactNode, useEffect, useRef, useState } from 'react';
import { Fractions } from '../../../fields/Fractions';
import { useSay } from '../../../words';

interface Props {
  /** What the rows come to, already in words. */
  sum: string;
  /** Whose rows they are, for the name of the button: of the cutting list, of the kits. */
  openAll: string;
  foldAll: string;
  children: ReactNode;
}

export function FoldRows({ sum, openAll, foldAll, children }: Props) {
  const say = useSay();
  const list = useRef<HTMLUListElement>(null);
  const [open, setOpen] = useState(false);
  useEffect(() => {
    const opened = () => setOpen(rowsOf(list.current).every((row) => row.open));
    const here = list.current;
    // The event of a row does not bubble; it is met on its way down.
    here?.addEventListener('toggle', opened, true);
    return () => here?.removeEventListener('toggle', opened, true);
  }, []);
  const turn = () => {
    for (const row of rowsOf(list.current)) row.open = !open;
  };
  return (
    <div>
      <div className="spread rows-sum">
        <span>
          <Fractions text={sum} />
        </span>
        <button
          type="button"
          className="button bare no-print"
          aria-label={say(open ? foldAll : openAll)}
          onClick={turn}
        >
          {say(open ? 'Fold all' : 'Open all')}
        </button>
      </div>
      <ul ref={list} className="cloths">
        {children}
      </ul>
    </div>
  );
}

/** Read from the page: a row is opened by its own line, by printing, or all at once. */
function rowsOf(list: HTMLElement | null): HTMLDetailsElement[] {
  return Array.from(list?.querySelectorAll<HTMLDetailsElement>(':scope > li > details') ?? []);
}
