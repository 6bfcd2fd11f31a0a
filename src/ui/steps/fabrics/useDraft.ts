// The state of a form that adds something. Its values stay while the person is at another step or closes the form, until it is used.
import { useState } from 'react';
import type { DraftOf, Drafts } from '../../../store/drafts';
import { useApp, useAppStore } from '../../app';

/** `first`: the first values of the form. */
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
    /** Whether the form was just opened, so that the focus goes into it; false on a return to the step. */
    takesFocus: pressed,
    change: (to: Partial<DraftOf<K>['values']>) =>
      keep({ values: { ...now().values, ...to } } as Partial<DraftOf<K>>),
    setOpen: (open: boolean) => {
      setPressed(open);
      keep({ open } as Partial<DraftOf<K>>);
    },
  };
}
