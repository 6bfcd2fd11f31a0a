// Serves the built tool to the browser tests, from memory: `node e2e/serve.mjs PORT`, or `serveBuild` within a program.
import { readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { extname, join, normalize } from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';

const BUILD = fileURLToPath(new URL('../dist/', import.meta.url));
/** What the browser must know to take a file for what it is. */
const KINDS = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.webmanifest': 'application/manifest+json',
  '.woff': 'font/woff',
  '.woff2': 'font/woff2',
};

const read = new Map();
function fileAt(path) {
  if (!read.has(path)) read.set(path, readFileSync(join(BUILD, path)));
  return read.get(path);
}

/** Serves the build at a port of this machine; resolves once it is served, with the server. */
export function serveBuild(port) {
  const server = createServer(({ url = '/' }, answer) => {
    const asked = normalize(decodeURIComponent(new URL(url, 'http://localhost').pathname));
    const path = asked.endsWith('/') ? `${asked}index.html` : asked;
    try {
      const body = fileAt(path);
      const kind = KINDS[extname(path)] ?? 'text/plain; charset=utf-8';
      answer.writeHead(200, { 'content-type': kind }).end(body);
    } catch {
      answer.writeHead(404).end();
    }
  });
  return new Promise((served) => server.listen(port, 'localhost', () => served(server)));
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await serveBuild(Number(process.argv[2]));
