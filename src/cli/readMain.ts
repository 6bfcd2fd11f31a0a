// The entry of `npm run read`. An interrupt stops it between two steps, and nothing is written.
import { runHere } from './command';
import { readPictures } from './read';

await runHere(readPictures);
