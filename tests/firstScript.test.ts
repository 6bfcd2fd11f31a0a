import { randomBytes } from 'node:crypto';
import { gzipSync } from 'node:zlib';
import type { Rolldown } from 'vite';
import { describe, expect, it } from 'vitest';
import { budgetFault, type Script, scriptsOf } from '../scripts/firstScript';

/** A script of so many bytes that gzip cannot make smaller, of one module. */
function script(
  name: string,
  bytes: number,
  imports: readonly string[] = [],
  module = `/src/ui/${name}.ts`,
): Script {
  const code = randomBytes(bytes / 2)
    .toString('hex')
    .slice(0, bytes);
  return {
    fileName: `${name}.js`,
    code,
    imports: imports.map((one) => `${one}.js`),
    modules: { [module]: { renderedLength: bytes } },
  };
}

const PAGE = '<script type="module" src="./index.js"></script>';

const size = (scripts: readonly Script[]) => scripts.reduce((sum, one) => sum + gzipSync(one.code).length, 0);

describe('The budget of the first script', () => {
  const index = script('index', 400, ['first']);
  const first = script('first', 3000, ['shared', 'index']);
  const shared = script('shared', 2000, [], '/node_modules/@scope/drawing/deep/main.js');
  const later = script('later', 90_000, ['first']);
  const all = [later, shared, first, index];

  it('counts the entry and all that it imports, once, and nothing that comes later', () => {
    const fetched = size([index, first, shared]);
    expect(budgetFault(PAGE, all, fetched)).toBeNull();
    expect(budgetFault(PAGE, all, fetched - 1)).not.toBeNull();
  });

  it('says by how much it is too large, and the largest parts first', () => {
    const fault = budgetFault(PAGE, all, size([index, first, shared]) - 1200)!;
    const [sentence, ...parts] = fault.split('\n');
    expect(sentence).toContain('The first script is 1.2 kB too large');
    expect(parts).toEqual([
      '  src/ui: 3.4 kB before it is made small',
      '  @scope/drawing: 2.0 kB before it is made small',
    ]);
  });

  it('wants a page that begins with a script', () => {
    expect(() => budgetFault('<p>Hello</p>', all)).toThrow(/no script/);
  });

  it('counts a script that was built apart as well', () => {
    const apart = { type: 'asset', fileName: 'early.js', source: 'let wall = 1;' } as Rolldown.OutputAsset;
    const look = { type: 'asset', fileName: 'early.css', source: 'p {}' } as Rolldown.OutputAsset;
    const scripts = scriptsOf([apart, look]);
    expect(scripts.map(({ fileName }) => fileName)).toEqual(['early.js']);
    const page = `${PAGE}<script src="./early.js"></script>`;
    const fetched = size([index, first, shared, ...scripts]);
    expect(budgetFault(page, [...all, ...scripts], fetched)).toBeNull();
    expect(budgetFault(page, [...all, ...scripts], fetched - 1)).not.toBeNull();
  });
});
