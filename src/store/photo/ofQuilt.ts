// Work on photographs belongs to the open quilt.
import type { AppStore } from '../app';

/** Gives each app its own work, made when it is first asked for; it is cleared when another quilt is opened. */
export function ofQuilt<Work extends { clear(): void }>(
  make: (app: AppStore) => Work,
): (app: AppStore) => Work {
  const works = new WeakMap<AppStore, Work>();
  return (app) => {
    const known = works.get(app);
    if (known) return known;
    const work = make(app);
    app.subscribe((now, before) => {
      if (now.project.id !== before.project.id) work.clear();
    });
    works.set(app, work);
    return work;
  };
}
