// Starts the app: opens the storage, then the project last open or an example, and renders the screen.
import '@fontsource-variable/figtree/wght.css';
import '@fontsource/young-serif/400.css';
import './theme.css';
import './shell/shell.css';
import './wall/wall.css';
import './wall/early/early.css';
import './steps/steps.css';
import './shell/wallRoom.css';
import './shell/touch.css';
import { StrictMode, startTransition } from 'react';
import { createRoot } from 'react-dom/client';
import { phrase } from '../model/phrase';
import { createWindowNote } from '../store/firstQuilt';
import { keepPlace } from '../store/keepPlace';
import { keepSteps } from '../store/keepSteps';
import { keepOffline } from '../store/offline';
import { askOnLeaving, askToKeep, hearOnReturn } from '../store/safety';
import { startSession } from '../store/session';
import { saveOnLeaving } from '../store/storage/autosave';
import { openStorage } from '../store/storage/indexedDb';
import { tellChanges } from '../store/tellChanges';
import { createUnitNote, usualUnit, watchUnit } from '../store/unitOfPerson';
import { App } from './App';
import { AppContext } from './app';
import { closeOver } from './closeOver';
import { DEMOS } from './demos';
import { leaveField, takeTypedOnLeaving } from './fields/leavingPage';
import { keepFocus } from './keepFocus';
import { fetchWhileIdle, whenIdle } from './later';
import { SessionContext } from './session';
import { ErrorScreen } from './shell/ErrorScreen';
import { letStrayFilesGo } from './strayFiles';
import { setTrustedTypes } from './trustedTypes';
import { heedFolds } from './useEscape';
import { noteWall, notingOpened } from './wall/early/noteWall';
import { Language } from './words';
import './shell/flow.css';

/** Ids that never repeat. randomUUID is missing where the page came over plain http from another machine. */
function freshId(): string {
  const words = crypto.getRandomValues(new Uint32Array(4));
  return Array.from(words, (word) => word.toString(36)).join('-');
}

setTrustedTypes(window);
const root = document.getElementById('root');
if (!root) throw new Error('main: the page has no #root');
const { storage, problem, left } = await openStorage();
const session = await startSession(
  storage,
  problem,
  DEMOS,
  freshId,
  { note: createUnitNote(() => localStorage), usual: usualUnit(navigator.language) },
  {
    ofWindow: notingOpened(
      createWindowNote(() => sessionStorage),
      () => localStorage,
    ),
    left,
  },
);
watchUnit(window, (unit) => session.app.getState().measureIn(unit));
keepPlace(session.app, () => sessionStorage, window);
// Where nothing is kept, the next visit opens another quilt.
if (session.keeps) noteWall(session.app, () => localStorage, document, window);
keepSteps(
  session.app,
  history,
  window,
  () => void leaveField(document),
  () => closeOver(document, session.app),
);
keepFocus(document);
letStrayFilesGo(document);
heedFolds(document);
tellChanges(session.app, session.analysing);
takeTypedOnLeaving(document, window);
saveOnLeaving(session, document, window);
askOnLeaving(session, window);
askToKeep(session, navigator, () => matchMedia('(display-mode: standalone)').matches);
hearOnReturn(session, document);
// In development nothing is kept offline, so that the page always runs the current code.
if (import.meta.env.PROD)
  keepOffline(() =>
    session.app
      .getState()
      .announce(phrase('A newer version is ready. It opens the next time you start Wedgewall.')),
  );
// As a transition, so that drawing a large quilt leaves the page its turns.
startTransition(() =>
  createRoot(root).render(
    <StrictMode>
      <SessionContext value={session}>
        <AppContext value={session.app}>
          {/* English sentences are their own translation; another language needs a look-up here. */}
          <Language value={(say) => say}>
            <ErrorScreen>
              <App />
            </ErrorScreen>
          </Language>
        </AppContext>
      </SessionContext>
    </StrictMode>,
  ),
);
void fetchWhileIdle(whenIdle);
