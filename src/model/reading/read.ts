// Reads a project from a parsed document (migrate, schema, references) and writes it as text. readText.ts reads text; the use of wedges is
// checked in editing/openDocument.ts.
import * as v from 'valibot';
import { keepSoldBy } from '../buying';
import { checkReferences } from '../check';
import { PICTURES_ENTRY, picturesEntry } from '../picture/inFile';
import { NO_PICTURES, type Pictures, picturesUsed } from '../picture/picture';
import { type Project, projectSchema } from '../project';
import { ok, type Result } from '../result';
import { explain } from './documentPlace';
import { isPlainObject, migrate } from './migrate';
import { OWN_SENTENCES_ONLY, schemaProblem } from './schemaProblem';

/** The most problems reported; a broken file could otherwise list thousands. */
const MOST_PROBLEMS = 20;

/** Reads a project from a parsed document . Every refusal names the place in it and the reason. */
export function readDocument(document: unknown): Result<Project> {
  const migrated = migrate(document);
  if (!migrated.ok) return migrated;
  const parsed = v.safeParse(projectSchema, migrated.value, OWN_SENTENCES_ONLY);
  if (!parsed.success) {
    const told = parsed.issues.slice(0, MOST_PROBLEMS).map((issue) => schemaProblem(issue, migrated.value));
    return { ok: false, problems: told };
  }
  keepSoldBy(parsed.output);
  const found = checkReferences(parsed.output);
  if (found.length === 0) return ok(parsed.output);
  return {
    ok: false,
    problems: found.slice(0, MOST_PROBLEMS).map((problem) => explain(problem, migrated.value)),
  };
}

/** The text of a project file: the document as JSON, with those of the pictures that it uses, indented, ending in a line break. */
export function writeProject(project: Project, pictures: Pictures = NO_PICTURES): string {
  return writeDocument(project, picturesEntry(picturesUsed(project), pictures));
}

/** The text of a document that has not been checked, in the same form as writeProject. */
export function writeDocument(document: unknown, entry?: ReturnType<typeof picturesEntry>): string {
  const whole = entry && isPlainObject(document) ? { ...document, [PICTURES_ENTRY]: entry } : document;
  return `${JSON.stringify(whole, null, 1)}\n`;
}
