// npm run audit: asks the registry for known holes in the packages that the tool is built with. Ends with status 1 where there are any.
// Where no registry answers it says so, and that is no failure.
import { spawnSync } from 'node:child_process';
import process from 'node:process';
import { pathToFileURL } from 'node:url';

const ASK = ['audit', '--json', '--omit=dev', '--fetch-retries=0', '--fetch-timeout=15000'];

/** What an answer of `npm audit --json` (report version 2) comes to: `known` is null where the registry told nothing. */
export function auditTold(answer) {
  let report;
  try {
    report = JSON.parse(answer);
  } catch {
    return { known: null, words: 'no answer' };
  }
  if (!report?.vulnerabilities)
    return { known: null, words: report?.message ?? report?.error?.summary ?? 'no answer' };
  const known = Object.values(report.vulnerabilities).map(
    ({ name, severity, range }) => `${name} ${range} (${severity})`,
  );
  return {
    known,
    words: known.length === 0 ? 'No holes are known.' : `Holes are known: ${known.join(', ')}`,
  };
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  const { stdout } = spawnSync('npm', ASK, { encoding: 'utf8' });
  const { known, words } = auditTold(stdout ?? '');
  console.log(known ? words : `# No registry told of known holes, so none were looked for (${words})`);
  process.exitCode = known && known.length > 0 ? 1 : 0;
}
