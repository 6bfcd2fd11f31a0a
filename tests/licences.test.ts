// The build fails where a package's licence is missing, without its text, or not one that may be passed on.
import { mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createServer } from 'vite';
import { expect, it } from 'vitest';
import { licenceFaults, licencesServed, packageOf } from '../scripts/licences';
import { LICENCES } from '../src/ui/shell/help/licences';
import tool from '../vite.config';

const text = 'Permission is hereby granted to use, copy, modify and distribute this software. '.repeat(4);
const file = (...heads: string[]) => heads.map((head) => `## ${head}\n\n${text}\n`).join('\n');

it('names each fault of the licences of a build', () => {
  expect(licenceFaults(file('one - 1.0.0 (MIT)', '@a/two - 2.0.0 ((MIT AND Zlib))'), ['one', '@a/two'])).toEqual([]);
  expect(licenceFaults(file('one - 1.0.0 (MIT)'), ['one', 'two'])).toEqual(['two: it is in the build without its licence']);
  expect(licenceFaults(file('one - 1.0.0 (GPL-3.0)'), ['one'])).toEqual(['one: the licence GPL-3.0 is not on the list']);
  expect(licenceFaults(file('one - 1.0.0 (MIT OR SSPL-1.0)'), [])).toEqual(['one: the licence MIT OR SSPL-1.0 is not on the list']);
  expect(licenceFaults('## one - 1.0.0 (MIT)\n\nsee the web\n', ['one'])).toEqual(['one: the text of its licence is missing']);
}); // biome-ignore format: short

it.each([
  ['/home/x/node_modules/react/index.js', 'react'],
  ['/home/x/node_modules/@a/b/dist/c.js?v=1', '@a/b'],
  ['/home/x/node_modules/one/node_modules/two/a.js', 'two'],
  ['/home/x/src/ui/main.tsx', null],
])('takes %s for a part of %s', (module, name) => {
  expect(packageOf(module)).toBe(name);
});

/** A page of one package, built as the tool is: what is served does not hang on how much there is to build. */
function smallPage(): string {
  const root = mkdtempSync(join(tmpdir(), 'wedgewall-page-'));
  symlinkSync(join(import.meta.dirname, '../node_modules'), join(root, 'node_modules'));
  writeFileSync(join(root, 'index.html'), '<script type="module" src="/main.js"></script>');
  writeFileSync(join(root, 'main.js'), "import { createElement } from 'react';\nconsole.log(createElement('p'));\n");
  const config = { build: { license: { fileName: LICENCES } } };
  writeFileSync(join(root, 'vite.config.mjs'), `export default ${JSON.stringify(config)};\n`);
  return root;
} // biome-ignore format: short

it('has the texts where the tool is started without a build, too', async () => {
  expect(tool.build?.license).toEqual({ fileName: LICENCES });
  expect(tool.plugins).toContainEqual(expect.objectContaining({ name: licencesServed().name }));
  const root = smallPage();
  const still = { port: 0, ws: false, watch: null } as const;
  const server = await createServer({ root, configFile: false, plugins: [licencesServed()], server: still, logLevel: 'silent' });
  try {
    await server.listen();
    const answer = await fetch(new URL(LICENCES, server.resolvedUrls!.local[0]));
    expect(licenceFaults(await answer.text(), ['react'])).toEqual([]);
  } finally {
    await server.close();
    rmSync(root, { recursive: true });
  }
}); // biome-ignore format: short
