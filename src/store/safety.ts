// What the page does for the safety of the work besides saving it: asks before it closes with work at risk, hears what other windows did when
// it is looked at again, and asks the browser to keep what is saved.
import type { Session } from './session';

type View = Pick<Window, 'addEventListener' | 'removeEventListener'>;

/** Asks before the page is closed while work is at risk. Without such work it does not listen, so that the browser may keep the page whole. */
export function askOnLeaving(session: Session, view: View): void {
  let asks = false;
  const ask = (event: Event) => event.preventDefault();
  const look = () => {
    const risk = session.isAtRisk();
    if (risk === asks) return;
    asks = risk;
    if (risk) view.addEventListener('beforeunload', ask);
    else view.removeEventListener('beforeunload', ask);
  };
  session.app.subscribe(look);
  session.state.subscribe(look);
  look();
}

/** Reads the saved quilts again when the page is looked at again: no news comes to a page that sleeps, or where there are no channels. */
export function hearOnReturn(
  session: Session,
  page: Pick<Document, 'addEventListener' | 'visibilityState'>,
): void {
  page.addEventListener('visibilitychange', () => {
    if (page.visibilityState === 'visible') void session.refresh();
  });
}

/**
 * Asks the browser to keep what is saved, after the first change that is saved in this visit: then there is something to keep, and the person
 * knows what a question of the browser is about. Asks again for the room after every tenth saving.
 */
export function askToKeep(session: Session, browser: Navigator, isInstalled: () => boolean): void {
  let savings = 0;
  session.state.subscribe(({ saving }, before) => {
    if (!session.keeps || saving !== 'saved' || before.saving === 'saved') return;
    savings += 1;
    if (savings % 10 === 1) void look();
  });
  const look = async () => {
    const { askToLast, isRemovedAfterAWeek } = await import('./storage/lasting');
    const { lasts, room } = await askToLast(browser.storage);
    const removed = isRemovedAfterAWeek(browser, isInstalled(), lasts);
    session.state.setState({ lasting: removed || room !== null ? { room, removed } : null });
  };
}
