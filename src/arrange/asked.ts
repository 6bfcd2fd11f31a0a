// Turns the person's wishes into what the arranger is asked, and decides whether an answer still fits the quilt.
import { weightsOf } from '../balance/score/wishes';
import type { Preferences, Project } from '../model/project';
import { askedOf, budgetFor } from './search/effort';
import type { ShuffleWish } from './shuffle';

/** The wish that a shuffle of this quilt sends to the workers. */
export function shuffleWish(project: Project): ShuffleWish {
  const { intent, lookalikes } = project.preferences;
  const { seed, scopes, effort } = askedOf(project.preferences);
  const weights = weightsOf(project.preferences);
  const hung = project.wall.cells.filter((cell) => cell !== null).length;
  return { seed, scopes, weights, intent, lookalikes, budget: budgetFor(effort, hung) };
}

/** Parts of a project that no order of the blocks depends on: shuffle wishes, the view of the wall, later steps. */
const APART = new Set<keyof Project | keyof Preferences>([
  'shuffle',
  'wallLightness',
  'unit',
  'usableWidth',
  'seed',
  'name',
  'notes',
  'colourways',
  'buying',
]);

/** True while nothing has changed that an order of the blocks depends on, so that the answer still fits the quilt. */
export function stillFits(now: Project, before: Project): boolean {
  const rest = ({ preferences, ...project }: Project) =>
    new Map<string, unknown>(
      [...Object.entries(project), ...Object.entries(preferences)].filter(
        ([name]) => !APART.has(name as keyof Project | keyof Preferences),
      ),
    );
  const then = rest(before);
  const values = rest(now);
  return values.size === then.size && [...values].every(([name, value]) => value === then.get(name));
}
