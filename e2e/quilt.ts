// What every spec of the workshop does first: the small example, which a newcomer finds open, and a step of the work.
import { readFileSync } from 'node:fs';
import { expect, type Page } from '@playwright/test';
import { makeSets, setMakingOf } from '../src/cutting/sets/randomSets';
import { apply } from '../src/editing/apply';
import { replaceSets } from '../src/editing/commands/stripSets';
import { createProject } from '../src/model/create';
import { NO_PICTURES } from '../src/model/picture/picture';
import { writeProject } from '../src/model/reading/read';
import { demo } from '../tests/demo';
import { firstVisit, goTo } from './room';
import { openSaved } from './stored';

/** Opens the six-block example and goes to a step. */
export async function openExample(page: Page, step: string): Promise<void> {
  await firstVisit(page);
  await goTo(page, step);
}

/** Opens an example by its file and goes to a step. A newcomer finds the small one open, which spares opening it. */
export async function openDemo(page: Page, file: string, step: string): Promise<void> {
  if (file === 'harbour-reading-corner') await firstVisit(page);
  else await openSaved(page, demoText(file));
  await goTo(page, step);
}

/** Opens an example by its file, whatever is open. */
export async function openDemoFile(page: Page, file: string): Promise<void> {
  await page.getByRole('button', { name: /^Quilt:/ }).click();
  await page.setInputFiles('input[type=file]', `demo-data/${file}.json`);
  await expect(page.getByRole('dialog')).toBeHidden({ timeout: 15_000 });
}

function demoText(file: string): string {
  return readFileSync(`demo-data/${file}.json`, 'utf8');
}

/** Opens an empty quilt at the ways to begin. */
export async function emptyQuilt(page: Page): Promise<void> {
  await openSaved(page, JSON.stringify(createProject('empty', 'New quilt')));
  await expect(page.getByRole('heading', { name: 'Begin the quilt' })).toBeVisible();
}

/** Opens the example that has strips and nothing sewn at the step Strip sets, with the sets that 'Make sets' makes of them. */
export async function setsFromStrips(page: Page): Promise<void> {
  const project = demo('kiln-shed');
  const { seed } = project.preferences;
  const made = makeSets(setMakingOf(project, { blocks: project.wall.cells.length }, seed));
  const outcome = apply(project, replaceSets(project, made.sets, seed));
  if (!outcome.ok) throw new Error('setsFromStrips: the sets are refused');
  await openSaved(page, writeProject(outcome.project, NO_PICTURES));
  await goTo(page, 'Strip sets');
}

/** The first example before any set was sewn or cut. */
export function planned(): string {
  const quilt = JSON.parse(demoText('harbour-reading-corner'));
  for (const set of quilt.stripSets) Object.assign(set, { progress: 'planned', cut: null });
  return JSON.stringify({ ...quilt, id: 'only-planned' });
}

/** The words of the next undo. */
export async function nextUndo(page: Page): Promise<string> {
  const button = page.getByRole('toolbar', { name: 'Undo and redo' }).getByRole('button').first();
  return (await button.getAttribute('aria-label')) ?? '';
}
