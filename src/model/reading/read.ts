// Reading a project from text and writing it back: parse, migrate, schema, references. Files, and wedge use: editing/openProject.ts.
import * as v from 'valibot';
import { checkReferences } from '../check';
import { type Project, projectSchema } from '../project';
import { ok, type Result } from '../result';
import { explain } from './documentPlace';
import { migrate } from './migrate';
import { parseText } from './projectText';
import { OWN_SENTENCES_ONLY, schemaProblem } from './schemaProblem';

/** At most this many problems are reported; a broken file would otherwise list thousands. */
const MOST_PROBLEMS = 20;

/** Reads a project from the text of a file. Every refusal names the place in the file and the reason. */
export function readProject(text: string): Result<Project> {
  const document = parseText(text);
  return document.ok ? readDocument(document.value) : document;
}

/** The same for an already parsed document (from storage). */
export function readDocument(document: unknown): Result<Project> {
  const migrated = migrate(document);
  if (!migrated.ok) return migrated;
  const parsed = v.safeParse(projectSchema, migrated.value, OWN_SENTENCES_ONLY);
  const found = parsed.success ? checkReferences(parsed.output) : parsed.issues.map(schemaProblem);
  if (parsed.success && found.length === 0) return ok(parsed.output);
  return {
    ok: false,
    problems: found.slice(0, MOST_PROBLEMS).map((problem) => explain(problem, migrated.value)),
  };
}

/** The text of a project file: the document as JSON, indented, ending in a line break. */
export function writeProject(project: Project): string {
  return writeDocument(project);
}

/** The same for a document nobody has checked. */
export function writeDocument(document: unknown): string {
  return `${JSON.stringify(document, null, 1)}\n`;
}
