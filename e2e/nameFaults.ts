// What is wrong with the names of what is on show: a control without one, two of one name, a word twice.
import { CONTROLS, type Part } from './tree';

/** Nodes that are read out on entering, so that a field in one is told from a field in another. */
const ROUND = new Set(['region', 'form', 'group', 'radiogroup', 'dialog', 'row', 'table']);
/** What stands by itself: it has a name of its own wherever it is. */
const ALONE = new Set(['button', 'link']);
/** A hidden button at each end of what lies over the page, by which a screen reader leaves it. */
const LEAVES = 'Dismiss';

/** Faults of names, one line each. */
export function nameFaults(parts: readonly Part[]): string[] {
  const seen = new Map<string, number>();
  const faults: string[] = [];
  for (const { role, name, within } of parts) {
    if (role === 'table' && name === '') faults.push('a table without a name');
    if (!CONTROLS.has(role) || name === LEAVES) continue;
    if (name === '') faults.push(`${role} without a name in ${within.at(-1)?.name}`);
    if (/\b(\w{3,}) \1\b/i.test(name)) faults.push(`a word twice: ${name}`);
    const round = ALONE.has(role) ? [] : within.filter((one) => ROUND.has(one.role)).map((one) => one.name);
    const key = [...round, name].join(' > ');
    seen.set(key, (seen.get(key) ?? 0) + 1);
  }
  return [
    ...faults,
    ...[...seen].filter(([, count]) => count > 1).map(([key, count]) => `${count} times: ${key}`),
  ];
}
