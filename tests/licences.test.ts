// The build fails where a package's licence is missing, without its text, or not one that may be passed on.
import { fileURLToPath } from 'node:url';
import { createServer } from 'vite';
import { expect, it } from 'vitest';
import { licenceFaults, packageOf } from '../scripts/licences';
import { LICENCES } from '../src/ui/shell/help/licences';

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

it('has the texts where the tool is started without a build, too', async () => {
  const root = fileURLToPath(new URL('..', import.meta.url));
  const server = await createServer({ root, server: { port: 0, ws: false }, logLevel: 'silent' });
  try {
    await server.listen();
    const answer = await fetch(new URL(LICENCES, server.resolvedUrls!.local[0]));
    expect(licenceFaults(await answer.text(), ['react', 'react-dom'])).toEqual([]);
  } finally {
    await server.close();
  }
});
