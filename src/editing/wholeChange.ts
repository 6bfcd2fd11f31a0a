// The change from one state of a quilt to another, entry by entry of the document: for states that no command leads between.
import type { Phrase } from '../model/phrase';
import type { Project } from '../model/project';
import type { Change } from './apply';

/** The change that makes `to` of `from`; its undo gives `from` again. */
export function wholeChange(from: Project, to: Project, label: Phrase): Change {
  return { label, patches: patches(from, to), inverse: patches(to, from) };
}

function patches(from: Project, to: Project): Change['patches'] {
  const goes = Object.keys(from).filter((key) => !(key in to));
  const comes = Object.entries(to).filter(([key, value]) => value !== from[key as keyof Project]);
  return [
    ...goes.map((key) => ({ op: 'remove' as const, path: [key] })),
    ...comes.map(([key, value]) => ({
      op: key in from ? ('replace' as const) : ('add' as const),
      path: [key],
      value,
    })),
  ];
}
