// The shape of the grid as state. Undo and redo of a change that gave a column another width, or lines another length, turn the
// shape with it, so that no empty column or line is left.
import { useCallback, useEffect, useRef, useState } from 'react';
import { type GridShape, turnedShape } from '../../../../cutting/onHand/gridShape';
import type { Change } from '../../../../editing/apply';
import type { AppStore } from '../../../../store/app';

/** Changes the shape; `ran`: with the last change of the project, and back with it. */
export type SetShape = (next: (now: GridShape) => GridShape, ran?: boolean) => void;

export function useGridShape(store: AppStore, first: () => GridShape): [GridShape, SetShape] {
  const [shape, setShape] = useState(first);
  const now = useRef(shape);
  const turns = useRef(new WeakMap<Change, { readonly before: GridShape; readonly after: GridShape }>());
  const change = useCallback<SetShape>(
    (next, ran = false) => {
      const before = now.current;
      now.current = next(before);
      setShape(now.current);
      const last = store.getState().history.done.at(-1);
      if (ran && last) turns.current.set(last, { before, after: now.current });
    },
    [store],
  );
  useEffect(
    () =>
      store.subscribe(({ history }, { history: was }) => {
        const undone = was.done.at(-1);
        const redone = was.undone.at(-1);
        const back = undone && history.undone.at(-1) === undone ? turns.current.get(undone) : undefined;
        const again = redone && history.done.at(-1) === redone ? turns.current.get(redone) : undefined;
        if (back) change((shown) => turnedShape(shown, back.after, back.before));
        else if (again) change((shown) => turnedShape(shown, again.before, again.after));
      }),
    [store, change],
  );
  return [shape, change];
}
