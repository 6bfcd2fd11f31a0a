// Older project files, brought up to the current version one step at a time, before the schema reads them.
import { phrase } from '../phrase';
import { CURRENT_VERSION } from '../project';
import { failed, ok, type Result } from '../result';

/** The ending of the names of project files. */
export const PROJECT_FILE_ENDING = '.wedgewall.json';

type PlainObject = Readonly<Record<string, unknown>>;

/** steps[n] turns a document of version n into one of version n + 1. A new version adds one step; none is ever changed. */
const steps: Readonly<Record<number, (document: PlainObject) => PlainObject>> = {
  // Version 0 was the draft before the first release: the unit was a plain setting and cells had no pin.
  0: (document) => {
    const { unit, wall, preferences, ...rest } = document;
    const cells = isPlainObject(wall) && Array.isArray(wall.cells) ? wall.cells : [];
    return {
      ...rest,
      version: 1,
      wall: { ...(isPlainObject(wall) ? wall : {}), cells: cells.map(withPin) },
      preferences: { unit: unit ?? 'in', ...(isPlainObject(preferences) ? preferences : {}) },
    };
  },
};

function withPin(cell: unknown): unknown {
  return isPlainObject(cell) ? { pinned: false, ...cell } : cell;
}

/** Whether a value is an object such as {}: not null, not an array. */
export function isPlainObject(value: unknown): value is PlainObject {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** Brings a parsed document to the current version. Refuses a document that is no project or is from a newer version of the tool. */
export function migrate(document: unknown): Result<PlainObject> {
  if (!isPlainObject(document) || document.format !== 'wedgewall-project') {
    const say =
      'This is not a Wedgewall quilt file. Quilt files end in {ending} and begin with "format": "wedgewall-project".';
    return failed('not-a-project', '', phrase(say, { ending: PROJECT_FILE_ENDING }));
  }
  const version = document.version as number;
  if (!Number.isInteger(version) || version < 0) {
    return failed(
      'no-version',
      'version',
      phrase('The quilt does not say which version of the format it is.'),
    );
  }
  if (version > CURRENT_VERSION) {
    const say =
      'This quilt is of version {version}; this Wedgewall reads up to version {current}. A newer Wedgewall opens it.';
    return failed('newer-version', 'version', phrase(say, { version, current: CURRENT_VERSION }));
  }
  let current: PlainObject = document;
  for (let at = version; at < CURRENT_VERSION; at += 1) {
    current = steps[at]!(current);
  }
  return ok(current);
}
