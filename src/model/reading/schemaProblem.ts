// What the schema found wrong, as a problem with its path and a reason in plain words. Where in the maker's words the place is:
// documentPlace.ts.
import type * as v from 'valibot';
import { type Phrase, phrase } from '../phrase';
import type { Problem } from '../result';

/** How the schema is asked: it says only the sentences written beside it, so that the rest is told from the issue itself. */
export const OWN_SENTENCES_ONLY = { message: '' } as const;

/** The problem of an issue, of a schema asked with OWN_SENTENCES_ONLY. Its code begins with schema-. */
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

/** A reason without an end: must be at most 40. */
function reasonOf(issue: v.BaseIssue<unknown>): Phrase {
  const { kind, type, expected, input, requirement } = issue;
  if (kind === 'schema' && input === undefined) return phrase('missing');
  if (issue.message !== '') return phrase(issue.message);
  // An entry beside those of a strict object.
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
      // Of what is no object at all; else its kind is none of those there are.
      return expected === 'Object' ? phrase('should be a group of entries') : choices(expected);
    default:
      return choices(expected);
  }
}

/** One of several values: the library joins them with bars, in brackets. */
function choices(expected: string | null): Phrase {
  const named = (expected ?? '').replace(/[()]/g, '').replaceAll(' | ', ' or ');
  return phrase('should be {choices}', { choices: named });
}
