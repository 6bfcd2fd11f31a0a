import { describe, expect, it } from 'vitest';
import { createProject } from '../../src/model/create';
import { createApp } from '../../src/store/app';
import type { DraftOf } from '../../src/store/drafts';
import { keepPlace } from '../../src/store/keepPlace';

const half = {
  open: true,
  values: { fabric: null, kind: 'yardage' as const, depth: 18, stripLength: 42, count: 9 },
};

const begun: DraftOf<'beginning'> = {
  open: true,
  values: {
    way: 'roll',
    aside: null,
    fabrics: 8,
    strips: [{ width: 1.5, count: 0 }],
    length: 40,
    cloth: { kind: 'fat quarter', depth: 18, stripLength: 20, count: 1 },
    size: { width: 42, height: 56 },
    roll: { strips: 80, width: 2.5, fabrics: 20 },
  },
};

/** What the tests need of sessionStorage and the window of one tab. */
function tab() {
  const texts = new Map<string, string>();
  const area = {
    getItem: (name: string) => texts.get(name) ?? null,
    setItem: (name: string, text: string) => void texts.set(name, text),
  } as Storage;
  const visit = (id: string, from: () => Storage = () => area) => {
    const app = createApp(createProject(id, 'River stones'));
    const view = new EventTarget();
    keepPlace(app, from, view as unknown as Window);
    return { app, leave: () => view.dispatchEvent(new Event('pagehide')) };
  };
  return { texts, visit };
}

describe('a page that is loaded again in the same tab', () => {
  it('finds the same steps folded away as before', () => {
    const { visit } = tab();
    const before = visit('river');
    for (const step of ['wall', 'sets', 'blocks'] as const) before.app.getState().fold(step, true);
    before.app.getState().fold('sets', false);
    before.leave();
    const { folded, wallFull } = visit('river').app.getState();
    expect([folded, wallFull]).toEqual([['blocks', 'wall'], false]);
    expect(visit('lake').app.getState().folded).toEqual([]);
  });

  it('comes back to the step and to the forms filled in part', () => {
    const { visit } = tab();
    const before = visit('river');
    before.app.getState().goTo('fabrics');
    before.app.getState().lay({ part: 'kits' });
    before.app.getState().keepDraft('cloth', half);
    before.app.getState().keepDraft('beginning', begun);
    before.leave();
    const { step, laid, drafts } = visit('river').app.getState();
    expect([step, laid.part, drafts]).toEqual(['fabrics', 'kits', { beginning: begun, cloth: half }]);
  });

  it('begins as ever with another quilt', () => {
    const { visit } = tab();
    const before = visit('river');
    before.app.getState().goTo('fabrics');
    before.leave();
    expect(visit('lake').app.getState().step).toBe('wall');
  });

  it('begins as ever when the note cannot be read, or the browser refuses', () => {
    const { visit, texts } = tab();
    const before = visit('river');
    before.app.getState().goTo('blocks');
    before.leave();
    const [name] = [...texts.keys()];
    for (const text of [
      '',
      '{',
      '{"project":"river","step":"blocks"}',
      '{"project":"river","step":"x","drafts":{}}',
    ]) {
      texts.set(name!, text);
      expect(visit('river').app.getState().step).toBe('wall');
    }
    const refused = visit('river', () => {
      throw new DOMException('denied', 'SecurityError');
    });
    expect(refused.leave).not.toThrow();
    expect(refused.app.getState().step).toBe('wall');
  });
});
