// The entry of `npm run sheet`. An interrupt stops it between two files, so that no half of a sheet stays behind.
import { runHere } from './command';
import { makeSheets } from './sheet';

await runHere(makeSheets);
