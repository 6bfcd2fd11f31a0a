// The unit is the person's: what is shown in it is no change of the quilt, of its undo or of its file.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { apply } from '../../src/editing/apply';
import { changeBacking, changeBuying, priceFabric } from '../../src/editing/commands/buying';
import { addColourway } from '../../src/editing/commands/colourways';
import { changeCorners, changePreferences, renameProject } from '../../src/editing/commands/setting';
import { openProject } from '../../src/editing/openProject';
import { sellingUnit } from '../../src/model/buying';
import { createProject } from '../../src/model/create';
import { USUAL } from '../../src/model/lengths';
import type { Project } from '../../src/model/project';
import { writeProject } from '../../src/model/reading/read';
import type { LengthUnit } from '../../src/model/units';
import { createApp, documentOf } from '../../src/store/app';
import { startSession } from '../../src/store/session';
import { createMemoryShelf } from '../../src/store/storage/memory';
import { createStorage } from '../../src/store/storage/storage';
import { createUnitNote, usualUnit, watchUnit } from '../../src/store/unitOfPerson';
import { demo } from '../demo';

const PROJECT = demo('harbour-reading-corner');

describe('the usual unit of a language', () => {
  it.each<[language: string, unit: LengthUnit]>([
    ['en-US', 'in'],
    ['en', 'in'],
    ['es-US', 'in'],
    ['es-PR', 'in'],
    ['en-GU', 'in'],
    ['en-CA', 'in'],
    ['fr-CA', 'in'],
    ['en-GB', 'cm'],
    ['en-AU', 'cm'],
    ['de', 'cm'],
    ['de-CH', 'cm'],
    ['ja', 'cm'],
    ['es', 'cm'],
    ['', 'cm'],
    ['no language', 'cm'],
  ])('%s: %s', (language, unit) => {
    expect(usualUnit(language)).toBe(unit);
  });
});

/** What the tests need of localStorage. */
function notes(texts = new Map<string, string>()) {
  const area = {
    getItem: (name: string) => texts.get(name) ?? null,
    setItem: (name: string, text: string) => void texts.set(name, text),
  } as Storage;
  return { texts, note: createUnitNote(() => area) };
}

describe('the unit kept in this browser', () => {
  it('is read as it was written, and not where it is none', () => {
    const { texts, note } = notes();
    expect(note.read()).toBeNull();
    for (const unit of ['cm', 'in'] as const) {
      note.write(unit);
      expect(note.read()).toBe(unit);
    }
    for (const key of texts.keys()) texts.set(key, 'ell');
    expect(note.read()).toBeNull();
  });

  it('is done without where the browser keeps nothing', () => {
    const note = createUnitNote(() => {
      throw new Error('refused');
    });
    note.write('cm');
    expect(note.read()).toBeNull();
  });

  it('is heard of when another tab chooses, and nothing else is', () => {
    const { texts, note } = notes();
    note.write('cm');
    const [key] = texts.keys();
    const view = new EventTarget();
    const heard: LengthUnit[] = [];
    watchUnit(view as unknown as Window, (unit) => heard.push(unit));
    const tell = (about: object) => view.dispatchEvent(Object.assign(new Event('storage'), about));
    tell({ key, newValue: 'in' });
    tell({ key, newValue: 'ell' });
    tell({ key: 'another', newValue: 'cm' });
    tell({ key, newValue: 'cm' });
    expect(heard).toEqual(['in', 'cm']);
  });
});

describe('a quilt drawn in another unit', () => {
  it('is shown in the person’s, and saved as it was drawn', () => {
    const app = createApp(PROJECT, undefined, 'cm');
    expect(app.getState().project.preferences.unit).toBe('cm');
    expect(documentOf(app.getState())).toBe(PROJECT);
    expect(app.getState().history.done).toEqual([]);
  });

  it('keeps document and undo whatever is shown, changed, undone and done again', () => {
    const step = fc.constantFrom('in', 'cm', 'rename', 'corners', 'light', 'undo', 'redo');
    fc.assert(
      fc.property(
        fc.array(step, { maxLength: 25 }),
        fc.constantFrom<LengthUnit>('in', 'cm'),
        (steps, unit) => {
          const shown = createApp(PROJECT, undefined, unit);
          const plain = createApp(PROJECT);
          let named = 0;
          for (const one of steps) {
            named += 1;
            if (one === 'in' || one === 'cm') shown.getState().measureIn(one);
            else
              for (const app of [shown, plain]) {
                const { run, undo, redo } = app.getState();
                if (one === 'undo') undo();
                else if (one === 'redo') redo();
                else if (one === 'rename') run(renameProject(`Name ${named}`));
                else if (one === 'corners') run(changeCorners(PROJECT.fabrics[named % 4]!.id));
                else run(changePreferences({ wallLightness: 20 + named }));
              }
            expect(shown.getState().project.preferences.unit).toBe(shown.getState().unit);
            expect(writeProject(documentOf(shown.getState()))).toBe(writeProject(plain.getState().project));
            expect(shown.getState().history).toEqual(plain.getState().history);
          }
        },
      ),
    );
  });

  const PRICED = [
    ['of fabric', () => changeBuying({ price: 13 })],
    ['of the backing', () => changeBacking({ price: 9 })],
    ['of a fat quarter', () => changeBuying({ fatQuarterPrice: 3.5 })],
    ['of one fabric', (project: Project) => priceFabric(project, project.fabrics[0]!.id, 0)],
    [
      'of a fabric of a colourway',
      ({ fabrics: [fabric] }: Project) =>
        addColourway(
          'In red',
          [{ fabric: fabric!.id, by: 'made-up' }],
          [{ ...fabric!, id: 'made-up', price: 13 }],
        ),
    ],
  ] as const;

  it.each(PRICED)('keeps a price %s for the yard or the metre it was written for', (_of, price) => {
    for (const drawn of ['in', 'cm'] as const) {
      for (const unit of ['in', 'cm'] as const) {
        const app = createApp(createProject('p', 'New', drawn), undefined, unit);
        const sold = unit === 'in' ? 'yard' : 'metre';
        expect(sellingUnit(app.getState().project)).toBe(sold);
        app.getState().run(price(app.getState().project));
        for (const shown of ['cm', 'in'] as const) {
          app.getState().measureIn(shown);
          expect(sellingUnit(app.getState().project)).toBe(sold);
          expect(sellingUnit(documentOf(app.getState()))).toBe(sold);
        }
        // Without the price again it is sold by the unit on show.
        app.getState().undo();
        expect(sellingUnit(app.getState().project)).toBe('yard');
      }
    }
  });

  it.each(PRICED)(
    'that says a price %s and no more of how it is sold is read with what that price was for',
    (_of, price) => {
      for (const drawn of ['in', 'cm'] as const) {
        const project = createProject('p', 'New', drawn);
        const made = apply(project, price(project));
        if (!made.ok) throw new Error('a price is refused');
        const old = structuredClone(made.project);
        old.buying.soldBy = null;
        const read = openProject(writeProject(old));
        if (!read.ok) throw new Error('an older quilt is refused');
        for (const unit of ['in', 'cm'] as const) {
          const shown = createApp(read.value, undefined, unit).getState().project;
          expect(sellingUnit(shown)).toBe(drawn === 'in' ? 'yard' : 'metre');
        }
      }
    },
  );

  it('is no other document in the other unit and back', () => {
    const app = createApp(PROJECT);
    const before = app.getState().project;
    app.getState().measureIn('cm');
    expect(documentOf(app.getState())).toBe(before);
    app.getState().measureIn('in');
    expect(app.getState().project).toBe(before);
  });
});

describe('an empty quilt', () => {
  it('begins anew with the usual sizes when another unit is chosen', () => {
    const app = createApp(createProject('p', 'New'));
    app.getState().measureIn('cm');
    expect(app.getState().project).toEqual(createProject('p', 'New', 'cm'));
    expect(documentOf(app.getState()).preferences.unit).toBe('cm');
    app.getState().measureIn('in');
    expect(documentOf(app.getState())).toEqual(createProject('p', 'New'));
  });

  it('keeps its sizes once anything was done, even undone', () => {
    const touched = createApp(createProject('p', 'New'));
    touched.getState().run(changePreferences({ usableWidth: 44 }));
    touched.getState().undo();
    const other = createApp({ ...createProject('p', 'New'), notes: 'mine' });
    for (const app of [touched, other]) {
      app.getState().measureIn('cm');
      expect(app.getState().project.wedge.cutHeight).toBe(USUAL.in.cutHeight);
      expect(documentOf(app.getState()).preferences.unit).toBe('in');
    }
  });
});

describe('the session', () => {
  const quiet = {
    news: { tell: () => {}, watch: () => () => {}, close: () => {} },
    notes: {
      leave: () => true,
      drop: () => {},
      removed: () => {},
      pictures: () => new Set<string>(),
      takeAll: () => [],
    },
    now: () => 0,
  };
  let ids = 0;
  const freshId = () => {
    ids += 1;
    return `id${ids}`;
  };
  const visit = (storage: ReturnType<typeof createStorage>, note = notes().note, usual: LengthUnit = 'cm') =>
    startSession(storage, null, [], freshId, { note, usual });

  it('begins in the usual unit, notes it, and makes new quilts in the unit that is chosen', async () => {
    const { note } = notes();
    const storage = createStorage(createMemoryShelf(), quiet);
    const session = await visit(storage, note);
    expect(note.read()).toBe('cm');
    expect(session.app.getState().project.wedge.cutHeight).toBe(USUAL.cm.cutHeight);
    session.app.getState().measureIn('in');
    expect(note.read()).toBe('in');
    await session.openNew('Another');
    expect(session.app.getState().project).toMatchObject(
      createProject(session.app.getState().project.id, 'Another'),
    );
  });

  it('saves a quilt as it was drawn, and not at all for being looked at in another unit', async () => {
    const storage = createStorage(createMemoryShelf(), quiet);
    await storage.save(PROJECT, 0);
    await storage.setLastOpen(PROJECT.id);
    const { note } = notes();
    note.write('cm');
    const session = await visit(storage, note);
    expect(session.app.getState().project.preferences.unit).toBe('cm');
    session.app.getState().measureIn('in');
    session.app.getState().measureIn('cm');
    await session.flush();
    const untouched = await storage.load(PROJECT.id);
    expect(untouched.ok && untouched.value.revision).toBe(1);
    session.app.getState().run(renameProject('Renamed'));
    await session.flush();
    const saved = await storage.load(PROJECT.id);
    expect(saved.ok && saved.value.project).toEqual({ ...PROJECT, name: 'Renamed' });
  });

  it('takes the unit of the quilt last open where the person has none yet', async () => {
    const storage = createStorage(createMemoryShelf(), quiet);
    await storage.save(PROJECT, 0);
    await storage.setLastOpen(PROJECT.id);
    const { note } = notes();
    const session = await visit(storage, note, 'cm');
    expect([session.app.getState().unit, note.read()]).toEqual(['in', 'in']);
  });
});
