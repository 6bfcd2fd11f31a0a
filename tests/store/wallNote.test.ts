// What is shown before the page's own wall: never the wall of another quilt, nor one that is not as it is now, nor the example to a person
// who has been here before.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createLeavingNotes } from '../../src/store/storage/leaving';
import { type DrawnWall, earlyWall, noteDrawn, noteOpened } from '../../src/store/storage/wallNote';
import { demo } from '../demo';

const WINDOW = 'wedgewall-window';
const PLACE = 'wedgewall-place';

/** A storage with room for so many characters. */
function area(room = Number.POSITIVE_INFINITY): Storage {
  const items = new Map<string, string>();
  const used = () => [...items].reduce((sum, [key, value]) => sum + key.length + value.length, 0);
  return {
    get length() {
      return items.size;
    },
    key: (at) => [...items.keys()][at] ?? null,
    getItem: (key) => items.get(key) ?? null,
    setItem: (key, value) => {
      const before = items.get(key)?.length ?? -key.length;
      if (used() - before + value.length > room) throw new Error('QuotaExceededError');
      items.set(key, value);
    },
    removeItem: (key) => void items.delete(key),
    clear: () => items.clear(),
  };
}

const wallOf = (markup: string): DrawnWall => ({ width: 60, height: 80, flannel: '#999', ink: '#111', table: 0, markup }); // biome-ignore format: short

/** What a window shows early. */
const shown = (local: Storage, window = area()) => earlyWall({ local: () => local, window: () => window });

function windowAt(id: string | null, place?: object): Storage {
  const window = area();
  if (id !== null) window.setItem(WINDOW, id);
  if (place) window.setItem(PLACE, JSON.stringify(place));
  return window;
}

describe('The wall before the page', () => {
  it('is the example for a newcomer alone', () => {
    expect(shown(area())).toBe('example');
    const known = area();
    known.setItem('wedgewall-unit', 'in');
    expect(shown(known)).toBeNull();
    expect(shown(area(), windowAt('quilt'))).toBeNull();
    const others = area();
    others.setItem('another-page', 'x');
    expect(shown(others)).toBe('example');
  });

  it('is unknown where the browser refuses its storage', () => {
    const refuse = () => {
      throw new Error('SecurityError');
    };
    expect(earlyWall({ local: refuse, window: () => area() })).toBeNull();
    expect(earlyWall({ local: () => area(), window: refuse })).toBeNull();
  });

  it('is the last drawing of the quilt that the window opens, at its wall', () => {
    const local = area();
    noteOpened('one', () => local);
    noteDrawn('one', wallOf('<g/>'), () => local);
    expect(shown(local)).toEqual(wallOf('<g/>'));
    expect(shown(local, windowAt('one'))).toEqual(wallOf('<g/>'));
    expect(shown(local, windowAt('two'))).toBeNull();
    for (const place of [{ step: 'blocks' }, { step: 'wall', folded: ['wall'] }, { step: 'wall', movesOpen: true }])
      expect(shown(local, windowAt('one', { project: 'one', ...place }))).toBeNull();
    expect(shown(local, windowAt('one', { project: 'one', step: 'wall', folded: ['sets'] }))).not.toBeNull();
    expect(shown(local, windowAt('one', { project: 'other', step: 'blocks' }))).not.toBeNull();
  }); // biome-ignore format: cases

  it('is nothing where the note cannot be read', () => {
    for (const noted of ['', '{', '7', '{"id":3}', '{"id":"a","wall":{}}', '{"id":"a","wall":{"markup":"","width":-1}}']) {
      const local = area();
      local.setItem('wedgewall-wall', noted);
      expect(shown(local)).toBeNull();
    }
  }); // biome-ignore format: cases

  it('is never older than the quilt, nor of another than the one last opened, whatever windows do', () => {
    const act = fc.record({
      kind: fc.constantFrom('open', 'change', 'draw'),
      quilt: fc.constantFrom('one', 'two', 'three'),
    });
    fc.assert(
      fc.property(fc.array(act, { maxLength: 30 }), fc.constantFrom(150, 400, 1e6), (acts, room) => {
        const local = area(room);
        const states = new Map<string, number>();
        let last: string | null = null;
        for (const { kind, quilt } of acts) {
          if (kind === 'open') {
            noteOpened(quilt, () => local);
            last = quilt;
          } else if (kind === 'change') {
            states.set(quilt, (states.get(quilt) ?? 0) + 1);
            noteDrawn(quilt, null, () => local);
          } else {
            const figure = `${quilt} ${states.get(quilt) ?? 0} `.padEnd(((states.get(quilt) ?? 0) % 3) * 120);
            noteDrawn(quilt, wallOf(figure), () => local);
          }
          const early = shown(local);
          if (early === 'example') expect(last === null || room === 150).toBe(true);
          else if (early) expect(early.markup).toMatch(new RegExp(`^${last} ${states.get(last!) ?? 0} `));
        }
      }),
      { seed: 41, numRuns: 400 },
    );
  });

  it('is gone with its quilt', () => {
    const local = area();
    noteOpened('one', () => local);
    noteDrawn('one', wallOf('<g/>'), () => local);
    const notes = createLeavingNotes(() => local, 'page');
    notes.removed('two');
    expect(shown(local)).not.toBeNull();
    notes.removed('one');
    expect(shown(local)).toBeNull();
  });

  it('gives its room back to work that is left unsaved', () => {
    const project = demo('harbour-reading-corner');
    const text = JSON.stringify(project).length;
    const local = area(text + 2000);
    noteOpened(project.id, () => local);
    noteDrawn(project.id, wallOf('x'.repeat(1800)), () => local);
    expect(shown(local)).not.toBeNull();
    expect(createLeavingNotes(() => local, 'page').leave(project, 3)).toBe(true);
    expect(shown(local)).toBeNull();
  });
});
