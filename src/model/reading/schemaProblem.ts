// Turns an issue of the schema library into a Problem with its path and a sentence in plain words. documentPlace.ts names the
// place in the maker's words.
import type * as v from 'valibot';
import { type Phrase, phrase } from '../phrase';
import type { Problem } from '../result';
import { type Step, unknownEntry, wrongEntry } from './documentPlace';

/** Parse options: issues carry only the messages written in the schema; reasonOf words all others. */
export const OWN_SENTENCES_ONLY = { message: '' } as const;

/** The problem for an issue of a schema parsed with OWN_SENTENCES_ONLY in a document. Its code begins with "schema-". */
export function schemaProblem(issue: v.BaseIssue<unknown>, document: unknown): Problem {
  const steps = (issue.path ?? []).map(({ key }): Step => (typeof key === 'number' ? key : String(key)));
  // The library's word for an entry that a strict object does not list.
  const message =
    issue.expected === 'never' ? unknownEntry(steps, document) : wrongEntry(steps, reasonOf(issue), document);
  return { code: `schema-${issue.type}`, path: pathOf(steps), message };
}

/** The longest key that is written out in a path; the rest of a longer one tells nobody anything. */
const LONGEST_KEY = 60;

function pathOf(steps: readonly Step[]): string {
  return steps.reduce<string>((text, step) => {
    if (typeof step === 'number') return `${text}[${step}]`;
    const key = step.length > LONGEST_KEY ? `${step.slice(0, LONGEST_KEY - 1)}…` : step;
    return text === '' ? key : `${text}.${key}`;
  }, '');
}

/** The reason without a full stop: "must be at most 40". */
function reasonOf(issue: v.BaseIssue<unknown>): Phrase {
  const { kind, type, expected, input, requirement } = issue;
  if (kind === 'schema' && input === undefined) return phrase('missing');
  if (issue.message !== '') return phrase(issue.message);
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

/** So many choices are named; of more, the first ones. */
const NAMED = 4;

/** The reason for a value that is none of those allowed; the library lists them with bars, in brackets. */
function choices(expected: string | null): Phrase {
  const all = (expected ?? '').replace(/[()]/g, '').split(' | ');
  const named = all.slice(0, NAMED).join(' or ');
  if (all.length <= NAMED) return phrase('should be {choices}', { choices: named });
  return phrase('should be {choices} or one of {count} others', {
    choices: named,
    count: all.length - NAMED,
  });
}
