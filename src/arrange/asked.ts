// What the arranger is asked of a quilt by the person's own wishes, and when what it found fits the quilt still.
import { weightsOf } from '../balance/score/wishes';
import type { Preferences, Project } from '../model/project';
import { askedOf, budgetFor } from './search/effort';
import type { ShuffleWish } from './shuffle';

/** What a shuffle of this quilt is asked for, as the workers hear it. */
export function shuffleWish(project: Project): ShuffleWish {
  const { intent, lookalikes } = project.preferences;
  const { seed, scopes, effort } = askedOf(project.preferences);
  const weights = weightsOf(project.preferences);
  const hung = project.wall.cells.filter((cell) => cell !== null).length;
  return { seed, scopes, weights, intent, lookalikes, budget: budgetFor(effort, hung) };
}

/** What no order of the blocks depends on: what is asked of a shuffle, how the wall is looked at, and what comes after it. */
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

/** Whether nothing was changed that an order of the blocks depends on: what was found for the quilt fits it still. */
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
