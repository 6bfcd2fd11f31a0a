// Starts the app: opens the storage, the project last open or an example, and puts the room on the page.
import '@fontsource-variable/figtree/wght.css';
import '@fontsource/young-serif/400.css';
import './theme.css';
import './shell/shell.css';
import './wall/wall.css';
import './steps/steps.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { startSession } from '../store/session';
import { openStorage } from '../store/storageIndexedDb';
import { App } from './App';
import { AppContext } from './app';
import { DEMOS } from './demos';
import { SessionContext } from './session';
import { ErrorScreen } from './shell/ErrorScreen';

const root = document.getElementById('root');
if (!root) throw new Error('main: the page has no #root');
const { storage, problem } = await openStorage();
const session = await startSession(storage, problem, DEMOS, () => crypto.randomUUID());
globalThis.addEventListener('pagehide', () => void session.flush());
document.addEventListener('visibilitychange', () => {
  if (document.visibilityState === 'hidden') void session.flush();
});
createRoot(root).render(
  <StrictMode>
    <SessionContext value={session}>
      <AppContext value={session.app}>
        <ErrorScreen>
          <App />
        </ErrorScreen>
      </AppContext>
    </SessionContext>
  </StrictMode>,
);
