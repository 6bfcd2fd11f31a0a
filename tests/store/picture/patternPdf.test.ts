// The pages of the pattern are laid out once for the screen and the file, as long as they are the same pages.
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import type { PatternOptions } from '../../../src/drawing/pattern/options';
import { PAPERS } from '../../../src/drawing/pattern/page';
import type { PageShapes } from '../../../src/drawing/pattern/pageShapes';
import { NO_PICTURES } from '../../../src/model/picture/picture';
import type { Project } from '../../../src/model/project';
import { ok } from '../../../src/model/result';
import type { PatternJobs, PatternOutline, Writing } from '../../../src/store/picture/patternJobs';
import type { LaidOut } from '../../../src/store/picture/patternPdf';
import { demo } from '../../demo';
import { StubWorker, settled } from '../workers/stubWorker';

const OPTIONS: PatternOptions = { paper: 'a4', parts: ['cover', 'sets'] };
const WRITING: Writing = { unit: 'in' };
const OUTLINE: PatternOutline = { title: 'Laid out', paper: PAPERS.a4, pages: [{ parts: ['Cover'] }] };
const DRAWN: PageShapes = { width: 595, height: 842, prints: [], shapes: [] };

const workers: StubWorker<PatternJobs>[] = [];
class Started extends StubWorker<PatternJobs> {
  constructor() {
    super();
    workers.push(this);
  }
}
let layOutPattern: typeof import('../../../src/store/picture/patternPdf')['layOutPattern'];
let makePatternPdf: typeof import('../../../src/store/picture/patternPdf')['makePatternPdf'];
beforeEach(async () => {
  vi.stubGlobal('Worker', Started);
  workers.length = 0;
  // Each test begins with a page that has no worker.
  vi.resetModules();
  ({ layOutPattern, makePatternPdf } = await import('../../../src/store/picture/patternPdf'));
});
afterEach(() => vi.unstubAllGlobals());

const wanted = () => false;
const newest = () => workers.at(-1)!;

async function laidOut(project: Project): Promise<LaidOut> {
  const shown = layOutPattern(project, OPTIONS, WRITING, () => false);
  await settled();
  newest().answer('layOut', ok(OUTLINE));
  const laid = await shown;
  if (!laid?.ok) throw new Error('it was not laid out');
  return laid.value;
}

/** Under what number the pages are that a file is asked to be made of, and whether by the worker that has them. */
async function madeOf(project: Project, options = OPTIONS, writing = WRITING) {
  const before = newest();
  const making = makePatternPdf(project, NO_PICTURES, options, writing);
  await settled();
  const { laidOut: number } = newest().asked('make').ask;
  const same = newest() === before;
  making.cancel();
  await making.answer;
  return { number, same };
}

it('a file of the pages that are on screen is made of them by the worker that keeps them', async () => {
  const project = demo('harbour-reading-corner');
  await laidOut(project);
  const { number } = newest().asked('layOut').ask;
  const same: PatternOptions = { paper: 'a4', parts: ['cover', 'sets'] };
  expect(await madeOf(project, same, { ...WRITING })).toEqual({ number, same: true });
});

it.each<[string, (project: Project) => Promise<{ number: number | null; same: boolean }>]>([
  ['on other paper', (project) => madeOf(project, { ...OPTIONS, paper: 'letter' })],
  ['of other parts', (project) => madeOf(project, { ...OPTIONS, parts: ['cover'] })],
  ['in another unit', (project) => madeOf(project, OPTIONS, { unit: 'cm' })],
  ['of another quilt', (project) => madeOf({ ...project })],
])('a file %s is laid out anew, by a worker of its own', async (_, made) => {
  const project = demo('harbour-reading-corner');
  await laidOut(project);
  expect(await made(project)).toEqual({ number: null, same: false });
});

it('what is on a page comes when it is asked for, and the outline has none of it', async () => {
  const laid = await laidOut(demo('harbour-reading-corner'));
  const { number } = newest().asked('layOut').ask;
  const page = laid.page(0, wanted);
  await settled();
  expect(newest().asked('page').ask).toEqual({ number, page: 0 });
  newest().answer('page', DRAWN);
  expect(await page).toEqual(ok(DRAWN));
});

it('a page is laid out once more where the worker that kept it makes the file', async () => {
  const project = demo('harbour-reading-corner');
  const laid = await laidOut(project);
  const { ask } = newest().asked('layOut');
  const making = makePatternPdf(project, NO_PICTURES, OPTIONS, WRITING);
  await settled();
  const maker = newest();
  const page = laid.page(0, wanted);
  await settled();
  expect(newest()).not.toBe(maker);
  newest().answer('page', null);
  await settled();
  expect(newest().asked('layOut').ask).toEqual(ask);
  newest().answer('layOut', ok(OUTLINE));
  await settled();
  newest().answer('page', DRAWN);
  expect(await page).toEqual(ok(DRAWN));
  expect(maker.ended).toBe(false);
  making.cancel();
});

it('after the file is made its worker keeps the pages for the screen', async () => {
  const project = demo('harbour-reading-corner');
  const laid = await laidOut(project);
  const keeper = newest();
  const making = makePatternPdf(project, NO_PICTURES, OPTIONS, WRITING);
  await settled();
  keeper.answer('make', ok({ bytes: new Uint8Array(1), pages: 1, missing: [], pictured: [] }));
  await making.answer;
  void laid.page(0, wanted);
  await settled();
  expect(keeper.asked('page').ask).toMatchObject({ page: 0 });
  keeper.answer('page', DRAWN);
});

it('a page that was turned over before its turn came is not asked for', async () => {
  const laid = await laidOut(demo('harbour-reading-corner'));
  const first = laid.page(0, wanted);
  const second = laid.page(1, () => true);
  await settled();
  newest().answer('page', DRAWN);
  expect(await first).toEqual(ok(DRAWN));
  expect(await second).toBeNull();
  expect(newest().asked('page').ask).toMatchObject({ page: 0 });
});

it('what is stale when it comes stops nothing that is wanted', async () => {
  const shown = layOutPattern(demo('harbour-reading-corner'), OPTIONS, WRITING, wanted);
  await settled();
  expect(await layOutPattern(demo('harbour-reading-corner'), OPTIONS, WRITING, () => true)).toBeNull();
  expect(newest().stops).toBe(0);
  newest().answer('layOut', ok(OUTLINE));
  expect(await shown).toMatchObject({ ok: true });
});
