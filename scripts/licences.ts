// Part of the build: the texts of the licences of all packages in it (written by Vite), and the check that none is missing and all
// are of the kinds that may be passed on. The workers are built apart, so their packages are noted as they come.
import { execFile } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import process from 'node:process';
import { promisify } from 'node:util';
import type { Plugin } from 'vite';
import { LICENCES, licencesIn } from '../src/ui/shell/help/licences.ts';

/** Licences under which a package may be part of the tool, by their SPDX names. */
const ALLOWED = new Set([
  'MIT',
  'ISC',
  'Apache-2.0',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'OFL-1.1',
  'Zlib',
  '0BSD',
  'CC0-1.0',
]);

const packages = new Set<string>();

/** What is wrong with a file of licences for these packages, a line each; empty when all is well. */
export function licenceFaults(text: string, needed: Iterable<string>): string[] {
  const named = new Set<string>();
  const faults: string[] = [];
  for (const { name, kind, text: own } of licencesIn(text)) {
    named.add(name);
    if (
      !kind
        .replace(/[()]/g, '')
        .split(/ AND | OR /)
        .every((one) => ALLOWED.has(one))
    )
      faults.push(`${name}: the licence ${kind || '(none)'} is not on the list`);
    if (own.length < 200) faults.push(`${name}: the text of its licence is missing`);
  }
  for (const name of needed)
    if (!named.has(name)) faults.push(`${name}: it is in the build without its licence`);
  return faults;
}

/** The package a module comes from; null for the tool's own. */
export function packageOf(module: string): string | null {
  const [path = ''] = module.split('?');
  const at = path.lastIndexOf('/node_modules/');
  if (at < 0) return null;
  const [scope = '', name = ''] = path.slice(at + '/node_modules/'.length).split('/');
  return scope.startsWith('@') ? `${scope}/${name}` : scope;
}

/** Notes the packages of a build; for the page and, apart, for each worker. */
export function notePackages(): Plugin {
  return {
    name: 'wedgewall-note-packages',
    apply: 'build',
    generateBundle(_options, bundle) {
      for (const chunk of Object.values(bundle)) {
        if (chunk.type !== 'chunk') continue;
        for (const module of chunk.moduleIds) {
          const name = packageOf(module);
          if (name !== null) packages.add(name);
        }
      }
    },
  };
}

/** Fails the build when a licence is missing or not allowed. */
export function licences(): Plugin {
  let folder = '';
  return {
    name: 'wedgewall-licences',
    apply: 'build',
    configResolved: ({ root, build }) => {
      folder = resolve(root, build.outDir);
    },
    closeBundle: () => {
      const faults = licenceFaults(readFileSync(join(folder, LICENCES), 'utf8'), packages);
      if (faults.length > 0) throw new Error(`Licences:\n${faults.join('\n')}`);
    },
  };
}

/** Serves the licences under `npm start`, where nothing is built: a build of its own gathers them when they are first asked for. */
export function licencesServed(): Plugin {
  return {
    name: 'wedgewall-licences-served',
    apply: 'serve',
    configureServer: ({ middlewares, config: { root } }) => {
      let text: Promise<string> | null = null;
      middlewares.use(`/${LICENCES}`, (_request, response) => {
        text ??= gathered(root);
        text.then(
          (all) => response.setHeader('Content-Type', 'text/plain; charset=utf-8').end(all),
          (fault: unknown) => {
            text = null;
            response.writeHead(500).end(String(fault));
          },
        );
      });
    },
  };
}

async function gathered(root: string): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), 'wedgewall-licences-'));
  const vite = join(root, 'node_modules/vite/bin/vite.js');
  const { NODE_ENV: _served, ...env } = process.env;
  try {
    await promisify(execFile)(process.execPath, [vite, 'build', '--outDir', folder], { cwd: root, env });
    return readFileSync(join(folder, LICENCES), 'utf8');
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
