// A change told in one sentence with the clashes there are now, counted by the analysis itself.
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { propose } from '../../src/arrange/mend/proposals';
import { analyse } from '../../src/balance/analyse';
import { wishesOf } from '../../src/balance/score/wishes';
import { changePreferences, renameProject } from '../../src/editing/commands/setting';
import { turnBlock } from '../../src/editing/commands/wall';
import { doneWords } from '../../src/editing/doneWords';
import { createProject } from '../../src/model/create';
import { phrase, speak } from '../../src/model/phrase';
import type { Project } from '../../src/model/project';
import { balanceAtOnce } from '../../src/store/analysis/atOnce';
import { createApp } from '../../src/store/app';
import { tellChanges } from '../../src/store/tellChanges';
import { demo, unsewn } from '../demo';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

/** An app whose changes are told, and all that is told, in order. */
function room(project: Project, analyses = true) {
  balanceAtOnce(project);
  const app = createApp(project);
  const told: string[] = [];
  app.subscribe((now, before) => {
    if (now.lastChange !== before.lastChange && now.lastChange.say !== '') told.push(speak(now.lastChange));
  });
  const heard = new Set<() => void>();
  tellChanges(app, {
    want: (wanted) => {
      setTimeout(() => {
        if (analyses) balanceAtOnce(wanted);
        for (const listener of heard) listener();
      }, 200);
      return () => {};
    },
    reason: () => (analyses ? null : phrase('It failed.')),
    subscribe: (listener) => {
      heard.add(listener);
      return () => heard.delete(listener);
    },
  });
  return { app, told };
}

const clashesOf = (project: Project) => analyse(project, wishesOf(project.preferences)).clashes.length;

/** What is heard after a change: its words, the count, and by how many it differs. */
function expected(words: string, from: Project, to: Project): string {
  const [was, now] = [clashesOf(from), clashesOf(to)];
  const count = now === 0 ? 'No clashes' : `${now} ${now === 1 ? 'clash' : 'clashes'}`;
  const by = now === was ? '' : `, ${Math.abs(now - was)} ${now < was ? 'fewer' : 'more'}`;
  return `${words}. ${count}${by}.`;
}

test('a turn, its undo and its redo are each told once, with the clashes', () => {
  const before = unsewn(demo('harbour-reading-corner'));
  const { app, told } = room(before);
  const block = before.blocks.find((one) => clashesOf(before) !== clashesOf(turned(before, one.id)))!;
  app.getState().run(turnBlock(before, block.id, 1));
  const after = app.getState().project;
  expect(told).toEqual([]);
  vi.advanceTimersByTime(5_000);
  expect(told).toEqual([expected(`Turned block ${block.number}`, before, after)]);
  app.getState().undo();
  vi.advanceTimersByTime(5_000);
  app.getState().redo();
  vi.advanceTimersByTime(5_000);
  expect(told.slice(1)).toEqual([
    expected(`Undone: turn block ${block.number}`, after, before),
    expected(`Redone: turn block ${block.number}`, before, after),
  ]);
});

function turned(project: Project, block: string): Project {
  const app = createApp(project);
  app.getState().run(turnBlock(project, block, 1));
  return app.getState().project;
}

test('a run of changes is told once, and so is a slider', () => {
  const before = unsewn(demo('harbour-reading-corner'));
  const { app, told } = room(before);
  const { id, number } = before.blocks[0]!;
  for (let press = 0; press < 3; press += 1) {
    app.getState().run(turnBlock(app.getState().project, id, 1));
    vi.advanceTimersByTime(100);
  }
  vi.advanceTimersByTime(5_000);
  expect(told).toEqual([expected(`Turned block ${number}`, before, app.getState().project)]);
  for (let value = 40; value < 60; value += 1) {
    app.getState().run(changePreferences({ wallLightness: value }, true));
    vi.advanceTimersByTime(500);
  }
  vi.advanceTimersByTime(5_000);
  expect(told.slice(1)).toEqual(['Changed the wall background.']);
});

test('what is told in other words is not told again, and without wedges there are no clashes to tell', () => {
  const before = unsewn(demo('harbour-reading-corner'));
  const { app, told } = room(before);
  app.getState().run(turnBlock(before, before.blocks[0]!.id, 1));
  app.getState().announce(phrase('A quarter on.'));
  vi.advanceTimersByTime(5_000);
  expect(told).toHaveLength(1);
  expect(told[0]).toMatch(/^(\d+ clash|No clashes)/);
  const empty = room(createProject('one', 'Quilt'));
  empty.app.getState().run(renameProject('Another'));
  vi.advanceTimersByTime(5_000);
  expect(empty.told).toEqual(['Renamed the quilt.']);
});

test('an analysis that fails leaves the sentence, and another quilt is no change', () => {
  const { app, told } = room(unsewn(demo('harbour-reading-corner')), false);
  const { project } = app.getState();
  app.getState().run(turnBlock(project, project.blocks[0]!.id, 1));
  vi.advanceTimersByTime(5_000);
  expect(told).toEqual([`Turned block ${project.blocks[0]!.number}.`]);
  app.getState().open(createProject('two', 'Other'));
  vi.advanceTimersByTime(5_000);
  expect(told).toHaveLength(1);
});

test('every mend of a finding has its words for when it is made', () => {
  const project = unsewn(demo('harbour-reading-corner'));
  const analysis = analyse(project, wishesOf(project.preferences));
  const words = analysis.findings
    .flatMap((finding) => propose(finding, analysis))
    .map(({ words: { say, ...rest } }) =>
      doneWords(phrase('{change}', { change: { ...rest, say: say.charAt(0).toLowerCase() + say.slice(1) } })),
    );
  expect(words.length).toBeGreaterThan(5);
  expect(words.map((one) => speak(one)).filter((one) => one.startsWith('Done: '))).toEqual([]);
});
