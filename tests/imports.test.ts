import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { faults } from './importGraph';
import { ROOMS, SHELL_PACKAGES, TYPES_ONLY } from './rooms';

const root = dirname(dirname(fileURLToPath(import.meta.url)));

function readSources(): Map<string, string> {
  const paths = readdirSync(join(root, 'src'), { recursive: true, encoding: 'utf8' })
    .map((path) => `src/${path.replaceAll('\\', '/')}`)
    .filter((path) => /\.tsx?$/.test(path));
  return new Map(paths.map((path) => [path, readFileSync(join(root, path), 'utf8')]));
}

/** The faults of made-up files, with empty files wherever `there` says so. */
function made(files: Record<string, string>, there: readonly string[] = []): string[] {
  const empty = there.map((path) => [path, 'export const there = 1;'] as const);
  return faults(new Map([...empty, ...Object.entries(files)]));
}

describe('the rooms of the source', () => {
  it('import one way only, and the pure ones touch neither page nor clock nor chance', () => {
    const sources = readSources();
    expect(sources.size).toBeGreaterThan(20);
    expect(faults(sources)).toEqual([]);
  });

  it('are held to the same directions by the linter in the editor', () => {
    const { overrides } = JSON.parse(readFileSync(join(root, 'biome.json'), 'utf8')) as {
      overrides: { includes: string[]; linter: { rules: { style: Record<string, Restriction> } } }[];
    };
    for (const [room, allowed] of Object.entries(ROOMS)) {
      const override = overrides.find((one) => one.includes[0] === `src/${room}/**`);
      const groups = override?.linter.rules.style.noRestrictedImports?.options.patterns[0]?.group ?? [];
      const barred = Object.keys(ROOMS).filter(
        (one) => one !== room && !allowed.includes(one) && !TYPES_ONLY[room]?.includes(one),
      );
      const expected = barred.map((one) => `**/${one}/**`);
      expect([room, groups.filter((group) => group.startsWith('**/')).sort()]).toEqual([
        room,
        expected.sort(),
      ]);
    }
  });
});

interface Restriction {
  options: { patterns: { group: string[] }[] };
}

describe('the check of the rooms', () => {
  const core = ['src/model/find.ts', 'src/geometry/wedge.ts', 'src/store/app.ts', 'src/arrange/search.ts'];

  it('lets what is allowed pass', () => {
    const files = {
      'src/geometry/block.ts': "import { a } from '../model/find';\nimport './wedge';\nexport const b = a;",
      'src/ui/Wall.tsx':
        "import type { A } from '../arrange/search';\nimport './wall.css';\nexport const b: A = <i />;",
      'src/store/client.ts':
        "import { wrap } from 'comlink';\nexport const w = wrap(new Worker(new URL('./worker.ts', import.meta.url)));",
      'src/store/worker.ts':
        "import { a } from '../arrange/search';\nself.postMessage(performance.now(), a);",
    };
    expect(made(files, core)).toEqual([]);
  });

  it.each([
    ['a value', "import { a } from '../store/app';\nexport const b = a;"],
    ['a type', "import type { A } from '../store/app';\nexport type B = A;"],
    ['a type written inside a type', "export type B = import('../store/app').A;"],
    ['something passed on', "export { a } from '../store/app';\nexport const b = 1;"],
    ['something loaded later', "export const b = () => import('../store/app');"],
    ['a worker', "export const b = new Worker(new URL('../store/app.ts', import.meta.url));"],
    ['nothing but its effect', "import '../store/app';\nexport const b = 1;"],
  ])('finds %s imported against the direction', (_what, text) => {
    expect(made({ 'src/geometry/bad.ts': text }, core)).toEqual([
      'src/geometry/bad.ts imports src/store/app.ts',
    ]);
  });

  it('finds a value taken from a room of which only types may be', () => {
    const text = "import { a, type B } from '../arrange/search';\nexport const c: B = a;";
    expect(made({ 'src/ui/bad.ts': text }, core)).toEqual(['src/ui/bad.ts imports src/arrange/search.ts']);
  });

  it('finds a worker taken into the core', () => {
    const files = {
      'src/store/worker.ts': 'export const a = 1;',
      'src/arrange/bad.ts': "import '../store/worker';\nexport const b = 1;",
    };
    expect(made(files)).toEqual(['src/arrange/bad.ts imports src/store/worker.ts']);
  });

  it('finds circles, those of types too, and files that import themselves', () => {
    const files = {
      'src/model/a.ts': "import { b } from './b';\nexport const a = b;",
      'src/model/b.ts': "import type { C } from './c';\nexport const b: C = 1;",
      'src/model/c.ts': "import { a } from './a';\nexport type C = typeof a;",
      'src/model/d.ts': "import { d } from './d';\nexport const e = d;",
      'src/model/end.ts': "import { a } from './a';\nexport const end = a;",
    };
    expect(made(files)).toEqual([
      'src/model/a.ts, src/model/b.ts, src/model/c.ts import each other in a circle',
      'src/model/d.ts import each other in a circle',
    ]);
  });

  it.each([...SHELL_PACKAGES, 'react/jsx-runtime', 'node:fs'])('finds %s in a pure room', (name) => {
    const files = { 'src/balance/bad.ts': `import '${name}';\nexport const a = 1;` };
    expect(made(files)).toEqual([`src/balance/bad.ts imports ${name}`]);
  });

  it.each([
    ['document.title', 'document.title'],
    ['window.innerWidth', 'window.innerWidth'],
    ['localStorage', 'localStorage'],
    ['Date.now()', 'Date.now'],
    ['new Date()', 'Date'],
    ['Math.random()', 'Math.random'],
    ["Math['random']()", 'Math'],
    ['performance.now()', 'performance.now'],
    ['globalThis.document', 'globalThis.document'],
    ['(() => { const { random } = Math; return random; })()', 'Math'],
    ['[(document: string) => document, document][1]', 'document'],
    ['{ document }', 'document'],
    ['(document as never)', 'document'],
  ])('finds %s used in a pure room', (use, name) => {
    expect(made({ 'src/cutting/bad.ts': `\nexport const a = ${use};` })).toEqual([
      `src/cutting/bad.ts uses ${name} in line 2`,
    ]);
  });

  it('does not take a parameter, a key, a comment, a text or a type for the page or the clock', () => {
    const text = `
      // document.title, new Date()
      export const said = 'window.open';
      export function read(document: { window: number }): number { return document.window; }
      export const parts = ({ window, ...document }: Record<string, Date>) => [window, document];
      export class Plan { performance = Math.floor(2.5); document() { return this.performance; } }
      export function tried() { try { return 1; } catch (window) { return window; } }
      for (const document of [1]) { parts({}); void document; }
      export interface Page { document: Document }
    `;
    expect(made({ 'src/drawing/good.ts': text })).toEqual([]);
  });

  it.each([
    ["export * from './a';"],
    ["export { there } from './a';"],
    ["import { there } from './a';\nexport { there };"],
    ["export type { There } from './a';\nexport * from './a';"],
  ])('finds a barrel: %j', (text) => {
    expect(made({ 'src/model/index.ts': text }, ['src/model/a.ts'])).toEqual([
      'src/model/index.ts only passes on what others export',
    ]);
  });

  it('finds files outside all rooms, screen files in pure rooms, and imports that lead nowhere or outside', () => {
    const files = {
      'src/main.ts': 'export const a = 1;',
      'src/attic/old.ts': 'export const a = 1;',
      'src/model/Bad.tsx': 'export const a = 1;',
      'src/model/lost.ts': "import './gone';\nexport const a = 1;",
      'src/cutting/outside.ts':
        "import '../../bench/row';\nimport '../../../shared/a.json';\nexport const a = 1;",
      'src/drawing/data.ts': "import demo from '../../demo-data/six.json';\nexport const a = demo;",
    };
    expect(made(files)).toEqual([
      'src/main.ts lies in no known room',
      'src/attic/old.ts lies in no known room',
      'src/model/Bad.tsx is a screen file in a pure room',
      'src/model/lost.ts imports src/model/gone.ts, which is not there',
      'src/cutting/outside.ts imports bench/row.ts',
      'src/cutting/outside.ts imports ../shared/a.json',
      'src/drawing/data.ts imports demo-data/six.json',
    ]);
  });
});
