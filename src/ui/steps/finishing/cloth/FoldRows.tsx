// A list of folded rows of cloth, each one line until it is opened, one by one or all at once.
import { type ReactNode, useEffect, useRef, useState } from 'react';
import { Fractions } from '../../../fields/Fractions';
import { useSay } from '../../../words';

interface Props {
  /** The sum of the rows in words. */
  sum: string;
  /** Name of the button that opens all rows; it names the list. */
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
    // The toggle event does not bubble, so it is captured.
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

/** The rows on the page; the page knows which are open, because a row is also opened by its own line and for printing. */
function rowsOf(list: HTMLElement | null): HTMLDetailsElement[] {
  return Array.from(list?.querySelectorAll<HTMLDetailsElement>(':scope > li > details') ?? []);
}
