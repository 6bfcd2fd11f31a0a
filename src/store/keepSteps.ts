// Each step that is gone to is an entry in the browser's history, so that Back goes a step back. Nothing is loaded anew for it; forms
// and dialogs are no entries: while one lies over the page, Back closes it instead.
import * as v from 'valibot';
import { type AppStore, STEPS } from './app';

const entrySchema = v.object({ step: v.picklist(STEPS) });

/**
 * Notes every step in `past`, and goes to the step of an entry that comes back. `closes` is asked before: where it has closed something
 * that lay over the page, the step stays. `leave` is called before the step goes, to take what was typed.
 */
export function keepSteps(
  app: AppStore,
  past: Pick<History, 'pushState' | 'replaceState'>,
  view: Pick<Window, 'addEventListener'>,
  leave: () => void,
  closes: () => boolean = () => false,
): void {
  let back = false;
  past.replaceState({ step: app.getState().step }, '');
  app.subscribe(({ step }, before) => {
    if (step !== before.step && !back) past.pushState({ step }, '');
  });
  view.addEventListener('popstate', (event) => {
    const entry = v.safeParse(entrySchema, event.state);
    if (!entry.success) return;
    if (closes()) {
      past.pushState({ step: app.getState().step }, '');
      return;
    }
    leave();
    back = true;
    app.getState().goTo(entry.output.step);
    back = false;
  });
}
