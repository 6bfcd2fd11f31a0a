// Each step that is gone to is an entry in the browser's history, so that Back goes a step back; so is the wall that fills the screen,
// so that Back makes it small. Nothing is loaded anew for it; forms and dialogs are no entries: while one lies over the page, Back
// closes it instead.
import * as v from 'valibot';
import { type AppStore, STEPS } from './app';

const entrySchema = v.object({ step: v.picklist(STEPS), full: v.exactOptional(v.boolean()) });

/**
 * Notes every step in `past`, and goes to the step of an entry that comes back. `closes` is asked before: where it has closed something
 * that lay over the page, the step stays. `leave` is called before the step goes, to take what was typed.
 */
export function keepSteps(
  app: AppStore,
  past: Pick<History, 'pushState' | 'replaceState' | 'back'>,
  view: Pick<Window, 'addEventListener'>,
  leave: () => void,
  closes: () => boolean = () => false,
): void {
  let back = false;
  /** Whether an entry is on its way back whose full screen was left by hand. */
  let usedUp = false;
  past.replaceState({ step: app.getState().step }, '');
  app.subscribe(({ step, wallFull }, before) => {
    if (back) return;
    // From the full screen a step takes the place of its entry.
    if (step !== before.step) past[before.wallFull ? 'replaceState' : 'pushState']({ step }, '');
    else if (wallFull && !before.wallFull) past.pushState({ step, full: true }, '');
    else if (!wallFull && before.wallFull) {
      usedUp = true;
      past.back();
    }
  });
  view.addEventListener('popstate', (event) => {
    const entry = v.safeParse(entrySchema, event.state);
    if (!entry.success) return;
    if (usedUp) {
      usedUp = false;
      return;
    }
    const { step, wallFull } = app.getState();
    const full = entry.output.full ?? false;
    if (full === wallFull && closes()) {
      past.pushState(full ? { step, full } : { step }, '');
      return;
    }
    leave();
    back = true;
    if (entry.output.step !== step) app.getState().goTo(entry.output.step);
    app.getState().fillScreen(full);
    back = false;
  });
}
