// Notes how the wall is drawn, for the next visit (wallNote.ts): as the page goes away or another step is gone to, from what is on the
// screen. From the first change of the quilt until then nothing is noted.
import type { AppState, AppStore } from '../../../store/app';
import type { WindowNote } from '../../../store/firstQuilt';
import { noteDrawn, noteOpened } from '../../../store/storage/wallNote';
import { whenIdle } from '../../later';
import type { drawnIn } from './drawnWall';

/** A note of this window's quilt that also notes it as the one that the next visit opens. */
export function notingOpened(note: WindowNote, area: () => Storage): WindowNote {
  return {
    read: () => note.read(),
    write: (id) => {
      note.write(id);
      noteOpened(id, area);
    },
  };
}

/** Notes the wall of the open quilt from now on. */
export function noteWall(
  app: AppStore,
  area: () => Storage,
  page: Document,
  view: Pick<Window, 'addEventListener'>,
): void {
  let isNoted = false;
  /** Fetched while the page is idle: it is wanted last. */
  let drawn: typeof drawnIn | null = null;
  void whenIdle()
    .then(() => import('./drawnWall'))
    .then(
      (module) => {
        drawn = module.drawnIn;
      },
      () => {},
    );
  const note = (now: AppState) => {
    const wall = isNoted ? null : drawn?.(page, now);
    if (!wall) return;
    noteDrawn(now.project.id, wall, area);
    isNoted = true;
  };
  app.subscribe((now, before) => {
    if (now.project !== before.project) {
      isNoted = false;
      noteDrawn(now.project.id, null, area);
      // The page still shows the step before.
    } else if (now.step !== before.step) note(before);
  });
  const leave = () => note(app.getState());
  view.addEventListener('pagehide', leave);
  page.addEventListener('visibilitychange', () => {
    if (page.visibilityState === 'hidden') leave();
  });
}
