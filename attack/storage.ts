// A browser's storage that fails: it throws before or after it has done its work, answers late, and loses or damages what it holds, while
// two windows save, load, list and remove. No function of the storage rejects; what it said is saved can be read again, as it was saved or
// as it was saved later; and nothing is overwritten from an older state.
import { isDeepStrictEqual } from 'node:util';
import { EMPTY_HISTORY } from '../src/editing/history';
import { createProject } from '../src/model/create';
import type { Project } from '../src/model/project';
import { NO_NOTES } from '../src/store/storage/leaving';
import { createMemoryShelf } from '../src/store/storage/memory';
import { SILENT_NEWS } from '../src/store/storage/news';
import { createStorage, type ProjectStorage, type Shelf } from '../src/store/storage/storage';
import { dice } from '../tests/balance/tops';
import { type Chance, one } from './mutate';
import { sentencesOf } from './quilts';
import type { Try, Trying } from './tally';

const ERRORS = [
  () => new DOMException('full', 'QuotaExceededError'),
  () => new DOMException('ended', 'AbortError'),
  () => new DOMException('closed', 'InvalidStateError'),
  () => new TypeError('no such function'),
  () => 'not even an error',
] as const;

/** A shelf on which every call may fail, as long as `failing.now`. */
function failingShelf(shelf: Shelf, failing: { now: boolean }, chance: Chance): Shelf {
  const unsure = (work: (...given: never[]) => Promise<unknown>) => {
    return async (...given: never[]) => {
      const fate = failing.now ? chance.below(8) : 7;
      if (fate === 0) throw one(ERRORS, chance)();
      if (fate === 1) await new Promise((done) => setTimeout(done, 1));
      const answer = await work(...given);
      if (fate === 2) throw one(ERRORS, chance)();
      return answer;
    };
  };
  const calls = Object.entries(shelf).map(([name, call]) => [
    name,
    typeof call === 'function' && name !== 'close' ? unsure(call as never) : call,
  ]);
  return { ...(Object.fromEntries(calls) as unknown as Shelf), keeps: true };
}

/** What may be kept of a quilt: the states the storage said are saved, and later ones of which it did not say so. */
type Kept = Map<string, readonly Project[]>;

/** Two windows at work on one failing shelf. */
export const failingStorage: Try = async (number, trying) => {
  const chance = dice(number);
  const failing = { now: true };
  const shelf = failingShelf(createMemoryShelf(), failing, chance);
  let seconds = 0;
  const now = () => {
    seconds += 1;
    return seconds * 1000;
  };
  const open = () => createStorage(shelf, { news: SILENT_NEWS, notes: NO_NOTES, now });
  const windows = [open(), open()].map((storage) => ({ storage, revisions: new Map<string, number>() }));
  const kept: Kept = new Map();
  for (let left = 5 + chance.below(40); left > 0; left -= 1) {
    const id = one(['river', 'meadow', 'plum'], chance);
    await act(one(windows, chance), id, kept, chance, trying);
  }
  failing.now = false;
  await compare(windows[0]!.storage, kept, trying);
};

interface Window {
  readonly storage: ProjectStorage;
  /** The revision this window believes in. */
  readonly revisions: Map<string, number>;
}

async function act({ storage, revisions }: Window, id: string, kept: Kept, chance: Chance, trying: Trying) {
  const kind = chance.below(8);
  if (kind === 0) await storage.list();
  else if (kind === 1) await storage.setLastOpen(id);
  else if (kind === 2) {
    const removed = await storage.remove(id);
    // Whether it is gone is not sure where the answer failed.
    if (removed.ok) kept.delete(id);
    else if (kept.has(id)) kept.set(id, [...kept.get(id)!, ...GONE]);
    revisions.delete(id);
  } else if (kind === 3) {
    const loaded = await storage.load(id);
    if (loaded.ok) revisions.set(id, loaded.value.revision);
    else trying.refused(sentencesOf(loaded.problems));
  } else await save({ storage, revisions }, id, kept, chance, trying);
}

/** Stands among what may be kept for a quilt that may be removed. */
const GONE: readonly Project[] = [createProject('gone', 'gone')];

async function save({ storage, revisions }: Window, id: string, kept: Kept, chance: Chance, trying: Trying) {
  const project = { ...createProject(id, `Quilt ${chance.below(1e6)}`), notes: `note ${chance.below(1e6)}` };
  const based = revisions.get(id) ?? 0;
  const saved = await storage.save(project, based, EMPTY_HISTORY);
  if (saved.ok) {
    revisions.set(id, saved.value);
    kept.set(id, [project]);
    return;
  }
  trying.refused(sentencesOf(saved.problems));
  const clash = saved.problems.some(({ code }) => code.endsWith('-elsewhere'));
  // A refusal by revision has written nothing; after any other failure it may be there all the same.
  if (!clash) kept.set(id, [...(kept.get(id) ?? GONE), project]);
}

/** Everything that must still be there is. */
async function compare(storage: ProjectStorage, kept: Kept, trying: Trying) {
  for (const [id, states] of kept) {
    const loaded = await storage.load(id);
    if (!loaded.ok) {
      if (!states.includes(GONE[0]!)) trying.fault('what was saved is gone');
    } else if (!states.some((state) => isDeepStrictEqual(state, loaded.value.project)))
      trying.fault('what was saved is another state');
  }
}
