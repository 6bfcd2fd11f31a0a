// npm start: installs what is missing, serves Wedgewall and prints its address. The first visit opens a demo quilt.
// Options: --port NUMBER (5173; the next free one if taken), --host ADDRESS (only this machine).
import { dirname } from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { installPackages } from './install.mjs';

process.chdir(dirname(dirname(fileURLToPath(import.meta.url))));
const { values } = parseArgs({ options: { port: { type: 'string' }, host: { type: 'string' } } });
const port = Number(values.port ?? 5173);
if (!Number.isInteger(port) || port < 1 || port > 65535) {
  console.error(`--port must be a whole number from 1 to 65535, not ${values.port}.`);
  process.exit(2);
}

installPackages();
const { createServer } = await import('vite');
const server = await createServer({ server: { port, host: values.host ?? 'localhost' }, clearScreen: false });
await server.listen();
const { local, network } = server.resolvedUrls ?? { local: [], network: [] };
console.log(`\nWedgewall is open at ${[...local, ...network].join(' and ')}`);
console.log('The first visit shows a demo quilt. Ctrl+C ends it.\n');
