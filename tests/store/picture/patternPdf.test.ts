// The pages of the pattern are laid out once for the screen and the file, as long as they are the same pages.
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import type { PatternOptions } from '../../../src/drawing/pattern/options';
import { PAPERS, type Pattern } from '../../../src/drawing/pattern/page';
import { NO_PICTURES } from '../../../src/model/picture/picture';
import { ok } from '../../../src/model/result';
import type { PatternJobs, Writing } from '../../../src/store/picture/patternJobs';
import { layOutPattern, makePatternPdf } from '../../../src/store/picture/patternPdf';
import { demo } from '../../demo';
import { StubWorker, settled } from '../workers/stubWorker';

const OPTIONS: PatternOptions = { paper: 'a4', parts: ['cover', 'sets'] };
const WRITING: Writing = { unit: 'in' };
const PAGES: Pattern = { title: 'Laid out', paper: PAPERS.a4, pages: [{ parts: ['Cover'], marks: [] }] };

const workers: StubWorker<PatternJobs>[] = [];
class Started extends StubWorker<PatternJobs> {
  constructor() {
    super();
    workers.push(this);
  }
}
beforeEach(() => vi.stubGlobal('Worker', Started));
afterEach(() => vi.unstubAllGlobals());

/** The pages that come with what the file is asked for. */
async function givenTo(project: ReturnType<typeof demo>, options: PatternOptions, writing: Writing) {
  const making = makePatternPdf(project, NO_PICTURES, options, writing);
  await settled();
  const { laidOut } = workers.at(-1)!.asked('make').ask;
  making.cancel();
  return laidOut;
}

it('a file of the pages that are on screen is made of them; of other choices or another quilt it is laid out anew', async () => {
  const project = demo('harbour-reading-corner');
  expect(await givenTo(project, OPTIONS, WRITING)).toBeNull();
  const shown = layOutPattern(project, OPTIONS, WRITING, () => false);
  await settled();
  workers.at(-1)!.answer('layOut', ok(PAGES));
  expect(await shown).toEqual(ok(PAGES));
  expect(await givenTo(project, { ...OPTIONS, parts: [...OPTIONS.parts] }, { ...WRITING })).toEqual(PAGES);
  expect(await givenTo(project, { ...OPTIONS, paper: 'letter' }, WRITING)).toBeNull();
  expect(await givenTo(project, { ...OPTIONS, parts: ['cover'] }, WRITING)).toBeNull();
  expect(await givenTo(project, OPTIONS, { unit: 'cm' })).toBeNull();
  expect(await givenTo({ ...project }, OPTIONS, WRITING)).toBeNull();
});
