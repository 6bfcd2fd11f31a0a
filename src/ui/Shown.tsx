// Shows a part whose code comes later. Code that is there already shows at once; until then the part's place is marked as busy;
// code that cannot be had is told in the part's place.
import { createElement, Suspense, use } from 'react';
import type { Later } from './later';
import { ErrorScreen } from './shell/ErrorScreen';

interface Props<Own extends object> {
  readonly part: Later<Own>;
  /** What the part itself is given. */
  readonly given: Own;
  /** Whether the part lies over the page, so that what is told of it does too. */
  readonly over?: boolean;
}

export function Shown<Own extends object>({ part, given, over = false }: Props<Own>) {
  return (
    <ErrorScreen over={over}>
      <Suspense fallback={<div hidden aria-busy="true" />}>
        <Fetched part={part} given={given} />
      </Suspense>
    </ErrorScreen>
  );
}

function Fetched<Own extends object>({ part, given }: Props<Own>) {
  return createElement(use(part.fetched()), given);
}
