// DEVELOPERS.md and README.md: every path they name is there, and the map has every folder of the source.
import { expect, it } from 'vitest';
import { ROOMS } from './rooms';
import { filesUnder, textOf } from './srcFiles';

const FOLDERS = ['src', 'tests', 'e2e', 'bench', 'attack', 'scripts', 'docs', 'demo-data', 'public'];
const AT_ROOT = [
  'DEVELOPERS.md', 'README.md', 'LICENSE', 'biome.json', 'knip.json', 'knip.production.json', 'package.json', 'index.html',
]; // biome-ignore format: a list
const files = [...FOLDERS.flatMap(filesUnder), ...AT_ROOT];
/** What the tool and its build write, and a rule of Oxlint: named in the documents, not kept here. */
const ELSEWHERE = [
  'wall.svg',
  'wall.png',
  'report.json',
  'read.json',
  'pattern.pdf',
  'sw.js',
  'dist/',
  'react/refs',
];

/** What a document names in backticks or links to that is a path: with a slash, or a file by its ending. */
function namedPaths(document: string): string[] {
  const quoted = [...document.matchAll(/`([^`\n]+)`/g)].map((found) => found[1]!);
  const links = [...document.matchAll(/\]\(([^)#]+)[^)]*\)/g)].map((found) => found[1]!);
  return [...quoted, ...links].filter(
    (one) =>
      /^[\w./-]+$/.test(one) &&
      (one.includes('/') || /\.(ts|tsx|mjs|js|json|md|css|svg|png|pdf|html)$/.test(one)),
  );
}

/** Whether a path is there: from the root, from src, or by the end of it where it is a file. */
function isThere(named: string): boolean {
  const path = named.replace(/\/$/, '');
  const isFolder = named.endsWith('/') || !/\.\w+$/.test(named);
  return files.some((file) =>
    isFolder
      ? file.startsWith(`${path}/`) || file.startsWith(`src/${path}/`)
      : file === path || file.endsWith(`/${path}`),
  );
}

const lost = (document: string) =>
  namedPaths(document).filter((named) => !isThere(named) && !ELSEWHERE.includes(named));

it.each(['DEVELOPERS.md', 'README.md'])('%s names only paths that are there', (name) => {
  const document = textOf(name);
  expect(namedPaths(document).length).toBeGreaterThan(8);
  expect(lost(document)).toEqual([]);
});

it('finds files and folders that are not there', () => {
  const document =
    'See `model/nowhere.ts`, `wall/hands.tss`, `arrange/nothing/`, `model/units.ts`, [this](docs/none.md).';
  expect(lost(document)).toEqual(['model/nowhere.ts', 'wall/hands.tss', 'arrange/nothing/', 'docs/none.md']);
});

it('has every folder of the source in the map, and no other', () => {
  const [, map = ''] = textOf('DEVELOPERS.md').split('| --- | --- |\n');
  const rows = map.split('\n\n')[0]!.split('\n');
  const listed = rows.flatMap((row) =>
    [...row.split('|')[1]!.matchAll(/`([^`]+)\/`/g)].map((found) => found[1]!),
  );
  const folders = filesUnder('src').map((path) => path.slice('src/'.length, path.lastIndexOf('/')));
  expect([...listed].sort()).toEqual([...new Set(folders)].sort());
  expect(new Set(listed.map((one) => one.split('/')[0]))).toEqual(new Set(Object.keys(ROOMS)));
});

it('keeps folders of the source small: 20 files at most', () => {
  const counts = new Map<string, number>();
  for (const path of filesUnder('src')) {
    const folder = path.slice(0, path.lastIndexOf('/'));
    counts.set(folder, (counts.get(folder) ?? 0) + 1);
  }
  expect([...counts].filter(([, count]) => count > 20)).toEqual([]);
});
