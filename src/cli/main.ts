// The entry of `npm run sheet`: calls makeSheets with this process's arguments, folder, output and exit status. An interrupt stops
// it between two files, so that no half of a sheet stays behind.
import { makeSheets } from './sheet';

const stop = new AbortController();
for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => stop.abort());

process.exitCode = await makeSheets(process.argv.slice(2), {
  folder: process.cwd(),
  print: (line) => console.log(line),
  complain: (line) => console.error(line),
  stop: stop.signal,
});
