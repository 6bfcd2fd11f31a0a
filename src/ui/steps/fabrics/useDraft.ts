// A form that adds something: what it holds stays while the person is at another step, or closes it, until it is used.
import { useState } from 'react';
import type { DraftOf, Drafts } from '../../../store/drafts';
import { useApp, useAppStore } from '../../app';

/** `first`: what the form holds when nothing is in it yet. */
export function useDraft<K extends keyof Drafts>(form: K, first: () => DraftOf<K>['values']) {
  const store = useAppStore();
  const kept = useApp((app) => app.drafts[form]) as DraftOf<K> | undefined;
  const [pressed, setPressed] = useState(false);
  const now = (): DraftOf<K> =>
    (store.getState().drafts[form] ?? { open: false, values: first() }) as DraftOf<K>;
  const keep = (to: Partial<DraftOf<K>>) => store.getState().keepDraft(form, { ...now(), ...to });
  return {
    open: kept?.open ?? false,
    values: (kept?.values ?? first()) as DraftOf<K>['values'],
    /** Opened just now, so that the focus goes into it; not when the step is come back to. */
    takesFocus: pressed,
    change: (to: Partial<DraftOf<K>['values']>) =>
      keep({ values: { ...now().values, ...to } } as Partial<DraftOf<K>>),
    setOpen: (open: boolean) => {
      setPressed(open);
      keep({ open } as Partial<DraftOf<K>>);
    },
  };
}
