// Comments that send a reader to another file name one that is there.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { ROOMS } from './rooms';

const root = join(import.meta.dirname, '..');
const files = ['src', 'scripts'].flatMap((folder) =>
  readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' }).map(
    (path) => `${folder}/${path.replaceAll('\\', '/')}`,
  ),
);
const known = files.map((path) => path.replace(/^src/, ''));

/** Paths that comments of a source name: file.ts, folder/file.ts, room/file and room/folder. */
function namedPaths(text: string): string[] {
  const comments = text.split('\n').filter((line) => /^\s*(\/\/|\/\*\*|\*)|\s\/\/ /.test(line));
  const inRoom = new RegExp(`\\b(?:${Object.keys(ROOMS).join('|')})/[\\w/]*\\w`, 'g');
  return comments.flatMap((line) => [
    ...(line.replace(/`[^`]*`|https?:\S+/g, '').match(/[\w/]*\w\.tsx?\b/g) ?? []),
    ...(line.match(inRoom) ?? []),
  ]);
}

/** Whether a file or folder of that name, or path from a room, is there. */
function isThere(named: string): boolean {
  return known.some((path) => {
    const ends =
      path.endsWith(`/${named}`) || path.endsWith(`/${named}.ts`) || path.endsWith(`/${named}.tsx`);
    return ends || path.includes(`/${named}/`);
  });
}

it('names only files and folders that are there', () => {
  const sources = files.filter((path) => /\.tsx?$/.test(path));
  expect(sources.length).toBeGreaterThan(300);
  const lost = sources.flatMap((path) =>
    namedPaths(readFileSync(join(root, path), 'utf8'))
      .filter((named) => !isThere(named))
      .map((named) => `${path}: ${named}`),
  );
  expect(lost).toEqual([]);
});

it('finds a file and a room that are not there', () => {
  const named = namedPaths('// See bandss.ts and geometry/prints.\nconst a = 1; // as in bands.ts');
  expect(named.filter((one) => !isThere(one))).toEqual(['bandss.ts', 'geometry/prints']);
});
