// The steps in the browser's history.
import { expect, test } from 'vitest';
import { createProject } from '../../src/model/create';
import { createApp } from '../../src/store/app';
import { keepSteps } from '../../src/store/keepSteps';

/** A history as the HTML standard has it (7.4 Session history): entries, a place among them, popstate on going back. */
function browser() {
  const entries: unknown[] = [null];
  let at = 0;
  let hear: (event: PopStateEvent) => void = () => {};
  const go = (by: number) => {
    at += by;
    hear({ state: entries[at] } as PopStateEvent);
  };
  return {
    entries,
    past: {
      back: () => go(-1),
      pushState: (state: unknown) => {
        at += 1;
        entries.splice(at, entries.length, state);
      },
      replaceState: (state: unknown) => {
        entries[at] = state;
      },
    },
    view: {
      addEventListener: (_: string, listener: unknown) => {
        hear = listener as typeof hear;
      },
    } as Pick<Window, 'addEventListener'>,
    go,
  };
}

test('Back goes to the step before and takes what was typed; going there makes no new entry', () => {
  const app = createApp(createProject('one', 'Quilt'));
  const { entries, past, view, go } = browser();
  let left = 0;
  keepSteps(app, past, view, () => {
    left += 1;
  });
  app.getState().goTo('fabrics');
  app.getState().goTo('fabrics');
  app.getState().goTo('sets');
  expect(entries).toEqual([{ step: 'wall' }, { step: 'fabrics' }, { step: 'sets' }]);
  go(-1);
  expect(app.getState().step).toBe('fabrics');
  go(-1);
  expect(app.getState().step).toBe('wall');
  go(1);
  expect(app.getState().step).toBe('fabrics');
  expect(left).toBe(3);
  expect(entries).toHaveLength(3);
  app.getState().goTo('finishing');
  expect(entries).toEqual([{ step: 'wall' }, { step: 'fabrics' }, { step: 'finishing' }]);
});

test('Back makes the wall small again and stays at the step; so does the button, and the entry is used up', () => {
  const app = createApp(createProject('one', 'Quilt'));
  const { entries, past, view, go } = browser();
  keepSteps(app, past, view, () => {});
  app.getState().goTo('sets');
  app.getState().fillScreen(true);
  expect(entries).toEqual([{ step: 'wall' }, { step: 'sets' }, { step: 'sets', full: true }]);
  go(-1);
  expect([app.getState().step, app.getState().wallFull]).toEqual(['sets', false]);
  go(1);
  expect(app.getState().wallFull).toBe(true);
  app.getState().fillScreen(false);
  expect([app.getState().step, app.getState().wallFull]).toEqual(['sets', false]);
  go(-1);
  expect(app.getState().step).toBe('wall');
  app.getState().fillScreen(true);
  app.getState().goTo('finishing');
  expect(entries).toEqual([{ step: 'wall' }, { step: 'finishing' }]);
});

test('an entry that is no step of the tool is passed over', () => {
  const app = createApp(createProject('one', 'Quilt'));
  const { past, view, go } = browser();
  past.pushState({ step: 'elsewhere' });
  keepSteps(app, past, view, () => {});
  app.getState().goTo('sets');
  go(-2);
  expect(app.getState().step).toBe('sets');
});

test('Back closes what lies over the page and stays at the step; the next Back goes on', () => {
  const app = createApp(createProject('one', 'Quilt'));
  const { entries, past, view, go } = browser();
  let over = 1;
  const closes = () => {
    over -= 1;
    return over >= 0;
  };
  keepSteps(app, past, view, () => {}, closes);
  app.getState().goTo('fabrics');
  go(-1);
  expect(app.getState().step).toBe('fabrics');
  expect(entries).toEqual([{ step: 'wall' }, { step: 'fabrics' }]);
  go(-1);
  expect(app.getState().step).toBe('wall');
});
