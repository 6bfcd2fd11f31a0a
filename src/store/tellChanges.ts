// Tells every change in one sentence with the clashes that there are now: 'Turned block 4. 40 clashes, 2 fewer.' It waits until a run of
// changes pauses and the analysis has come, so that a slider is told once. It is heard by screen readers alone; others see the wall.
import { doneWords } from '../editing/doneWords';
import { counted, type Phrase, phrase } from '../model/phrase';
import type { Project } from '../model/project';
import { knownBalance } from './analysis/analysis';
import type { AnalysisClient } from './analysis/analysisClient';
import type { App, AppStore } from './app';

/** Milliseconds without a change before one is told; a sliding control pauses for longer. */
const PAUSE = 350;
const SLIDING = 1_000;

/** A change that is to be told, from the state told last. */
interface Untold {
  readonly words: Phrase;
  readonly from: Project;
  readonly to: Project;
  /** Count of announcements when it was made: who has announced since has told it in words of their own. */
  readonly announced: number;
}

/** Tells the changes of an app from now on. */
export function tellChanges(
  app: AppStore,
  analysing: Pick<AnalysisClient, 'want' | 'reason' | 'subscribe'>,
): void {
  let untold: Untold | null = null;
  let stop = () => {};
  const tell = (change: Untold) => {
    const { announced, tell: say } = app.getState();
    const clashes = clashWords(change.from, change.to);
    const words = announced.count > change.announced && announced.heard ? null : change.words;
    untold = null;
    if (words && clashes) say(phrase('{words}. {clashes}.', { words, clashes }));
    else if (words) say(phrase('{words}.', { words }));
    else if (clashes) say(phrase('{clashes}.', { clashes }));
  };
  app.subscribe((now, before) => {
    if (now.revision === before.revision) return;
    stop();
    const words = now.project.id === before.project.id ? wordsOf(now, before) : null;
    if (words === null) {
      untold = null;
      return;
    }
    const change: Untold = {
      words,
      from: untold?.from ?? before.project,
      to: now.project,
      announced: now.announced.count,
    };
    untold = change;
    const slides = now.history.done.at(-1)?.slide !== undefined;
    stop = paused(slides ? SLIDING : PAUSE, () =>
      whenAnalysed(now.project, analysing, () => {
        if (untold === change) tell(change);
      }),
    );
  });
}

/** The words of the last change; null where the history does not tell it. */
function wordsOf(now: App, before: App): Phrase | null {
  const [last, next] = [now.history.done.at(-1), now.history.undone.at(-1)];
  if (next && now.history.undone.length > before.history.undone.length)
    return phrase('Undone: {change}', { change: next.label });
  if (!last) return null;
  return now.history.undone.length < before.history.undone.length && last === before.history.undone.at(-1)
    ? phrase('Redone: {change}', { change: last.label })
    : doneWords(last.label);
}

/** How many clashes there are and how many there were; null where no wedge hangs, or nothing has changed that clashes. */
function clashWords(from: Project, to: Project): Phrase | null {
  const now = knownBalance(to)?.clashes.length;
  if (now === undefined || !someWedgeHangs(to)) return null;
  const was = knownBalance(from)?.clashes.length ?? now;
  if (was === now) return sameTop(from, to) ? null : phrase('{count}', { count: countOf(now) });
  const by = Math.abs(now - was);
  return phrase(now < was ? '{count}, {by} fewer' : '{count}, {by} more', { count: countOf(now), by });
}

function countOf(clashes: number): Phrase {
  return clashes === 0 ? phrase('No clashes') : counted(clashes, '{count} clash', '{count} clashes');
}

function someWedgeHangs({ wall, blocks }: Project): boolean {
  const hanging = new Set(wall.cells.map((cell) => cell?.block));
  return blocks.some(({ id, places }) => hanging.has(id) && places.some((place) => place !== null));
}

function sameTop(one: Project, other: Project): boolean {
  return (['wall', 'blocks', 'stripSets', 'fabrics', 'setting', 'wedge'] as const).every(
    (part) => one[part] === other[part],
  );
}

/** Calls back once the balance of a project is known or cannot be; returns what ends the waiting. */
function whenAnalysed(
  project: Project,
  analysing: Pick<AnalysisClient, 'want' | 'reason' | 'subscribe'>,
  then: () => void,
): () => void {
  const known = () => knownBalance(project) !== null || analysing.reason(project) !== null;
  if (known()) {
    then();
    return () => {};
  }
  const unsubscribe = analysing.subscribe(() => {
    if (!known()) return;
    end();
    then();
  });
  const unwant = analysing.want(project);
  const end = () => {
    unsubscribe();
    unwant();
  };
  return end;
}

/** Begins something after a pause; returns what stops it, begun or not. */
function paused(milliseconds: number, begin: () => () => void): () => void {
  let end = () => {};
  const timer = setTimeout(() => {
    end = begin();
  }, milliseconds);
  return () => {
    clearTimeout(timer);
    end();
  };
}
