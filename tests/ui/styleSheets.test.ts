// What a part of the page shows has its style sheets with it: no class is drawn by a sheet that only another part brings, which may
// come later or never.
import { posix } from 'node:path';
import { expect, it } from 'vitest';
import { filesUnder, textOf } from '../srcFiles';

const FILES = filesUnder('src');
const SCRIPTS = new Map(FILES.filter((path) => /\.tsx?$/.test(path)).map((path) => [path, textOf(path)]));

const IMPORTS = new Map<string, readonly string[]>();

/** Files that are imported at once, or only when the code is asked for, by the file that imports them. */
function importsOf(path: string, kind: 'at once' | 'later'): readonly string[] {
  const key = `${kind} ${path}`;
  const known = IMPORTS.get(key) ?? read(path, kind);
  IMPORTS.set(key, known);
  return known;
}

function read(path: string, kind: 'at once' | 'later'): string[] {
  const text = SCRIPTS.get(path) ?? '';
  const form =
    kind === 'later'
      ? /import\('(\.[^']+)'\)/g
      : /^(?:import|export)(?! type\b)(?: [^;'"]*?from)? '(\.[^']+)'/gm;
  return Array.from(text.matchAll(form), ([, target]) => posix.join(posix.dirname(path), target!)).flatMap(
    (target) => [target, `${target}.ts`, `${target}.tsx`].filter((one) => FILES.includes(one)).slice(0, 1),
  );
}

/** A file and all that comes with it. */
function comesWith(root: string, known = new Set<string>()): Set<string> {
  if (known.has(root)) return known;
  known.add(root);
  for (const one of importsOf(root, 'at once')) comesWith(one, known);
  return known;
}

const classesIn = (sheet: string) =>
  textOf(sheet)
    .replaceAll(/\/\*.*?\*\//gs, '')
    .replaceAll(/\{[^{}]*\}/g, ' ')
    .matchAll(/\.([a-zA-Z][\w-]*)/g);
/** The sheets that draw each class. */
const DRAWN_BY = new Map<string, string[]>();
for (const sheet of FILES.filter((path) => path.endsWith('.css')))
  for (const [, name] of classesIn(sheet)) DRAWN_BY.set(name!, [...(DRAWN_BY.get(name!) ?? []), sheet]);

function classesOf(path: string): string[] {
  return Array.from(
    (SCRIPTS.get(path) ?? '').matchAll(/className=(?:"([^"]*)"|\{([^}]*)\})/g),
    ([, plain, made]) => plain ?? (made!.match(/'[^']*'|"[^"]*"|`[^`]*`/g) ?? []).join(' '),
  ).flatMap((words) => words.match(/[a-zA-Z][\w-]*/g) ?? []);
}

const FIRST = comesWith('src/ui/main.tsx');
/** A step has its panel and its large area on show together. */
const together = (part: string) => /(\w+?)(?:Step|Stage)\.tsx$/.exec(part)?.[1];

const PARTS = [...new Set([...SCRIPTS.keys()].flatMap((path) => importsOf(path, 'later')))].filter(
  (path) => path.startsWith('src/ui/') && path.endsWith('.tsx'),
);
const BROUGHT = new Map(PARTS.map((part) => [part, comesWith(part)]));
const asksFor = (path: string, part: string) => importsOf(path, 'later').includes(part);

/** All that is there when a part is: the first script, the part, and what was there when it was asked for. */
function thereWith(part: string, seen: readonly string[] = []): Set<string> {
  const there = new Set([...FIRST, ...BROUGHT.get(part)!]);
  if (seen.includes(part)) return there;
  const askedAtFirst = [...FIRST].some((path) => asksFor(path, part));
  const before = PARTS.filter(
    (one) =>
      (together(one) !== undefined && together(one) === together(part)) ||
      (!askedAtFirst && [...BROUGHT.get(one)!].some((path) => asksFor(path, part))),
  );
  for (const one of before) for (const path of thereWith(one, [...seen, part])) there.add(path);
  return there;
}

it('a part of the page brings the style sheets of what it shows', () => {
  expect(PARTS.length).toBeGreaterThan(20);
  const missing = new Set<string>();
  for (const part of PARTS) {
    const there = thereWith(part);
    for (const path of BROUGHT.get(part)!)
      if (!FIRST.has(path))
        for (const name of classesOf(path)) {
          const sheets = DRAWN_BY.get(name);
          if (sheets && !sheets.some((sheet) => there.has(sheet)))
            missing.add(`${path}: .${name} is drawn by ${sheets.join(', ')}, which ${part} has not`);
        }
  }
  expect([...missing]).toEqual([]);
});
