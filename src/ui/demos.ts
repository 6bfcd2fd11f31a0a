// The examples that come with the tool, fetched when one is opened.
import { capital } from '../model/name';
import type { Demo } from '../store/firstQuilt';

const files = import.meta.glob<string>('../../demo-data/*.json', { query: '?raw', import: 'default' });

/** All examples; the first is opened on the first visit. */
export const DEMOS: readonly Demo[] = Object.entries(files).map(([path, text]) => ({
  name: nameOf(path),
  text,
}));

function nameOf(path: string): string {
  const stem = path.replace(/^.*\//, '').replace(/\..*$/, '').replaceAll('-', ' ').replace(/^\d+ /, '');
  return capital(stem);
}
