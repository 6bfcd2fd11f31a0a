// Reading a project from text and writing it back: parse, migrate, schema, references. Wedge use: cutting/openProject.ts.
import * as v from 'valibot';
import { checkReferences } from './check';
import { migrate } from './migrate';
import { phrase } from './phrase';
import { type Project, projectSchema } from './project';
import { failed, ok, type Result } from './result';
import { OWN_SENTENCES_ONLY, schemaProblem } from './schemaProblem';

/** At most this many problems are reported; a broken file would otherwise list thousands. */
const MOST_PROBLEMS = 20;

/** Reads a project from the text of a file. Every refusal names the place in the file and the reason. */
export function readProject(text: string): Result<Project> {
  let document: unknown;
  try {
    document = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    return failed('not-json', '', phrase('The file is not readable as JSON: {reason}', { reason }));
  }
  return readDocument(document);
}

/** The same for an already parsed document (from storage). */
export function readDocument(document: unknown): Result<Project> {
  const migrated = migrate(document);
  if (!migrated.ok) return migrated;
  const parsed = v.safeParse(projectSchema, migrated.value, OWN_SENTENCES_ONLY);
  if (!parsed.success)
    return { ok: false, problems: parsed.issues.slice(0, MOST_PROBLEMS).map(schemaProblem) };
  const problems = checkReferences(parsed.output);
  return problems.length === 0
    ? ok(parsed.output)
    : { ok: false, problems: problems.slice(0, MOST_PROBLEMS) };
}

/** The text of a project file: the document as JSON, indented, ending in a line break. */
export function writeProject(project: Project): string {
  return `${JSON.stringify(project, null, 1)}\n`;
}
