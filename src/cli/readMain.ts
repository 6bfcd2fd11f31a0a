// The entry of `npm run read`: calls readPictures with this process's arguments, folder, output and exit status. An interrupt stops it
// between two steps, and nothing is written.
import { readPictures } from './read';

const stop = new AbortController();
for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => stop.abort());

process.exitCode = await readPictures(process.argv.slice(2), {
  folder: process.cwd(),
  print: (line) => console.log(line),
  complain: (line) => console.error(line),
  stop: stop.signal,
});
