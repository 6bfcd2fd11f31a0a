// The files of the project by their paths from its root, as tests that read sources and documents see them.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

const root = join(import.meta.dirname, '..');

/** Files under a folder, with forward slashes. */
export function filesUnder(folder: string): string[] {
  return readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) =>
      join(entry.parentPath, entry.name)
        .slice(root.length + 1)
        .replaceAll('\\', '/'),
    );
}

export function textOf(path: string): string {
  return readFileSync(join(root, path), 'utf8');
}
