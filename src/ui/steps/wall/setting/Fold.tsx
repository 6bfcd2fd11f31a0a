// One part of the setting, folded to a line with its present state; it opens in place.
import type { ReactNode } from 'react';
import { Fractions } from '../../../fields/Fractions';
import { useSay } from '../../../words';

interface Props {
  title: string;
  /** The present state in words. */
  now: string;
  children: ReactNode;
}

export function Fold({ title, now, children }: Props) {
  const say = useSay();
  return (
    <details className="fold">
      <summary>
        <span className="name">{say(title)}</span>
        <span className="quiet now">
          <Fractions text={now} />
        </span>
      </summary>
      <div className="stack">{children}</div>
    </details>
  );
}
