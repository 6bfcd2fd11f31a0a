// Reads a project from text (parse, migrate, schema, references) and writes it back. editing/openProject.ts reads files and
// checks the use of wedges.
import * as v from 'valibot';
import { checkReferences } from '../check';
import { type Project, projectSchema } from '../project';
import { ok, type Result } from '../result';
import { explain } from './documentPlace';
import { migrate } from './migrate';
import { parseText } from './projectText';
import { OWN_SENTENCES_ONLY, schemaProblem } from './schemaProblem';

/** The most problems reported; a broken file could otherwise list thousands. */
const MOST_PROBLEMS = 20;

/** Reads a project from the text of a file. Every refusal names the place in the file and the reason. */
export function readProject(text: string): Result<Project> {
  const document = parseText(text);
  return document.ok ? readDocument(document.value) : document;
}

/** Reads a project from a parsed document (from storage); refuses like readProject. */
export function readDocument(document: unknown): Result<Project> {
  const migrated = migrate(document);
  if (!migrated.ok) return migrated;
  const parsed = v.safeParse(projectSchema, migrated.value, OWN_SENTENCES_ONLY);
  if (!parsed.success) {
    const told = parsed.issues.slice(0, MOST_PROBLEMS).map((issue) => schemaProblem(issue, migrated.value));
    return { ok: false, problems: told };
  }
  const found = checkReferences(parsed.output);
  if (found.length === 0) return ok(parsed.output);
  return {
    ok: false,
    problems: found.slice(0, MOST_PROBLEMS).map((problem) => explain(problem, migrated.value)),
  };
}

/** The text of a project file: the document as JSON, indented, ending in a line break. */
export function writeProject(project: Project): string {
  return writeDocument(project);
}

/** The text of a document that has not been checked, in the same form as writeProject. */
export function writeDocument(document: unknown): string {
  return `${JSON.stringify(document, null, 1)}\n`;
}
