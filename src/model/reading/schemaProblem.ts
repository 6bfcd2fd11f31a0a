// Turns an issue of the schema library into a Problem with its path and a reason in plain words. documentPlace.ts names the
// place in the maker's words.
import type * as v from 'valibot';
import { type Phrase, phrase } from '../phrase';
import type { Problem } from '../result';

/** Parse options: issues carry only the messages written in the schema; reasonOf words all others. */
export const OWN_SENTENCES_ONLY = { message: '' } as const;

/** The problem for an issue of a schema parsed with OWN_SENTENCES_ONLY. Its code begins with "schema-". */
export function schemaProblem(issue: v.BaseIssue<unknown>): Problem {
  return { code: `schema-${issue.type}`, path: pathOf(issue), message: reasonOf(issue) };
}

function pathOf(issue: v.BaseIssue<unknown>): string {
  const path: readonly { readonly key: unknown }[] = issue.path ?? [];
  return path.reduce<string>((text, { key }) => {
    if (typeof key === 'number') return `${text}[${key}]`;
    return text === '' ? String(key) : `${text}.${String(key)}`;
  }, '');
}

/** The reason without a full stop: "must be at most 40". */
function reasonOf(issue: v.BaseIssue<unknown>): Phrase {
  const { kind, type, expected, input, requirement } = issue;
  if (kind === 'schema' && input === undefined) return phrase('missing');
  if (issue.message !== '') return phrase(issue.message);
  // A strict object has an entry that the schema does not list.
  if (expected === 'never') return phrase('Wedgewall does not know this entry');
  switch (type) {
    case 'number':
      return phrase('should be a number');
    case 'string':
      return phrase('should be text');
    case 'boolean':
      return phrase('should be true or false');
    case 'array':
      return phrase('should be a list');
    case 'strict_object':
      return phrase('should be a group of entries');
    case 'integer':
      return phrase('must be a whole number');
    case 'finite':
      return phrase('must be a number one can measure');
    case 'max_value':
      return phrase('must be at most {most}', { most: Number(requirement) });
    case 'min_value':
      return phrase('must be at least {least}', { least: Number(requirement) });
    case 'max_length':
      return phrase('at most {most} fit', { most: Number(requirement) });
    case 'min_length':
      return phrase('needs at least {least}', { least: Number(requirement) });
    case 'variant':
      // 'Object' means the value is no object; otherwise its `kind` is unknown.
      return expected === 'Object' ? phrase('should be a group of entries') : choices(expected);
    default:
      return choices(expected);
  }
}

/** The reason for a value that is none of those allowed; the library lists them with bars, in brackets. */
function choices(expected: string | null): Phrase {
  const named = (expected ?? '').replace(/[()]/g, '').replaceAll(' | ', ' or ');
  return phrase('should be {choices}', { choices: named });
}
