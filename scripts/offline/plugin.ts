// Part of the build: writes sw.js, which keeps the whole build in the browser (serviceWorker.js), with the list of its files
// and a version that changes with any of them.
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, relative, resolve, sep } from 'node:path';
import type { Plugin } from 'vite';

const NAME = 'sw.js';

/** The plugin; it does nothing while the tool is being developed. */
export function offline(): Plugin {
  let folder = '';
  return {
    name: 'wedgewall-offline',
    apply: 'build',
    configResolved: ({ root, build }) => {
      folder = resolve(root, build.outDir);
    },
    closeBundle: () => {
      const source = readFileSync(join(import.meta.dirname, 'serviceWorker.js'), 'utf8');
      writeFileSync(join(folder, NAME), serviceWorkerFor(folder, source));
    },
  };
}

/** The text of the service worker for the files in a folder. */
export function serviceWorkerFor(folder: string, source: string): string {
  const files = filesIn(folder);
  const hash = createHash('sha256').update(source);
  for (const file of files) hash.update(file).update(readFileSync(join(folder, file)));
  const version = hash.digest('hex').slice(0, 16);
  return `const VERSION = ${JSON.stringify(version)};\nconst FILES = ${JSON.stringify(files)};\n${source}`;
}

function filesIn(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((one) => one.isFile() && one.name !== NAME)
    .map((one) => relative(folder, join(one.parentPath, one.name)).split(sep).join('/'))
    .sort();
}
