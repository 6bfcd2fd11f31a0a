// What comes of a command: the project after it, or the words it is refused with.
import { apply, type Command } from '../../src/editing/apply';
import { speak } from '../../src/model/phrase';
import type { Project } from '../../src/model/project';

/** The project after a command that must be possible; throws the refusal's words. */
export function done(from: Project, command: Command): Project {
  const outcome = apply(from, command);
  if (!outcome.ok) throw new Error(speak(outcome.problems[0]!.message));
  return outcome.project;
}

/** The first words of a refusal; empty when the command is carried out. */
export function refusal(from: Project, command: Command): string {
  const outcome = apply(from, command);
  return outcome.ok ? '' : speak(outcome.problems[0]!.message);
}
