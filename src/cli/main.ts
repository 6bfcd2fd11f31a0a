// The entry of `npm run sheet`: calls makeSheets with this process's arguments, folder, output and exit status.
import { makeSheets } from './sheet';

process.exitCode = await makeSheets(process.argv.slice(2), {
  folder: process.cwd(),
  print: (line) => console.log(line),
  complain: (line) => console.error(line),
});
