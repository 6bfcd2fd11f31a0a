// Whole chains: a quilt, sound or from a file made a little wrong, is opened, changed by up to forty commands, undone to the start, done
// again, saved, drawn, counted and written as a pattern.
import { isDeepStrictEqual } from 'node:util';
import { patternFile, patternKit } from '../src/cli/pattern';
import { createApp, documentOf } from '../src/store/app';
import { dice } from '../tests/balance/tops';
import { commandsFor } from './commands';
import { lookThrough } from './files';
import { one } from './mutate';
import { anyQuilt, PICTURES, sentencesOf } from './quilts';
import type { Try } from './tally';

const kit = await patternKit();
/** In every so many chains the pattern is written too, which takes longest. */
const PATTERN_EVERY = 4;

/** Walks one chain. */
export const wholeChain: Try = (number, trying) => {
  const chance = dice(number);
  const start = anyQuilt(chance);
  const app = createApp(start, undefined, one(['in', 'cm'], chance));
  const before = documentOf(app.getState());
  for (let left = 1 + chance.below(40); left > 0; left -= 1) {
    const { project } = app.getState();
    if (project.blocks.length === 0 || project.stripSets.length === 0) break;
    const problems = app.getState().run(one(commandsFor(project), chance)(project, chance));
    if (problems.length > 0) trying.refused(sentencesOf(problems));
    if (chance.below(8) === 0) app.getState().undo();
    if (chance.below(16) === 0) app.getState().redo();
  }
  const after = documentOf(app.getState());
  while (app.getState().history.undone.length > 0) app.getState().redo();
  const last = documentOf(app.getState());
  while (app.getState().history.done.length > 0) app.getState().undo();
  if (!isDeepStrictEqual(documentOf(app.getState()), before))
    trying.fault('undone to the start it is another quilt');
  while (app.getState().history.undone.length > 0) app.getState().redo();
  if (!isDeepStrictEqual(documentOf(app.getState()), last)) trying.fault('done again it is another quilt');
  lookThrough(after, PICTURES, trying);
  if (number % PATTERN_EVERY !== 0) return;
  const pattern = patternFile(after, PICTURES, one(['a4', 'letter'], chance), kit);
  if (!pattern.ok) trying.refused(sentencesOf(pattern.problems));
  else if (/\bNaN\b|Infinity/.test(Buffer.from(pattern.value.bytes).toString('latin1')))
    trying.fault('no number in the pattern');
};
