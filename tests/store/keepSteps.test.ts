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
  return {
    entries,
    past: {
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
    go: (by: number) => {
      at += by;
      hear({ state: entries[at] } as PopStateEvent);
    },
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
